"""Messages into sentences: the reader's language and units, with the digits that mean something.

A placeholder's format says what it is: `{by:difference}` is a difference in the row's own kind,
`{pressure:pressure}` a pressure, `{points:points}` a list of points by name, `{value:si}` a number
of a formula in the `unit` among the values.
"""

import math
import re
import string
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from lightoff.inference.estimate import COVERAGE
from lightoff.judgement import Message, Remark, Row
from lightoff.machine import kind_of
from lightoff.quantity import BY_NAME, KINDS, Shown, System, shown
from lightoff.surfaces.words.catalogue import catalogue, has
from lightoff.surfaces.working import si_text

_NUMBERED = re.compile(r"(?<=\.)(\d)(?=\.|$)")


def resolution_of(expanded: float | None) -> float | None:
    """The place to round to, so that an expanded uncertainty keeps one digit, or two if it begins
    with 1 or 2.

    >>> resolution_of(0.083), resolution_of(11.2)
    (0.01, 1.0)
    """
    if expanded is None or not expanded > 0 or not math.isfinite(expanded):
        return None
    place = 10.0 ** math.floor(math.log10(expanded))
    return place / 10 if expanded / place < 3 else place


def generic(name: str) -> str:
    """An id without the numbers of its furnace and its train.

    >>> generic("train.2.1.manifold")
    'train.n.m.manifold'
    """
    return _NUMBERED.sub("m", _NUMBERED.sub("n", name, count=1), count=1)


@dataclass(frozen=True)
class Speech:
    """How one reader is spoken to."""

    system: System = "us"
    language: str = "en"

    def word(self, message_id: str, **values: Any) -> str:
        """One catalogue entry, filled in."""
        text = catalogue(self.language).gettext(message_id)
        return _Filler(self, values).format(text, **values) if values else text

    def say(self, message: Message | Remark, row: Row | None = None) -> str:
        """The sentence of a message; `row` tells which kind of quantity it speaks of."""
        values = dict(message.values)
        kind = row.kind if row is not None else values.get("kind")
        text = catalogue(self.language).gettext(message.message)
        return _Filler(self, {**values, "kind": kind}).format(text, **values)

    def quantity(
        self, value: float, kind: str, *, expanded: float | None = None, unit: bool = True
    ) -> str:
        """A value with its unit, rounded to its uncertainty where that is known."""
        text = self.parts(value, kind, expanded=expanded)
        return text.text if unit else text.number

    def parts(self, value: float, kind: str, *, expanded: float | None = None) -> Shown:
        """The same, number and unit apart."""
        return shown(value, kind, self.system, resolution=self._rounding(kind, expanded))

    def spread(self, expanded: float, kind: str) -> str:
        """An expanded uncertainty as a bare number, to its own one or two digits."""
        return self.parts(expanded, difference_kind(kind), expanded=expanded).number

    def difference(self, value: float, kind: str, *, expanded: float | None = None) -> str:
        """A difference in a kind: degrees lose their zero."""
        return self.quantity(value, difference_kind(kind), expanded=expanded)

    def _rounding(self, kind: str, expanded: float | None) -> float | None:
        """The rounding place in the shown unit, given back in SI."""
        if expanded is None:
            return None
        factor = BY_NAME[KINDS[kind].unit(self.system)].factor
        place = resolution_of(expanded / factor)
        return None if place is None else place * factor

    def point(self, point: str) -> str:
        """A point or derived quantity by name.

        >>> Speech().point("train.2.1.manifold")
        'Manifold, furnace 2'
        """
        return self._numbered("point", point)

    def setting(self, setting: str) -> str:
        """A setting by name."""
        return self._numbered("setting", setting)

    def unknown(self, unknown: str) -> str:
        """An unknown of the machine by name, which may be a point's; nothing for anything else."""
        if kind_of(unknown):
            return self.point(unknown)
        return self._numbered("unknown", unknown) if has(f"unknown:{generic(unknown)}") else ""

    def together(self, names: Sequence[str]) -> str:
        """Several names as one."""
        return _and(names)

    def reading(self, name: str) -> str:
        """A point and its run, as `fan.rpm high`, in words."""
        point, _, run = name.partition(" ")
        return self.word("budget:of-run", name=self.point(point), run=self.run(run))

    def _numbered(self, noun: str, name: str) -> str:
        """The name of something whose id carries the numbers of a furnace and a train."""
        numbers = _NUMBERED.findall(name)
        text = self.word(f"{noun}:{generic(name)}", n=numbers[0] if numbers else "")
        if len(numbers) > 1 and numbers[1] != "1":
            text += self.word("point:train.second", m=numbers[1])
        return text

    def run(self, run: str | None) -> str:
        """A run by name."""
        if run is None:
            return ""
        name, _, number = run.partition(".")
        return self.word(f"run:{name}.n", n=number) if number else self.word(f"run:{name}")

    def target(self, target: str) -> str:
        """A target by name."""
        kind, _, name = target.partition(": ")
        if kind in ("check", "trip"):
            return self.word(f"{kind}:{name}")
        return self.word(f"target:{target}")

    def row(self, row: Row, *, furnace: bool = True) -> str:
        """A row by name: its target, and the lead, train and furnace it is of."""
        name, point = self.target(row.id), row.point or ""
        if point.startswith(("power.volts.", "motor.amps.")):
            return f"{name} {'–'.join(point.rsplit('.', 1)[1])}"
        if point == "rise.unit":
            return self.word("row:of-unit", name=name)
        if row.furnace is None:
            return name
        if furnace:
            name = self.word("row:of-furnace", name=name, n=row.furnace)
        train = point.split(".")[2] if point.startswith("train.") else "1"
        return name + (self.word("point:train.second", m=train) if train != "1" else "")

    def read(self, row: Row, *, apart: float = 0.0) -> str:
        """What was read, where all readings together say another number.

        `apart`, in standard uncertainties, is how far the two must stand from each other.
        """
        if row.measured is None or row.estimate is None or row.kind is None:
            return ""
        u = row.standard_uncertainty or 0.0
        expanded = COVERAGE * u
        read = self.parts(row.measured, row.kind, expanded=expanded).number
        told = self.parts(row.estimate, row.kind, expanded=expanded).number
        far = abs(row.measured - row.estimate) >= apart * u
        return self.word("row:read", value=read) if far and read != told else ""

    def window(self, row: Row) -> str:
        """The limits in words, in the row's own unit."""
        if row.kind is None or (row.lower is None and row.upper is None):
            return ""
        place, kind = self._window_place(row), row.kind
        low, high = (
            None if limit is None else shown(limit, kind, self.system, resolution=place)
            for limit in (row.lower, row.upper)
        )
        if low is None:
            return self.word("window:at-most", high=high.text if high else "")
        if high is None:
            return self.word("window:at-least", low=low.text)
        return self.word("window:between", low=low.number, high=high.text)

    def _window_place(self, row: Row) -> float | None:
        """Fine enough to tell a twentieth of a window, or a hundredth of a single limit."""
        kind = KINDS[row.kind or "number"]
        factor = BY_NAME[kind.unit(self.system)].factor
        if row.lower is not None and row.upper is not None:
            return _decade((row.upper - row.lower) / factor / 20, factor)
        limit = row.lower if row.lower is not None else row.upper or 0.0
        default = 10.0 ** -kind.decimals[self.system == "si"] * factor
        return max(_decade(limit / factor / 100, factor) or default, default)


