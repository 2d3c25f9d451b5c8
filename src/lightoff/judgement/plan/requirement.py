"""How uncertain a result may be so that it can be decided simply."""

from lightoff.inference.conformity import SMALL_SHARE
from lightoff.inference.estimate import COVERAGE
from lightoff.judgement.target import Bounds, Target
from lightoff.judgement.targets.flue import CO_AIR_EXPANDED

GUARD = 1.645  # [1] standard uncertainties from a limit at which one is sure of it at 95 %
# what has a rule of its own: input conforms unless it is provably off; clean air is believed when
# it is finely measured
_OWN: dict[str, float | None] = {
    "input": None,
    "input limit": None,
    "CO in the discharge": CO_AIR_EXPANDED,
}


def most_expanded(target: Target, bounds: Bounds, expected: float | None) -> float | None:
    """The largest expanded uncertainty with which a target is still decided simply [SI].

    A third of the window, or of the limit's own magnitude where it is one-sided. What must not be
    passed is always guarded: there it is what still leaves the expected value surely within.
    """
    if target.id in _OWN:
        return _OWN[target.id]
    if target.severity == "stop" and expected is not None:
        room = _room(bounds, expected)
        if room > 0:
            return COVERAGE * room / GUARD
    if bounds.lower is not None and bounds.upper is not None:
        return (bounds.upper - bounds.lower) / SMALL_SHARE
    limit = bounds.lower if bounds.lower is not None else bounds.upper
    return abs(limit or 0.0) / SMALL_SHARE


def _room(bounds: Bounds, expected: float) -> float:
    """How far a value lies within the nearer limit."""
    sides = [
        expected - bounds.lower if bounds.lower is not None else None,
        bounds.upper - expected if bounds.upper is not None else None,
    ]
    return min(side for side in sides if side is not None)
