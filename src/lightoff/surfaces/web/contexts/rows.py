"""One row of the list: a target in a run, in words, with its window strip."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from markupsafe import Markup

from lightoff.inference.estimate import COVERAGE
from lightoff.judgement import Row
from lightoff.surfaces.drawing import state_of, strip
from lightoff.surfaces.drawing.marks import Mark, State
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.bound import bound

_HARD = (" limit", " maximum")
TONES: dict[State, str] = {"hi": "too high", "lo": "too low"}


@dataclass(frozen=True)
class Flag:
    """A mark beside the decision, with its word."""

    mark: Mark
    word: str


@dataclass(frozen=True)
class Value:
    """A value as it is read: number, ± spread and unit, apart so that they can be set."""

    number: str
    spread: str
    unit: str

    @property
    def text(self) -> str:
        spread = f" ± {self.spread}" if self.spread else ""
        return bound(f"{self.number}{spread} {self.unit}".strip())


@dataclass(frozen=True)
class Verdict:
    """A decision as a row bears it: the mark, what a screen reader says, what is written out."""

    mark: State
    said: str
    word: str  # conforming is silent


@dataclass(frozen=True)
class RowView:
    """One row. `href` leads to its point; where it has none the row is proven by a form."""

    anchor: str
    name: str
    run: str
    verdict: Verdict
    flags: tuple[Flag, ...]
    note: str
    read: str
    found: str
    value: Value | None
    instead: str  # what stands where a value would
    strip: Markup
    window: str
    href: str


def row_view(
    row: Row, speech: Speech, *, href: str = "", found: Row | None = None, furnace: bool = True
) -> RowView:
    """A row in words; `found` is the same row as found, `furnace` whether its name says which."""
    value = value_of(row, speech)
    window = speech.window(row)
    note = "" if row.decision in ("conforms", "not measured") else speech.say(row.why, row)
    return RowView(
        anchor=anchor(row),
        name=speech.row(row, furnace=furnace),
        run=speech.run(row.run),
        verdict=verdict_of(row, speech),
        flags=flags(row, speech),
        note=note if value is not None else "",
        read=speech.read(row, apart=1.0),
        found=as_found(row, found, speech),
        value=value,
        instead="" if value is not None else speech.say(row.why, row),
        strip=strip(row, strip_label(row, value, speech)),
        window=_bare(window, value),
        href=href,
    )


def verdict_of(row: Row, speech: Speech) -> Verdict:
    """The decision of a row, with the word that is written beside it."""
    state = state_of(row)
    said = speech.word(f"decision:{row.decision}")
    if row.decision == "conforms" or (row.decision == "not measured" and row.estimate is None):
        return Verdict(state, said, "")
    return Verdict(state, said, speech.word(TONES.get(state, f"decision:{row.decision}")))


def flags(row: Row, speech: Speech) -> tuple[Flag, ...]:
    """What stands beside the decision."""
    there: list[tuple[bool, Mark, str]] = [
        (row.stale, "stale", "mark:stale"),
        (row.unchecked, "lone", "mark:unchecked"),
    ]
    return tuple(Flag(mark, speech.word(word)) for is_so, mark, word in there if is_so)


def value_of(row: Row, speech: Speech) -> Value | None:
    """The estimate of a row, rounded to its uncertainty."""
    if row.estimate is None or row.kind is None:
        return None
    expanded = COVERAGE * (row.standard_uncertainty or 0.0)
    shown = speech.parts(row.estimate, row.kind, expanded=expanded)
    return Value(shown.number, speech.spread(expanded, row.kind) if expanded else "", shown.unit)


def as_found(row: Row, found: Row | None, speech: Speech) -> str:
    """How it was found, where that is not how it was left."""
    if found is None or found.estimate is None or found.measured == row.measured:
        return ""
    value, verdict = value_of(found, speech), verdict_of(found, speech)
    text = value.text if value else ""
    if verdict.word:
        return speech.word("row:as-found-word", value=text, word=verdict.word)
    return speech.word("row:as-found", value=text)


def strip_label(row: Row, value: Value | None, speech: Speech) -> str:
    """The window strip in words."""
    window = speech.window(row)
    if value is None:
        return speech.word("strip:empty", window=window)
    return speech.word("strip:value", window=window, value=value.text)


def _bare(window: str, value: Value | None) -> str:
    """A window without its unit where the value beside it bears the same."""
    if value is None or not value.unit:
        return window
    for space in (" ", "\u00a0"):
        window = window.removesuffix(f"{space}{value.unit.replace(' ', space)}")
    return window


def anchor(row: Row) -> str:
    """A name for a row within the page."""
    parts = (row.id, row.point or "", row.run or "", str(row.furnace or ""))
    return "row-" + "-".join("".join(c if c.isalnum() else "_" for c in part) for part in parts)


def by_key(rows: tuple[Row, ...]) -> Mapping[str, Row]:
    """Rows by what tells them apart."""
    return {row.key: row for row in rows}


def is_silent(row: Row, rows: Iterable[Row]) -> bool:
    """Whether a hard limit says nothing that the window it belongs to does not say as well."""
    base = next((row.id.removesuffix(end) for end in _HARD if row.id.endswith(end)), "")
    if not base or row.stale or row.decision not in ("conforms", "not measured"):
        return False
    return any(
        (other.id, other.point, other.run) == (base, row.point, row.run)
        and (row.decision == "conforms" or other.decision == row.decision)
        for other in rows
    )
