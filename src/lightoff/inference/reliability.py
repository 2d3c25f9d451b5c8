"""What a set of readings can and can't find out about itself (Baarda 1968)."""

import math
from statistics import NormalDist

LEVEL = 0.001  # [1] chance that a good reading is suspected, both sides; Baarda 1968
POWER = 0.80  # [1] chance that a bad one is; Baarda 1968


def critical(level: float = LEVEL) -> float:
    """Standardised residual above which a reading is suspected, both sides.

    >>> round(critical(0.05), 3)
    1.96
    """
    return NormalDist().inv_cdf(1 - level / 2)


def noncentrality(level: float = LEVEL, power: float = POWER) -> float:
    """How many standard uncertainties of its residual a bias must have to be found.

    >>> round(noncentrality(), 2)
    4.13
    """
    return critical(level) + NormalDist().inv_cdf(power)


def detectable_bias(u: float, redundancy: float, found_at: float | None = None) -> float:
    """Smallest error of a reading that is found; infinite where nothing checks it.

    `u` is the reading's standard uncertainty [its unit], `redundancy` the share of an error that
    shows in its residual, `found_at` the non-centrality.

    >>> round(detectable_bias(0.02, 0.25, 4.13), 4)
    0.1652
    """
    if redundancy <= 0:
        return math.inf
    return (noncentrality() if found_at is None else found_at) * u / math.sqrt(redundancy)


def chi_square_above(value: float, degrees: int) -> float:
    """Chance that the sum of squares of `degrees` standard normal numbers is above `value`.

    >>> round(chi_square_above(9.488, 4), 3)
    0.05
    """
    half = max(value, 0.0) / 2
    a = 0.5 if degrees % 2 else 1.0
    above = math.erfc(math.sqrt(half)) if degrees % 2 else math.exp(-half)
    while a < degrees / 2:  # Abramowitz and Stegun 6.5.22, upwards
        above += math.exp(a * math.log(half) - half - math.lgamma(a + 1)) if half else 0.0
        a += 1
    return above
