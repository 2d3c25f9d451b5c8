"""How a target's own readings come to its number: every equation with this visit's numbers."""

from dataclasses import replace
from functools import partial

from lightoff.formula import Step, working
from lightoff.inference.estimate import Estimate, NoSuchStateError
from lightoff.judgement.answer import Row
from lightoff.judgement.evidence import Evidence, evidence
from lightoff.judgement.history import history
from lightoff.judgement.target import Case, Target
from lightoff.judgement.targets import TARGETS
from lightoff.machine import Machine, Visit


def worked(machine: Machine, visit: Visit, row: Row) -> tuple[Step, ...]:
    """The steps from the readings to what they say of a row by themselves.

    The same functions that judged it are asked with numbers that remember what was done to them.
    There are none where a reading is the number, or nothing more than a difference of two.
    """
    told = evidence(machine, visit, history(machine, visit))
    found = _case(machine, told.with_stale() if row.stale else told, row)
    if found is None:
        return ()
    numbers = {_letter(place): each.value for place, each in told.read.items()}
    try:
        return working(partial(_value, *found), of=None, **numbers).steps
    except NoSuchStateError:
        return ()


def _case(machine: Machine, told: Evidence, row: Row) -> tuple[Target, Case] | None:
    for target in TARGETS:
        for instance in target.instances(machine):
            if (target.id, instance.point) == (row.id, row.point) and row.run is not None:
                return target, Case(machine, instance, row.run, told)
    return None


def _value(target: Target, case: Case, **numbers: float) -> float | None:
    """A target's estimate with other numbers for its readings."""
    read = {
        place: replace(each, value=numbers[_letter(place)])
        for place, each in case.evidence.read.items()
    }
    found = target.estimate(replace(case, evidence=replace(case.evidence, read=read)))
    return found.value if isinstance(found, Estimate) else None


def _letter(place: str) -> str:
    return place.replace(".", "_")
