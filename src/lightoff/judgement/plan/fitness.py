"""How much each gauge adds to a result, and how fine it would have to be."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from lightoff.inference.estimate import Estimate
from lightoff.judgement.plan.rehearsal import Rehearsal, Rehearsed
from lightoff.judgement.target import Instance

Fitness = Literal["fine enough", "too coarse", "method too coarse"]
_OF_GAUGE = ("gain", "range", "zero")


@dataclass(frozen=True)
class Share:
    """What one gauge adds to a result [SI], and a reading of it."""

    size: float
    read: Rehearsed


Shares = Mapping[str, Share]  # by whose gain and zero it is, the largest first


def shares_of(told: Rehearsal, found: Estimate, instance: Instance, run: str) -> Shares:
    """What each gauge adds; a reading's last digit is its gauge's."""
    own = [r for r in told.readings if r.reading.run == run and r.reading.point in instance.needs]
    squares = {each.owner: 0.0 for each in own}  # what claims nothing adds nothing
    any_read = {each.owner: each for each in (*reversed(told.readings), *reversed(own))}
    most_of = dict[str, Rehearsed]()
    for part, size in found.budget():
        one = told.at(part.of) if part.cause == "resolution" else None
        owner = one.owner if one is not None else part.of
        if owner in any_read and (one is not None or part.cause in _OF_GAUGE):
            squares[owner] = squares.get(owner, 0.0) + size**2
            most_of.setdefault(owner, one or any_read[owner])
    ranked = sorted(squares, key=lambda owner: -squares[owner])
    return {o: Share(squares[o] ** 0.5, most_of.get(o, any_read[o])) for o in ranked}


def scales(found: Estimate, shares: Shares, most: float) -> dict[str, float | None]:
    """By how much each gauge may be coarser, or must be finer, than it is.

    Where the result is more uncertain than `most` the largest gauges are made finer together, as
    few as will do; where all else alone is too uncertain only the largest is named, with None.
    """
    room = most**2 - found.u**2
    if room >= 0:
        return {owner: _coarser(room, share.size) for owner, share in shares.items()}
    unchanged: dict[str, float | None] = dict.fromkeys(shares, 1.0)
    removed = 0.0
    for count, share in enumerate(shares.values(), start=1):
        removed += share.size**2
        if room + removed > 0:
            factor = ((room + removed) / removed) ** 0.5
            return unchanged | dict.fromkeys(list(shares)[:count], factor)
    return dict.fromkeys(list(shares)[:1], None)


def _coarser(room: float, size: float) -> float | None:
    return (room / size**2 + 1) ** 0.5 if size else None


def fitness_of(found: Estimate, needed: float, factor: float | None) -> Fitness:
    """Of a gauge that may be coarser by a factor, or must be finer."""
    if found.expanded <= needed:
        return "fine enough"
    if factor is None:
        return "method too coarse"
    return "too coarse" if factor < 1 else "fine enough"


def largest_else(found: Estimate, shares: Shares) -> str:
    """The cause of the largest part that is of no gauge."""
    causes = (
        part.cause
        for part, _ in found.budget()
        if part.cause != "resolution" and not (part.cause in _OF_GAUGE and part.of in shares)
    )
    return next(causes, "")
