"""Limits a job sets in place of the usual ones; a stop limit is loosened only by plate or code."""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

from lightoff.judgement.message import Remark
from lightoff.judgement.target import Bounds, Case, LimitFrom, Target
from lightoff.machine import canonical
from lightoff.machine.visit import Limit

_PLATE = re.compile(r"plate|maker|manufacturer|instructions", re.IGNORECASE)
_AUTHORITY = re.compile(r"authority|code|inspector|jurisdiction|permit", re.IGNORECASE)


@dataclass(frozen=True)
class Allowed:
    """The bounds that hold, and the remark where an override was not taken."""

    bounds: Bounds | None
    remark: Remark | None = None


def allowed(target: Target, case: Case) -> Allowed:
    """The usual bounds, or the job's own."""
    usual = target.bounds(case)
    limit = override(case, target.id)
    if limit is None:
        return Allowed(usual)
    ours = Bounds(limit.lower, limit.upper, said_by(limit.source), limit.source)
    if target.severity != "stop" or usual is None or said_by(limit.source) != "specification":
        return Allowed(ours)
    kept = replace(
        ours,
        lower=_tighter(ours.lower, usual.lower, max),
        upper=_tighter(ours.upper, usual.upper, min),
    )
    if (kept.lower, kept.upper) == (ours.lower, ours.upper):
        return Allowed(ours)
    remark = Remark(limit.place, "stop-limit-not-loosened", {"target": target.id})
    return Allowed(replace(kept, limit_from=usual.limit_from, source=usual.source), remark)


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


def said_by(source: str) -> LimitFrom:
    """Who speaks in a limit's source: the plate, the authority, or else the specification."""
    if _PLATE.search(source):
        return "plate"
    return "code" if _AUTHORITY.search(source) else "specification"


def _tighter(
    ours: float | None, usual: float | None, choose: Callable[[float, float], float]
) -> float | None:
    if ours is None or usual is None:
        return ours if usual is None else usual
    return choose(ours, usual)
