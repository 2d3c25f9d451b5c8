"""Readings past a limit that must stop, taken again: they stay on record, and out of the fit."""

from lightoff.inference.conformity import within
from lightoff.judgement.evidence import Evidence
from lightoff.judgement.limits import allowed
from lightoff.judgement.target import Case, Target
from lightoff.judgement.targets import TARGETS


def retaken(evidence: Evidence) -> frozenset[str]:
    """The places of readings past a stop limit that a later reading of the same point followed."""
    return frozenset(
        place
        for target in TARGETS
        if target.severity == "stop"
        for instance in target.instances(evidence.machine)
        if instance.needs == (instance.point,)
        for run in instance.runs
        for place in _past(target, Case(evidence.machine, instance, run, evidence))
    )


def _past(target: Target, case: Case) -> list[str]:
    """Earlier readings of a case past its limit."""
    earlier = case.evidence.readings(case.instance.point, case.run)[:-1]
    bounds = allowed(target, case).bounds if earlier else None
    if bounds is None:
        return []
    values = ((each.place, case.evidence.of(each).value) for each in earlier)
    return [place for place, value in values if not within(value, bounds.lower, bounds.upper)]
