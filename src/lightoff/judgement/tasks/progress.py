"""How far the work has come: what is done, what is ready, and what the rest waits for."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from lightoff.judgement.answer import Row
from lightoff.judgement.assess import assess
from lightoff.judgement.tasks.on_record import is_put_off, is_unproven, is_wrong, recorder
from lightoff.judgement.tasks.order import nearest
from lightoff.judgement.tasks.resting import needs_of, rests_on
from lightoff.judgement.tasks.task import Record, Task
from lightoff.machine import Machine, Visit

Standing = Literal["done", "ready", "waiting"]


@dataclass(frozen=True)
class Progress:
    """Where one task stands.

    `waits_for` are the tasks that must come first, by id; `missing` what it still has to leave on
    record; `wrong` what of that is on record and came out wrong.
    """

    task: Task
    state: Standing
    waits_for: tuple[str, ...]
    missing: tuple[Record, ...]
    wrong: tuple[Record, ...]


def standing(
    machine: Machine, visit: Visit, every: Sequence[Task], rows: Sequence[Row] | None = None
) -> tuple[Progress, ...]:
    """Where each task stands that this visit's purpose asks for; a start-up asks for all.

    `rows` are those of the visit's answer, where it is at hand.
    """
    found = assess(machine, visit, whole=False).targets if rows is None else rows
    resting = _resting(machine, every, found)
    is_on_record = recorder(machine, visit)
    ties = {task.id: task.needs for task in every}
    open_before: dict[str, tuple[str, ...]] = {}  # by task, the nearest open ones to wait for
    told = []
    for task in every:
        waits_for = nearest(ties, dict.fromkeys(x for n in task.needs for x in open_before[n]))
        if not _is_asked(visit, task, resting):
            open_before[task.id] = waits_for
            continue
        its = _progress(task, waits_for, {r: resting[r] for r in task.due}, is_on_record)
        open_before[task.id] = waits_for if its.state == "done" else (task.id,)
        told.append(its)
    return tuple(told)


def _resting(
    machine: Machine, every: Sequence[Task], rows: Sequence[Row]
) -> dict[Record, tuple[Row, ...]]:
    """The rows that rest on each record."""
    needs = needs_of(machine)
    records = {record for task in every for record in task.records}
    return {record: tuple(r for r in rows if rests_on(r, record, needs)) for record in records}


def _is_asked(visit: Visit, task: Task, resting: Mapping[Record, tuple[Row, ...]]) -> bool:
    if visit.purpose == "start-up":
        return True
    return any(row.required for record in task.due for row in resting[record])


def _progress(
    task: Task,
    waits_for: tuple[str, ...],
    resting: Mapping[Record, tuple[Row, ...]],
    is_on_record: Callable[[Record], bool],
) -> Progress:
    wrong = tuple(record for record, rows in resting.items() if is_wrong(record, rows))
    missing = tuple(
        record
        for record, rows in resting.items()
        if record in wrong
        or is_unproven(record, rows)
        or not (is_on_record(record) or is_put_off(rows))
    )
    is_left = not missing if task.due else any(map(is_on_record, task.records))
    if is_left and not (task.last and waits_for):
        return Progress(task, "done", (), (), ())
    return Progress(task, "waiting" if waits_for else "ready", waits_for, missing, wrong)
