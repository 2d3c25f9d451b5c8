"""The usual rule: guarded for what must stop, simple where the gauge is fine enough."""

from lightoff.inference.conformity import acceptance, decide, decide_stop
from lightoff.inference.estimate import Estimate
from lightoff.judgement.message import Message, message
from lightoff.judgement.target import Bounds, Case, Ruling, Target
from lightoff.machine.visit import Rule


def rule(target: Target, case: Case, bounds: Bounds, found: list[Estimate]) -> Ruling:
    """The decision on the estimates found, in time; the last is what stands."""
    if target.judge is not None:
        own = target.judge(case, bounds, found)
        if own is not None:
            return own
    if target.severity == "stop":
        return _stop(bounds, found)
    return _usual(bounds, found[-1], case.evidence.visit.rule)


def _stop(bounds: Bounds, found: list[Estimate]) -> Ruling:
    series = [(each.value, each.u) for each in found]
    decision, stood = decide_stop(series, bounds.lower, bounds.upper)
    if stood and decision == "undecided":
        return Ruling(decision, "guarded", message("retaken"))
    return Ruling(decision, "guarded", _why(decision, bounds, found[-1]))


def _usual(bounds: Bounds, estimate: Estimate, setting: Rule) -> Ruling:
    how = acceptance(estimate.expanded, bounds.lower, bounds.upper)
    if setting != "default":
        how = setting
    decision = decide(estimate.value, estimate.u, bounds.lower, bounds.upper, how)
    return Ruling(decision, how, _why(decision, bounds, estimate))


def _why(decision: str, bounds: Bounds, estimate: Estimate) -> Message:
    """Which limit, and by how much [SI]."""
    if decision == "conforms":
        return message("within")
    if decision == "undecided":
        return message("straddles", expanded=estimate.expanded)
    if bounds.upper is not None and estimate.value > bounds.upper:
        return message("above", by=estimate.value - bounds.upper)
    if bounds.lower is not None and estimate.value < bounds.lower:
        return message("below", by=bounds.lower - estimate.value)
    return message("hardly-within")
