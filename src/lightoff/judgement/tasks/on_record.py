"""Whether what a task leaves behind is on record in a visit, and is right."""

from collections.abc import Callable, Iterable

from lightoff.judgement.answer import Row
from lightoff.judgement.history import Held, Key, history
from lightoff.judgement.tasks.task import Record
from lightoff.machine import Machine, Visit
from lightoff.machine.visit import StepTimed, TripProof

Recorder = Callable[[Visit, Record], bool]


def recorder(machine: Machine, visit: Visit) -> Callable[[Record], bool]:
    """Tells whether something is on record, a reading not stale."""
    left = history(machine, visit).left

    def is_on_record(record: Record) -> bool:
        if record.kind == "reading":
            return _is_read(left, record)
        return _ON_RECORD[record.kind](visit, record)

    return is_on_record


def is_wrong(record: Record, rows: Iterable[Row]) -> bool:
    """Whether what is on record came out wrong: nothing may be built on it.

    A reading is wrong where it is past a limit that must not be passed; whatever else is off is
    set right in its own time.
    """
    found = [row for row in rows if row.decision == "does not conform"]
    if record.kind == "reading":
        return any(row.severity == "stop" for row in found)
    return bool(found)


def is_unproven(record: Record, rows: Iterable[Row]) -> bool:
    """Whether a proof is on record that does not settle it: another is due."""
    return record.kind != "reading" and any(row.decision == "undecided" for row in rows)


def is_put_off(rows: Iterable[Row]) -> bool:
    """Whether everything that rests on a record was put off; a stop row cannot be."""
    there = list(rows)
    return bool(there) and all(
        row.decision == "deferred" and row.severity != "stop" for row in there
    )


def _is_read(left: dict[Key, Held], record: Record) -> bool:
    return any(
        point in record.names and (not record.runs or run in record.runs) and not held.stale
        for (run, point), held in left.items()
    )


def _checked(visit: Visit, record: Record) -> bool:
    return any(check.id in record.names for check in visit.checks)


def _tripped(visit: Visit, record: Record) -> bool:
    """Acted, and seen to restart as intended or not."""
    proofs = [p for p in visit.trips if p.id in record.names and p.furnace == record.furnace]
    return bool(proofs) and proofs[-1].acted is not None and proofs[-1].restarted is not None


def _timed(visit: Visit, record: Record) -> bool:
    """By the stopwatch alone, or with the proof of a trip of the same name."""
    every: tuple[StepTimed | TripProof, ...] = (*visit.steps, *visit.trips)
    own = (each for each in every if each.id in record.names and each.furnace == record.furnace)
    return any(each.seconds is not None for each in own)


def _tested(visit: Visit, record: Record) -> bool:
    return any(joint.furnace == record.furnace for joint in visit.joints)


def _set(visit: Visit, record: Record) -> bool:
    return any(point.id in record.names for point in visit.setpoints)


def _handed_over(visit: Visit, record: Record) -> bool:
    return all(getattr(visit, name) is not None for name in record.names)


_ON_RECORD: dict[str, Recorder] = {
    "check": _checked,
    "trip": _tripped,
    "step": _timed,
    "joint": _tested,
    "decay": lambda visit, _: bool(visit.decays),
    "set point": _set,
    "handover": _handed_over,
}
