"""Which rows of an answer rest on what a task leaves on record."""

from collections.abc import Mapping

from lightoff.judgement.answer import Row
from lightoff.judgement.targets import TARGETS
from lightoff.judgement.tasks.task import Record
from lightoff.machine import WINTER, Machine

Needs = Mapping[tuple[str, str | None], tuple[str, ...]]  # by target and point
_TIGHT = {"joint": "tightness: joints", "decay": "tightness: decay"}


def needs_of(machine: Machine) -> Needs:
    """The points whose reading makes a row, by its target and its point."""
    return {
        (target.id, instance.point): instance.needs
        for target in TARGETS
        for instance in target.instances(machine)
    }


def rests_on(row: Row, record: Record, needs: Needs) -> bool:
    """Whether a row is decided by this record, alone or among others."""
    if record.kind == "reading":
        there = not record.runs or row.run in (*record.runs, WINTER)
        return there and not set(record.names).isdisjoint(needs.get((row.id, row.point), ()))
    if record.kind in ("check", "trip"):
        own = row.id == f"{record.kind}: {record.names[0]}"
        return own and row.furnace == record.furnace
    if record.kind == "step":
        own = row.kind == "time" and row.point == record.names[0] and row.run is None
        return own and row.furnace == record.furnace
    return row.id == _TIGHT.get(record.kind)
