"""The decision: guarded for what must stop, simple where the uncertainty is small enough.

Taken on what all readings together say. A reading past a limit that must stop stands by itself,
and a reading that does not fit may only take a certainty away, never give one.
"""

from collections.abc import Sequence
from dataclasses import replace

from lightoff.inference.conformity import acceptance, decide, decide_stop, within
from lightoff.inference.estimate import Estimate
from lightoff.inference.told import Told, Uncertain
from lightoff.judgement.message import Message, message
from lightoff.judgement.target import Bounds, Case, Ruling, Target
from lightoff.machine.visit import Rule


def rule(
    target: Target, case: Case, bounds: Bounds, found: Sequence[Estimate], told: Told | None
) -> tuple[Ruling, Uncertain]:
    """The decision, and what it was taken on.

    `found` is what the target's own readings say, in time; the last is what stands. `told` is what
    all readings together say of it.
    """
    if target.severity == "stop" and (told is None or _was_past(bounds, found)):
        return _ruled(target, case, bounds, found), found[-1]
    if told is None:
        own = _ruled(target, case, bounds, found)
        doubt = message("suspect-open") if _suspected(case) else None
        return (replace(own, decision="undecided", why=doubt) if doubt else own), found[-1]
    ruling = _ruled(target, case, bounds, [*found[:-1], told])
    if ruling.decision == "undecided" and told.plain < told.u:  # doubt acquits nobody
        plainly = _ruled(target, case, bounds, [*found[:-1], replace(told, u=told.plain)])
        ruling = plainly if plainly.decision == "does not conform" else ruling
    why = _against(target, case, bounds, found, ruling)
    return (replace(ruling, decision="undecided", why=why) if why else ruling), told


def _against(
    target: Target, case: Case, bounds: Bounds, found: Sequence[Estimate], ruling: Ruling
) -> Message | None:
    """What speaks against a decision on all readings that fit each other."""
    own = _ruled(target, case, bounds, found).decision if found else None
    suspected = _suspected(case)
    if ruling.decision == "undecided":
        return message("suspect-open") if suspected else None
    if ruling.decision == "does not conform":
        return message("suspect-within") if suspected and own == "conforms" else None
    if suspected:
        return message("suspected")
    if own == "does not conform":
        return message("own-reading")
    if case.together is None or not _past_with_misfits(target, case, bounds, found):
        return None
    return message("suspect-decides", readings=case.together.misfit_names)


def _past_with_misfits(
    target: Target, case: Case, bounds: Bounds, found: Sequence[Estimate]
) -> bool:
    """Whether it does not conform as soon as the readings that do not fit are believed too."""
    if case.together is None or not case.together.misfits:
        return False
    told = target.told(replace(case, together=case.together.with_misfits))
    if told is None:
        return False
    ruling = _ruled(target, case, bounds, [*found[:-1], replace(told, u=told.plain)])
    return ruling.decision == "does not conform"


def _ruled(target: Target, case: Case, bounds: Bounds, found: Sequence[Uncertain]) -> Ruling:
    if target.judge is not None:
        own = target.judge(case, bounds, found)
        if own is not None:
            return own
    if target.severity == "stop":
        return _stop(bounds, found)
    return _usual(bounds, found[-1], case.evidence.visit.rule)


def _was_past(bounds: Bounds, found: Sequence[Estimate]) -> bool:
    """Whether any reading by itself was past the limit."""
    return not all(within(each.value, bounds.lower, bounds.upper) for each in found)


def _suspected(case: Case) -> bool:
    """Whether a reading it rests on does not fit the others."""
    if case.together is None:
        return False
    points = (*case.instance.needs, *case.instance.beside)
    rests_on = case.evidence.moments(points, case.run)
    return any(reading.place in case.together.suspected for reading in rests_on)


def _stop(bounds: Bounds, found: Sequence[Uncertain]) -> Ruling:
    series = [(each.value, each.u) for each in found]
    decision, stood = decide_stop(series, bounds.lower, bounds.upper)
    if stood and decision == "undecided":
        return Ruling(decision, "guarded", message("retaken"))
    return Ruling(decision, "guarded", _why(decision, bounds, found[-1]))


def _usual(bounds: Bounds, estimate: Uncertain, setting: Rule) -> Ruling:
    how = acceptance(estimate.expanded, bounds.lower, bounds.upper)
    if setting != "default":
        how = setting
    decision = decide(estimate.value, estimate.u, bounds.lower, bounds.upper, how)
    return Ruling(decision, how, _why(decision, bounds, estimate))


def _why(decision: str, bounds: Bounds, estimate: Uncertain) -> Message:
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
