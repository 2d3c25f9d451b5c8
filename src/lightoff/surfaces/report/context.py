"""Everything the report shows, ready to print: the template only lays it out."""

from collections.abc import Iterable
from dataclasses import dataclass

from markupsafe import Markup

from lightoff.inference.estimate import COVERAGE
from lightoff.job import Job
from lightoff.judgement import Assessment, Row
from lightoff.machine import Machine, Visit, setting_kind
from lightoff.machine.visit import Adjustment, Instrument
from lightoff.surfaces.drawing import mark, state_of, strip
from lightoff.surfaces.drawing.marks import Mark
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.groups import Group, by_group
from lightoff.surfaces.words.plain import is_open
from lightoff.surfaces.words.together import together

VERDICT_MARK: dict[str, Mark] = {
    "not to be left running": "no",
    "not ready": "un",
    "ready, undecided points": "un",
    "ready": "ok",
}
TALLY: tuple[tuple[str, Mark], ...] = (
    ("conforms", "ok"),
    ("does not conform", "no"),
    ("undecided", "un"),
    ("not measured", "nm"),
    ("deferred", "nm"),
)


@dataclass(frozen=True)
class Line:
    """One row of a table; `open` where it asks for something."""

    number: int
    name: str
    run: str
    window: str
    value: str
    spread: str
    unit: str
    found: str
    strip: Markup
    mark: Markup
    result: str
    open: bool
    source: str


@dataclass(frozen=True)
class Open:
    """One open point; the runs in which it is open alike stand together."""

    numbers: str
    name: str
    runs: str
    mark: Markup
    said: str
    window: str


@dataclass(frozen=True)
class Section:
    """One group of rows; `measured` where they have numbers."""

    title: str
    lines: tuple[Line, ...]
    measured: bool


@dataclass(frozen=True)
class Turned:
    """One adjustment."""

    at: str
    what: str
    run: str
    before: str
    after: str


@dataclass(frozen=True)
class Gauge:
    """One instrument that was used."""

    name: str
    kind: str
    calibrated: str
    due: str


@dataclass(frozen=True)
class Report:
    """The whole page."""

    tag: str
    title: str
    verdict: str
    verdict_mark: Markup
    tally: tuple[tuple[Markup, int, str], ...]
    facts: tuple[tuple[str, str], ...]
    open_points: tuple[Open, ...]
    sections: tuple[Section, ...]
    adjustments: tuple[Turned, ...]
    deficiencies: tuple[tuple[str, str, str], ...]
    remarks: tuple[tuple[str, str], ...]
    instruments: tuple[Gauge, ...]
    left: str
    told: str
    by: str
    licence: str
    engine: str


def report_context(job: Job, answer: Assessment, visit: Visit, speech: Speech) -> Report:
    """Put one answer into the words and numbers of the page."""
    machine = job.machine()
    found = {row.key: row for row in answer.as_found}
    numbered = _numbered(answer.targets)
    sections = tuple(
        Section(
            group.title(speech),
            tuple(_line(row, numbered[row.key], found.get(row.key), group, speech) for row in rows),
            measured=any(row.kind is not None for row in rows),
        )
        for group, rows in by_group(answer.targets)
    )
    return Report(
        tag=answer.unit,
        title=speech.word(f"report:{visit.purpose}"),
        verdict=speech.word(f"verdict:{answer.verdict}"),
        verdict_mark=mark(VERDICT_MARK[answer.verdict]),
        tally=_tally(answer, speech),
        facts=_facts(machine, visit, speech, together(answer, speech)),
        open_points=_open_points(answer.targets, numbered, speech),
        sections=sections,
        adjustments=tuple(_turned(a, speech) for a in visit.adjustments),
        deficiencies=tuple(
            (d.what, speech.word(f"severity:{d.severity}"), d.waits_on or "")
            for d in visit.deficiencies
        ),
        remarks=tuple((remark.place, speech.say(remark)) for remark in answer.remarks),
        instruments=_instruments(visit),
        left=visit.left or "",
        told=visit.told or "",
        by=visit.by or "",
        licence=visit.licence or "",
        engine=answer.engine,
    )


_FIRST = ("does not conform", "undecided", "conforms", "deferred", "not measured")
_SEVERITY = ("stop", "correct", "note")


def _urgency(row: Row) -> tuple[int, int]:
    """What must not be left running first, then what is past a limit, then what is unknown."""
    return _FIRST.index(row.decision), _SEVERITY.index(row.severity)


def _open_points(rows: Iterable[Row], numbers: dict[str, int], speech: Speech) -> tuple[Open, ...]:
    alike: dict[tuple[object, ...], list[Row]] = {}
    for row in sorted((row for row in rows if is_open(row)), key=_urgency):
        same = (row.id, row.point, row.furnace, row.decision, row.stale, row.why.message)
        alike.setdefault(same, []).append(row)
    return tuple(_open(group, numbers, speech) for group in alike.values())


