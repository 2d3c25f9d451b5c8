"""The page of all units: where each one stands, and on whom it waits."""

from collections.abc import Sequence
from dataclasses import dataclass

from lightoff.surfaces.drawing import state_of
from lightoff.surfaces.drawing.marks import Mark
from lightoff.surfaces.web.contexts.answer import VERDICT_MARKS, Count, reason, worst_row
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.shell import Shell, outside, unit_url
from lightoff.surfaces.words import Speech

_VERDICTS = ("not to be left running", "not ready", "ready, undecided points", "ready")
_NUMBERS = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
UNSTARTED = "not started"


@dataclass(frozen=True)
class Standing:
    """One unit in the record: its latest visit judged, or none where it was never visited."""

    stream: str
    tag: str
    serves: str
    bench: Bench | None


@dataclass(frozen=True)
class UnitLine:
    """One line of the list."""

    href: str
    tag: str
    serves: str
    visited: str
    mark: Mark
    verdict: str
    reason: str
    waits_on: str


@dataclass(frozen=True)
class UnitsPage:
    """Everything on the page."""

    shell: Shell
    sentence: str
    counts: tuple[Count, ...]
    units: tuple[UnitLine, ...]


def units_page(units: Sequence[Standing], speech: Speech) -> UnitsPage:
    """The page of all units."""
    return UnitsPage(
        shell=outside(speech, speech.word("title:units"), "units"),
        sentence=_sentence(units, speech),
        counts=_counts(units, speech),
        units=tuple(_line(unit, speech) for unit in units),
    )


def _verdict(unit: Standing) -> str:
    return unit.bench.answer.verdict if unit.bench else UNSTARTED


def _sentence(units: Sequence[Standing], speech: Speech) -> str:
    """How many units, and the worst of it."""
    if not units:
        return speech.word("units:none")
    count = _number(len(units)).capitalize()
    many = speech.word(f"units:{'one' if len(units) == 1 else 'many'}", count=count)
    standings = [_verdict(unit) for unit in units]
    worst = next((v for v in (*_VERDICTS[:3], UNSTARTED) if v in standings), "ready")
    if worst == "ready":
        return speech.word("units:all-ready", many=many)
    told = speech.word(f"units:{worst}", count=_number(standings.count(worst)).capitalize())
    waiting = sum(bool(unit.bench and _waits_on(unit.bench)) for unit in units)
    waits = ""
    if waiting:
        waits = speech.word(
            f"units:waiting:{'one' if waiting == 1 else 'many'}", count=_number(waiting)
        )
    return f"{many} {told}{waits}."


def _number(count: int) -> str:
    return _NUMBERS[count] if count < len(_NUMBERS) else str(count)


def _counts(units: Sequence[Standing], speech: Speech) -> tuple[Count, ...]:
    standings = [_verdict(unit) for unit in units]
    counts = [
        Count(_mark(v), standings.count(v), speech.word(f"count:{v}"), False)
        for v in (*_VERDICTS, UNSTARTED)
    ]
    return tuple(count for count in counts if count.number)


def _mark(verdict: str) -> Mark:
    return VERDICT_MARKS.get(verdict, "nm")


def _line(unit: Standing, speech: Speech) -> UnitLine:
    bench = unit.bench
    if bench is None:
        return UnitLine(
            href=unit_url(unit.stream),
            tag=unit.tag,
            serves=unit.serves,
            visited="",
            mark="nm",
            verdict=speech.word("verdict:not started"),
            reason=speech.word("units:first-visit"),
            waits_on="",
        )
    answer, row = bench.answer, worst_row(bench.answer)
    mark = _mark(answer.verdict)
    if row is not None and row.decision == "does not conform":
        mark = state_of(row)
    return UnitLine(
        href=bench.base,
        tag=unit.tag,
        serves=unit.serves,
        visited=_visited(bench),
        mark=mark,
        verdict=bench.speech.word(f"verdict:{answer.verdict}"),
        reason=reason(answer, row, bench.speech) if row is not None else "",
        waits_on=_waits_on(bench),
    )


def _visited(bench: Bench) -> str:
    word, date = bench.speech.word, bench.visit.date
    day = f"{date.day} {date:%b %Y}" if date else word("visit:undated")
    return day if bench.closed else word("visit:open", day=day)


def _waits_on(bench: Bench) -> str:
    """Whom what is left open waits on."""
    who = dict.fromkeys(each.waits_on for each in bench.visit.deficiencies if each.waits_on)
    return ", ".join(who)
