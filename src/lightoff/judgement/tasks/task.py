"""What a task is: a piece of the work, what must come before it, and what it leaves on record."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Literal, NamedTuple

from lightoff.machine import Machine

Recorded = Literal["reading", "check", "trip", "step", "joint", "decay", "set point", "handover"]
Licence = Literal["gas", "electrical"]


@dataclass(frozen=True)
class Record:
    """One thing a task leaves in the record of a visit.

    Any one of `names` serves; a reading in any one of `runs` (in any run at all where none is
    named). What is not `due` helps, but nothing waits for it.
    """

    kind: Recorded
    names: tuple[str, ...]
    runs: tuple[str, ...] = ()
    furnace: int | None = None
    due: bool = True


@dataclass(frozen=True, kw_only=True)
class Task:
    """One piece of the work on one unit.

    `step` is its place in the order of work, `needs` the tasks that must be done before it,
    `licence` what the law may ask of whoever does it, `instruments` the kinds it takes. A `last`
    task counts only once everything it needs is done: what was closed before is opened again.
    """

    id: str
    name: str
    step: int
    furnace: int | None
    needs: tuple[str, ...]
    records: tuple[Record, ...]
    cautions: tuple[str, ...]
    minutes: float
    licence: Licence | None
    instruments: tuple[str, ...]
    last: bool = False

    @property
    def due(self) -> tuple[Record, ...]:
        """What must be on record before the task is done."""
        return tuple(record for record in self.records if record.due)


class Leading(NamedTuple):
    """A need of the leading furnace's task alone, where any furnace would do."""

    name: str


@dataclass(frozen=True, kw_only=True)
class Work:
    """One row of the order of work: a task of any unit. A new task is one of these.

    `records` says what it leaves behind on a machine, for a furnace (0 for the whole unit); where
    that is nothing, this unit has no such task. `needs` are names of other rows: of the same
    furnace, of every furnace where this one is of the unit. `minutes` are engineering judgement.
    """

    name: str
    step: int
    minutes: float
    records: Callable[[Machine, int], Iterable[Record]]
    needs: tuple[str | Leading, ...] = ()
    cautions: tuple[str, ...] = ()
    licence: Licence | None = None
    tools: tuple[str, ...] = ()  # besides the instruments its readings take
    each_furnace: bool = False
    last: bool = False
