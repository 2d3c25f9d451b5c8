"""The work of a start-up: tasks with what comes before them, in the order of work."""

from collections.abc import Sequence

from lightoff.judgement.answer import Row
from lightoff.judgement.tasks import airside, firing, gas, leaving, locked_out, power, trips
from lightoff.judgement.tasks.build import built
from lightoff.judgement.tasks.progress import Progress, standing
from lightoff.judgement.tasks.task import Record, Task, Work
from lightoff.machine import Machine, Visit

__all__ = ["WORK", "Progress", "Record", "Task", "progress", "tasks"]

WORK: tuple[Work, ...] = (
    *locked_out.WORK,
    *power.WORK,
    *airside.WORK,
    *gas.WORK,
    *firing.WORK,
    *trips.WORK,
    *leaving.WORK,
)


def tasks(machine: Machine) -> tuple[Task, ...]:
    """Every task of this unit, in the order of work."""
    return built(machine, WORK)


def progress(
    machine: Machine, visit: Visit, rows: Sequence[Row] | None = None
) -> tuple[Progress, ...]:
    """Where each of them stands; `rows` are those of the visit's answer, where it is at hand."""
    return standing(machine, visit, tasks(machine), rows)
