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

    Guarded, a value does not conform when it is surely past one of its limits. That it is hardly
    within both is not enough: of a window narrower than the uncertainty that is always so.

    >>> decide(2.7, 0.2, None, 3.0, "guarded"), decide(2.7, 0.2, None, 3.0, "simple")
    ('undecided', 'conforms')
    >>> decide(2.7, 9.0, 2.9, 3.0, "guarded")
    'undecided'
    """
    if how == "simple":
        return "conforms" if within(value, lower, upper) else "does not conform"
    if probability_within(value, u, lower, upper) >= CONFIDENT:
        return "conforms"
    not_past = (
        probability_within(value, u, lower, None), probability_within(value, u, None, upper)
    )  # fmt: skip
    return "does not conform" if min(not_past) <= 1 - CONFIDENT else "undecided"


def decide_stop(
    readings: list[tuple[float, float]],
    lower: float | None,
    upper: float | None,
    how: Acceptance = "guarded",
) -> tuple[Decision, bool]:
    """A limit that must not be passed, judged on every reading since the last adjustment.

    A bare reading past the limit does not conform, whatever else would explain it. Returns the
    decision, and whether an earlier reading past the limit still stands on the record.

    Parameters
    ----------
    readings : value and standard uncertainty of each, in time [SI]
    lower, upper : limits, None where open [SI]
    how : guarded, save for the target whose rule is simple
    """
    decisions = [decide(value, u, lower, upper, how) for value, u in readings]
    past = [not within(value, lower, upper) for value, _ in readings]
    stood, since = retaken(past, [d == "conforms" for d in decisions], steady(readings[-2:]))
    if past[-1]:
        return "does not conform", since
    return (stood if since and stood == "undecided" else decisions[-1]), since


def retaken(past: list[bool], proven: list[bool], steady: bool) -> tuple[Decision, bool]:
    """What a reading past a limit leaves behind when it is taken again without an adjustment.

    It stays undecided until two later steady readings conform. Returns that decision, and whether
    any earlier reading was past the limit.

    >>> retaken([True, False], [False, True], steady=True)
    ('undecided', True)
    >>> retaken([True, False, False], [False, True, True], steady=True)
    ('conforms', True)
    """
    if past[-1]:
        return "does not conform", any(past[:-1])
    if not any(past):
        return ("conforms" if proven[-1] else "undecided"), False
    later = proven[len(past) - past[::-1].index(True) :]
    settled = len(later) >= 2 and all(later[-2:]) and steady
    return ("conforms" if settled else "undecided"), True


def steady(readings: list[tuple[float, float]]) -> bool:
    """Whether the last two agree within their expanded uncertainty."""
    (one, u), (two, v) = readings[0], readings[-1]
    return abs(one - two) <= COVERAGE * math.hypot(u, v)


def _normal(z: float) -> float:
    return 0.5 * math.erfc(-z / math.sqrt(2))