def _open(rows: list[Row], numbers: dict[str, int], speech: Speech) -> Open:
    row = rows[-1]
    value, _, unit = _value(row, speech)
    said = [f"{value} {unit}".strip()] if value else []
    said += [_result(row, speech), speech.say(row.why, row)]
    return Open(
        numbers=", ".join(str(numbers[each.key]) for each in rows),
        name=speech.row(row),
        runs=", ".join(each.run for each in rows if each.run),
        mark=mark(state_of(row)),
        said="; ".join(said),
        window=speech.window(row),
    )


def _result(row: Row, speech: Speech) -> str:
    state = state_of(row)
    result = speech.word(f"decision:{row.decision}")
    if state in ("hi", "lo"):
        result = speech.word("too high" if state == "hi" else "too low")
    beside = [speech.word("mark:stale")] if row.stale else []
    beside += [speech.read(row, apart=1.0)]
    return ", ".join(filter(None, [result, *beside]))


def _numbered(rows: Iterable[Row]) -> dict[str, int]:
    ordered = (row for _, group in by_group(rows) for row in group)
    return {row.key: number for number, row in enumerate(ordered, start=1)}


def _line(row: Row, number: int, found: Row | None, group: Group, speech: Speech) -> Line:
    value, spread, unit = _value(row, speech)
    window = speech.window(row)
    return Line(
        number=number,
        name=speech.row(row, furnace=not group.furnace),
        run=row.run or "",
        window=window,
        value=value,
        spread=spread,
        unit=unit,
        found=_found(row, found, speech),
        strip=strip(row, f"{window}: {value} {unit}", width=112, height=16),
        mark=mark(state_of(row)),
        result=_result(row, speech),
        open=is_open(row),
        source=row.source or "",
    )


def _value(row: Row, speech: Speech) -> tuple[str, str, str]:
    if row.estimate is None or row.kind is None:
        return "", "", ""
    expanded = COVERAGE * (row.standard_uncertainty or 0.0)
    shown = speech.parts(row.estimate, row.kind, expanded=expanded)
    return shown.number, speech.spread(expanded, row.kind), shown.unit


def _found(row: Row, found: Row | None, speech: Speech) -> str:
    """The value as found, where it was another one."""
    if found is None or found.estimate is None or found.measured == row.measured:
        return ""
    return _value(found, speech)[0]


def _tally(answer: Assessment, speech: Speech) -> tuple[tuple[Markup, int, str], ...]:
    decisions = [row.decision for row in answer.targets]
    told = [
        (mark(sign), decisions.count(name), speech.word(f"count:{name}"))
        for name, sign in TALLY
        if name in decisions
    ]
    stale = sum(row.stale for row in answer.targets)
    return (*told, *([(mark("stale"), stale, speech.word("count:stale"))] if stale else []))


def _facts(
    machine: Machine, visit: Visit, speech: Speech, readings: str
) -> tuple[tuple[str, str], ...]:
    unit, site = machine.unit, machine.site
    heat = sum(furnace.input for furnace in machine.furnaces)
    gas = machine.furnaces[0].gas
    parties = dict(machine.parties)
    facts = {
        "unit": f"{unit.tag}, {unit.serial}" if unit.serial else unit.tag,
        "serves": unit.serves,
        "heat": f"{gas}, {speech.quantity(heat, 'heat')}, furnaces: {len(machine.furnaces)}",
        "airflow": speech.quantity(machine.design.airflow, "airflow"),
        "altitude": speech.quantity(site.altitude, "length"),
        "date": visit.date.isoformat() if visit.date is not None else None,
        "readings": readings,
        **{name: parties.get(name) for name in ("owner", "installer", "authority", "permit")},
    }
    return tuple((speech.word(f"fact:{name}"), text) for name, text in facts.items() if text)


def _turned(adjustment: Adjustment, speech: Speech) -> Turned:
    kind = setting_kind(adjustment.what)

    def shown(value: float | str | None) -> str:
        if isinstance(value, float) and kind is not None:
            return speech.quantity(value, kind)
        return str(value or "")

    return Turned(
        at=adjustment.at.strftime("%H:%M"),
        what=speech.setting(adjustment.what),
        run=adjustment.run or "",
        before=shown(adjustment.before),
        after=shown(adjustment.after),
    )


def _instruments(visit: Visit) -> tuple[Gauge, ...]:
    used = {reading.instrument for reading in visit.readings}

    def gauge(instrument: Instrument) -> Gauge:
        calibrated, due = instrument.calibrated, instrument.due
        return Gauge(
            instrument.id,
            instrument.kind,
            calibrated.isoformat() if calibrated else "",
            due.isoformat() if due else "",
        )

    return tuple(gauge(i) for i in visit.instruments if i.id in used)
