"""Limits a job sets in place of the usual ones.

A stop limit is loosened only by naming plate or authority; the rule is the same for every target,
whether it is read, timed or tested.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from lightoff.judgement.message import Remark
from lightoff.judgement.target import Bounds, Case, LimitFrom, Target
from lightoff.machine import canonical
from lightoff.machine.visit import Limit, Severity

_PLATE = re.compile(r"\b(plate|maker|manufacturer)", re.IGNORECASE)
_AUTHORITY = re.compile(r"\b(authority|jurisdiction|inspector)\b", re.IGNORECASE)
_CODE = re.compile(r"\b(code|permit)\b", re.IGNORECASE)


@dataclass(frozen=True)
class Allowed:
    """The bounds that hold, and the remark where an override was not taken."""

    bounds: Bounds | None
    remark: Remark | None = None


def allowed(target: Target, case: Case) -> Allowed:
    """The usual bounds, or the job's own."""
    return overridden(target.severity, target.bounds(case), override(case, target.id))


def override(case: Case, target: str) -> Limit | None:
    """The job's limit for this target, point and run: the last that fits."""
    fits = [
        limit
        for limit in case.evidence.visit.limits
        if limit.target == target
        and limit.point in (None, case.instance.point)
        and (limit.run is None or canonical(case.machine, limit.run) == case.run)
    ]
    return fits[-1] if fits else None


def overridden(severity: Severity, usual: Bounds | None, limit: Limit | None) -> Allowed:
    """What holds once a job has had its say."""
    if limit is None:
        return Allowed(usual)
    ours = Bounds(limit.lower, limit.upper, said_by(limit.source), limit.source)
    if severity != "stop" or usual is None:
        return Allowed(ours)
    if may_loosen(limit.source):
        return Allowed(_both_sides(ours, usual))
    kept = replace(
        ours,
        lower=_tighter(ours.lower, usual.lower, max),
        upper=_tighter(ours.upper, usual.upper, min),
    )
    if (kept.lower, kept.upper) == (ours.lower, ours.upper):
        return Allowed(ours)
    remark = Remark(limit.place, "stop-limit-not-loosened", {"target": limit.target})
    return Allowed(replace(kept, limit_from=usual.limit_from, source=usual.source), remark)


def said_by(source: str) -> LimitFrom:
    """Who speaks in a limit's source: the plate, the code, or else the specification."""
    if _PLATE.search(source):
        return "plate"
    by_law = _AUTHORITY.search(source) or _CODE.search(source)
    return "code" if by_law else "specification"


def may_loosen(source: str) -> bool:
    """Whether a source may loosen a stop limit: it names the plate or the authority itself.

    >>> may_loosen("fan plate, revised"), may_loosen("template 3"), may_loosen("the local code")
    (True, False, False)
    """
    return bool(_PLATE.search(source) or _AUTHORITY.search(source))


def _both_sides(ours: Bounds, usual: Bounds) -> Bounds:
    """A side that is not named stays as it was."""
    return replace(
        ours,
        lower=usual.lower if ours.lower is None else ours.lower,
        upper=usual.upper if ours.upper is None else ours.upper,
    )


def _tighter(
    ours: float | None, usual: float | None, choose: Callable[[float, float], float]
) -> float | None:
    if ours is None or usual is None:
        return ours if usual is None else usual
    return choose(ours, usual)
