"""What was typed into a calculation's form: each input's text, and the unit chosen beside it."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from lightoff.calculations import Calculation, Input
from lightoff.quantity import BY_NAME, KINDS, LightoffError, System, find
from lightoff.surfaces.calculating import several
from lightoff.surfaces.web.contexts.fields import unit_of, units_of

UNIT = ".unit"  # an input's name with this is the unit chosen beside it


@dataclass(frozen=True)
class Asked:
    """A calculation as it is asked: the texts by input, the units chosen beside them.

    A bare number is taken in the unit that stands beside its field.
    """

    calculation: Calculation
    system: System = "us"
    texts: Mapping[str, str] = field(default_factory=dict)
    units: Mapping[str, str] = field(default_factory=dict)

    @property
    def typed(self) -> dict[str, str]:
        """What was typed, each number with its unit, blanks left out: this is what a link holds."""
        there = (each for each in self.calculation.inputs if self.texts.get(each.name))
        return {each.name: self._whole(each) for each in there}

    def parts(self, asked: Input) -> tuple[str, str]:
        """What stands in an input's field, and the unit beside it."""
        text = self.texts.get(asked.name, "")
        written = _units_in(text, asked)
        unit = find(written[-1]) if len(written) == 1 and text.endswith(written[-1]) else None
        if unit is None or not _fits(unit.name, asked):
            return text, self._unit(asked)
        return text.removesuffix(written[-1]).strip(), unit.name

    def _unit(self, asked: Input) -> str:
        """The unit a bare number is taken in: the one chosen, else the reader's usual one."""
        chosen = self.units.get(asked.name, "")
        if self.texts.get(asked.name) and _fits(chosen, asked):
            return chosen
        return unit_of(asked.kind, self.system)

    def _whole(self, asked: Input) -> str:
        """A text with its unit, where it has none of its own."""
        text, unit = self.texts[asked.name], self._unit(asked)
        bare = not asked.choices and unit != "1" and not _units_in(text, asked)
        return f"{text} {unit}" if bare else text


def asked_of(calculation: Calculation, query: Mapping[str, str]) -> Asked:
    """The query of an address, taken apart."""
    system: System = "si" if query.get("units") == "si" else "us"
    names = [each.name for each in calculation.inputs]
    sent = {name: text.strip() for name, text in query.items()}
    texts = {name: sent[name] for name in names if sent.get(name)}
    units = {name: sent[name + UNIT] for name in names if name + UNIT in sent}
    return Asked(calculation, system, texts, units)


def units_beside(asked: Input, system: System, chosen: str) -> tuple[str, ...]:
    """The units offered beside a field, the one chosen among them."""
    return tuple(dict.fromkeys((*units_of(asked.kind, system), chosen)))


def _fits(unit: str, asked: Input) -> bool:
    return unit in BY_NAME and BY_NAME[unit].dimension == KINDS[asked.kind].dimension


def _units_in(text: str, asked: Input) -> list[str]:
    """What stands after each number of a text; of a list that cannot be split, the whole of it."""
    try:
        pieces = several.split(text) if asked.many else [text]
    except LightoffError:
        return [text]
    return [unit for piece in pieces if (unit := several.unit_of(piece))]
