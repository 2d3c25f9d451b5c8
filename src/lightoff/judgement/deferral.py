"""Targets put off with a reason; a deferral never replaces a reading."""

from dataclasses import replace

from lightoff.judgement.answer import Row
from lightoff.judgement.message import message
from lightoff.machine import Machine, Visit, canonical
from lightoff.machine.visit import Deferred


def deferred(machine: Machine, visit: Visit, row: Row) -> Row:
    """The row, put off where the visit says so and nothing was measured."""
    if row.decision != "not measured":
        return row
    for put_off in visit.deferred:
        if _covers(machine, put_off, row):
            return replace(row, decision="deferred", why=message("deferred", reason=put_off.why))
    return row


def _covers(machine: Machine, put_off: Deferred, row: Row) -> bool:
    run = None if put_off.run is None else canonical(machine, put_off.run)
    return (
        put_off.target == row.id
        and put_off.furnace in (None, row.furnace)
        and put_off.point in (None, row.point)
        and run in (None, row.run)
    )
