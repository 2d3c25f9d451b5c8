"""Is the limit met? Conformity under uncertainty, after JCGM 106."""

import math
from typing import Literal

from lightoff.inference.estimate import COVERAGE

Decision = Literal["conforms", "does not conform", "undecided", "not measured", "deferred"]
Acceptance = Literal["guarded", "simple"]

CONFIDENT = 0.95  # [1] probability at which a guarded decision is taken
SMALL_SHARE = 3.0  # expanded uncertainty at most a third of the window: simple acceptance


def probability_within(value: float, u: float, lower: float | None, upper: float | None) -> float:
    """Probability that the true value lies within the limits: Phi((TU-y)/u) - Phi((TL-y)/u).

    Parameters
    ----------
    value, u : best estimate and its standard uncertainty [SI]
    lower, upper : limits, None where open [SI]

    Returns
    -------
    probability [1]

    Source: JCGM 106:2012, clause 7.

    >>> round(probability_within(2.7, 0.2, None, 3.0), 3)
    0.933
    """
    if u <= 0:
        return float(within(value, lower, upper))
    above = 1.0 if upper is None else _normal((upper - value) / u)
    below = 0.0 if lower is None else _normal((lower - value) / u)
    return above - below


def within(value: float, lower: float | None, upper: float | None) -> bool:
    """Whether the value itself lies within the limits, ends included."""
    return (lower is None or value >= lower) and (upper is None or value <= upper)


def acceptance(expanded: float, lower: float | None, upper: float | None) -> Acceptance:
    """Simple where the expanded uncertainty is at most a third of the window, else guarded.

    A one-sided window is as wide as its limit is large.
    """
    if lower is not None and upper is not None:
        window = upper - lower
    else:
        window = abs(lower if lower is not None else upper or 0.0)
    return "simple" if expanded * SMALL_SHARE <= window else "guarded"


def decide(
    value: float,
    u: float,
    lower: float | None,
    upper: float | None,
    how: Acceptance,
) -> Decision:
    """The decision by the given rule.

    >>> decide(2.7, 0.2, None, 3.0, "guarded"), decide(2.7, 0.2, None, 3.0, "simple")
    ('undecided', 'conforms')
    """
    if how == "simple":
        return "conforms" if within(value, lower, upper) else "does not conform"
    probability = probability_within(value, u, lower, upper)
    if probability >= CONFIDENT:
        return "conforms"
    return "does not conform" if probability <= 1 - CONFIDENT else "undecided"


def decide_stop(
    readings: list[tuple[float, float]], lower: float | None, upper: float | None
) -> tuple[Decision, bool]:
    """A limit that must not be passed, judged on every reading since the last adjustment.

    A bare reading past the limit does not conform. Taken again without an adjustment, it stays
    undecided until two later steady readings conform. Returns the decision, and whether an earlier
    reading past the limit still stands on the record.

    Parameters
    ----------
    readings : value and standard uncertainty of each, in time [SI]
    lower, upper : limits, None where open [SI]
    """
    value, u = readings[-1]
    past = [not within(each, lower, upper) for each, _ in readings]
    if past[-1]:
        return "does not conform", any(past[:-1])
    decision = decide(value, u, lower, upper, "guarded")
    if not any(past):
        return decision, False
    later = readings[len(past) - past[::-1].index(True) :]
    proven = all(decide(y, s, lower, upper, "guarded") == "conforms" for y, s in later[-2:])
    if len(later) >= 2 and proven and _steady(later[-2], later[-1]):
        return decision, True
    return "undecided", True


def _steady(one: tuple[float, float], two: tuple[float, float]) -> bool:
    return abs(one[0] - two[0]) <= COVERAGE * math.hypot(one[1], two[1])


def _normal(z: float) -> float:
    return 0.5 * math.erfc(-z / math.sqrt(2))