def _decade(size: float, factor: float) -> float | None:
    """The power of ten at or below a size, given back in SI."""
    return 10.0 ** math.floor(math.log10(abs(size))) * factor if size else None


def difference_kind(kind: str) -> str:
    """The kind of a difference in `kind`."""
    return "temperature difference" if kind == "temperature" else kind


class _Filler(string.Formatter):
    """Fills a sentence, showing each value as the kind its placeholder names."""

    def __init__(self, speech: Speech, values: Mapping[str, Any]) -> None:
        self.speech = speech
        self.values = values

    def format_field(self, value: Any, spec: str) -> Any:
        kind = self.values.get("kind") or "number"
        if spec == "difference":
            return self.speech.difference(value, kind)
        if spec == "value":
            return self.speech.quantity(value, kind)
        if spec == "point":
            return self.speech.point(value)
        if spec == "run":
            return self.speech.run(value)
        if spec == "readings":
            return _and([self.speech.reading(each) for each in value])
        if spec == "perhaps":
            slip = self.speech.word(f"slip:{value}") if value else ""
            return self.speech.word("misfit:slip", slip=slip) if slip else ""
        if spec == "points":
            return _and([self.speech.point(each) for each in value])
        if spec == "list":
            return _and([str(each) for each in value])
        if spec == "target":
            return self.speech.target(value)
        if spec == "si":
            return si_text(value, self.values["unit"])
        if spec == "slip":
            return self.speech.word(f"slip:{value}")
        if spec in KINDS:
            return self.speech.quantity(value, spec)
        return super().format_field(value, spec)


def _and(names: Sequence[str]) -> str:
    return " and ".join((", ".join(names[:-1]), names[-1])) if len(names) > 1 else "".join(names)
