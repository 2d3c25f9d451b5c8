"""What to carry: each kind of instrument the work takes, and what of it is at hand."""

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from lightoff.judgement.plan.carried import gauges_for, quantity_of
from lightoff.judgement.tasks import Task
from lightoff.judgement.tasks.instruments import readers
from lightoff.machine import Visit
from lightoff.machine.visit import Instrument

THE_UNIT = "the unit itself"
Calibration = Literal["in date", "out of date", "not told"]


@dataclass(frozen=True)
class AtHand:
    """One of the job's instruments, and whether its calibration holds on the day; `due` as ISO."""

    id: str
    kind: str
    calibration: Calibration
    due: str | None


@dataclass(frozen=True)
class Carry:
    """One kind of instrument, what for, and which of the job's own serve.

    Where not `due` it is of help, and nothing waits for it; `lacking` are points that nothing at
    hand reads.
    """

    kind: str
    due: bool
    quantities: tuple[str, ...]
    tasks: tuple[str, ...]
    points: tuple[str, ...]
    at_hand: tuple[AtHand, ...]
    lacking: tuple[str, ...]


@dataclass(frozen=True)
class _Use:
    """One reason to carry a kind: a task, and the points any one of which it reads there."""

    kind: str
    task: str
    points: tuple[str, ...]
    due: bool


def carry(visit: Visit, every: Iterable[Task], on: dt.date | None) -> tuple[Carry, ...]:
    """Everything these tasks take, what is waited for first."""
    by_kind: dict[str, list[_Use]] = {}
    for use in (use for task in every for use in _uses(task)):
        by_kind.setdefault(use.kind, []).append(use)
    rows = (_row(visit, kind, uses, on) for kind, uses in by_kind.items())
    return tuple(sorted((row for row in rows if row is not None), key=lambda row: not row.due))


def _uses(task: Task) -> list[_Use]:
    """Its readings, each by the usual kind, and its tools; the unit itself is there already."""
    readings = (record for record in task.records if record.kind == "reading")
    found = [
        _Use(kinds[0], task.id, record.names, record.due)
        for record in readings
        if (kinds := readers(record.names[0])) and kinds[0] != THE_UNIT
    ]
    reading = {use.kind for use in found}
    tools = (kind for kind in task.instruments if kind not in (*reading, THE_UNIT))
    return found + [_Use(kind, task.id, (), True) for kind in tools]


def _row(visit: Visit, kind: str, uses: list[_Use], on: dt.date | None) -> Carry | None:
    """What the work waits for; where that is nothing, what is of help and at hand, if anything."""
    due = any(use.due for use in uses)
    serving = [(use, _serving(visit, use)) for use in uses if use.due or not due]
    if not due:
        serving = [(use, there) for use, there in serving if there]
    if not serving:
        return None
    at_hand = {instrument.id for _, there in serving for instrument in there}
    return Carry(
        kind=kind,
        due=due,
        quantities=_once(quantity_of(use.points[0], kind) for use, _ in serving if use.points),
        tasks=_once(use.task for use, _ in serving),
        points=_once(use.points[0] for use, _ in serving if use.points),
        at_hand=tuple(_at_hand(i, on) for i in visit.instruments if i.id in at_hand),
        lacking=_once(use.points[0] for use, there in serving if use.points and not there),
    )


def _serving(visit: Visit, use: _Use) -> list[Instrument]:
    """The instruments at hand for a use: of its kind, or where there are none of another."""
    if not use.points:
        return [instrument for instrument in visit.instruments if instrument.kind == use.kind]
    there = [g.instrument for point in use.points for g in gauges_for(visit, point) if g.instrument]
    return [instrument for instrument in there if instrument.kind == use.kind] or there


def _at_hand(instrument: Instrument, on: dt.date | None) -> AtHand:
    held: Calibration = "not told"
    if instrument.due is not None and on is not None:
        held = "in date" if instrument.due >= on else "out of date"
    due = None if instrument.due is None else instrument.due.isoformat()
    return AtHand(instrument.id, instrument.kind, held, due)


def _once(names: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(names))
