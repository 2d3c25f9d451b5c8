"""The short answer: one sentence over a visit, and one line of counts."""

from collections.abc import Iterable
from dataclasses import dataclass

from lightoff.judgement import Assessment, Row
from lightoff.judgement.verdict import is_open
from lightoff.machine import WINTER, kind_of
from lightoff.surfaces.drawing import state_of
from lightoff.surfaces.drawing.marks import Mark
from lightoff.surfaces.web.contexts.rows import anchor, value_of
from lightoff.surfaces.words import Speech

_SEVERITIES = ("stop", "correct", "note")
_DECISIONS = ("does not conform", "undecided", "not measured", "deferred", "conforms")
_MARKS: dict[str, Mark] = {
    "conforms": "ok",
    "does not conform": "no",
    "undecided": "un",
    "not measured": "nm",
    "deferred": "nm",
}
VERDICT_MARKS: dict[str, Mark] = {
    "not to be left running": "no",
    "not ready": "un",
    "ready, undecided points": "un",
    "ready": "ok",
}


@dataclass(frozen=True)
class Answer:
    """The verdict with its worst reason; `href` leads to the row that gave it."""

    mark: Mark
    sentence: str
    href: str


@dataclass(frozen=True)
class Count:
    """How many rows stand somewhere; `beside` for what is counted besides the decisions."""

    mark: Mark
    number: int
    word: str
    beside: bool


def answer_of(answer: Assessment, speech: Speech) -> Answer:
    """The verdict, then the worst finding: number, then limit."""
    verdict = speech.word(f"verdict:{answer.verdict}")
    row = worst_row(answer)
    if row is None:
        return Answer("ok", speech.word("answer:all-conform", verdict=verdict), "")
    mark: Mark = VERDICT_MARKS[answer.verdict]
    if row.decision == "does not conform":
        mark = state_of(row)
    sentence = speech.word("answer", verdict=verdict, reason=reason(answer, row, speech))
    return Answer(mark, _ended(sentence), f"#{anchor(row)}")


def _ended(sentence: str) -> str:
    """A sentence with its full stop, which a unit may bring already."""
    return sentence if sentence.endswith(".") else f"{sentence}."


def worst_row(answer: Assessment) -> Row | None:
    """The row that weighs most on the verdict, None where nothing is open."""
    rows = [r for r in answer.targets if r.required and r.severity != "note" and _blocks(r)]
    return min(rows, key=weight, default=None)


def _blocks(row: Row) -> bool:
    return row.decision == "does not conform" or is_open(row)


def weight(row: Row) -> tuple[bool, int, int]:
    """For sorting, the heaviest first: what must not run; then what does not conform, is open."""
    failed = row.severity == "stop" and row.decision == "does not conform"
    return not failed, _DECISIONS.index(row.decision), _SEVERITIES.index(row.severity)


def reason(answer: Assessment, row: Row, speech: Speech) -> str:
    """A row as the reason for a verdict."""
    if row.decision in ("not measured", "deferred"):
        rows = [r for r in answer.targets if r.required and r.decision == row.decision]
        one = "one" if len(rows) == 1 else "many"
        name = _lowered(plain_name(rows[0], speech))
        return speech.word(f"answer:{row.decision}:{one}", count=len(rows), name=name)
    value = value_of(row, speech)
    name = _lowered(plain_name(row, speech))
    if value is None:
        return speech.word("answer:proof", name=name, why=speech.say(row.why, row))
    number = speech.quantity(row.estimate or 0.0, row.kind or "number", expanded=_expanded(row))
    if row.decision == "does not conform":
        said = "answer:foretold" if row.run == WINTER else "answer:value"
        return speech.word(said, name=name, value=number, window=speech.window(row))
    if row.decision == "undecided":
        return speech.word("answer:undecided", name=name, why=speech.say(row.why, row))
    return speech.word("answer:stale", name=name)


def plain_name(row: Row, speech: Speech) -> str:
    """What was read, in which run: a limit's own name tells a technician less than its point."""
    if row.point is None or row.run is None:
        return speech.row(row)
    if kind_of(row.point) is None and row.point.split(".")[0] not in ("input", "co_air_free"):
        name = speech.row(row)
    else:
        name = speech.point(row.point)
    return speech.word("answer:name", name=name, run=speech.run(row.run))


def _expanded(row: Row) -> float:
    return 2 * (row.standard_uncertainty or 0.0)


def _lowered(name: str) -> str:
    """A name within a sentence: its first letter small, unless it begins with an abbreviation."""
    return name if name[1:2].isupper() else name[:1].lower() + name[1:]


def counts_of(rows: Iterable[Row], speech: Speech) -> tuple[Count, ...]:
    """How many rows stand where, as a mark, a number and a word."""
    there = list(rows)
    order = ("conforms", "does not conform", "undecided", "not measured", "deferred")
    counts = [
        Count(_MARKS[d], sum(row.decision == d for row in there), speech.word(f"count:{d}"), False)
        for d in order
    ]
    counts.append(Count("stale", sum(r.stale for r in there), speech.word("count:stale"), True))
    lone = sum(r.unchecked for r in there)
    counts.append(Count("lone", lone, speech.word("count:unchecked"), True))
    return tuple(count for count in counts if count.number)
