"""A value with its uncertainty, kept as signed parts so that shared errors add or cancel.

Two readings with one gauge share its gain: the part stands in both under the same key, and a
difference of the two loses it. `combine` carries the parts through any formula by its own slope
(JCGM 100, 5.1.3 and 5.2.2).
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

COVERAGE = 2.0  # [1] expanded over standard uncertainty; about 95 % for a normal distribution
RECTANGULAR = 3**-0.5  # [1] standard uncertainty of a rectangle of half-width 1; JCGM 100, 4.3.7
NO_ACCOUNT = 1e-3  # [1] of the whole: a part as small adds a millionth to its square
_STEP = 0.1  # share of an input's uncertainty over which its slope is taken


class NoSuchStateError(ArithmeticError):
    """The numbers put together describe no machine: a formula has no real, finite value there."""


class Part(NamedTuple):
    """Where a part of the uncertainty comes from: its cause, and what it belongs to."""

    cause: str
    of: str


@dataclass(frozen=True)
class Estimate:
    """A value [SI] and the signed standard uncertainties it is made of [SI]."""

    value: float
    parts: Mapping[Part, float] = field(default_factory=dict)

    @property
    def u(self) -> float:
        """Standard uncertainty [SI]."""
        return math.sqrt(sum(part * part for part in self.parts.values()))

    @property
    def expanded(self) -> float:
        """Expanded uncertainty, k = 2 [SI]."""
        return COVERAGE * self.u

    def budget(self) -> tuple[tuple[Part, float], ...]:
        """The parts of any account, largest first, without sign."""
        least = self.u * NO_ACCOUNT
        sizes = [(part, abs(size)) for part, size in self.parts.items() if abs(size) > least]
        # rounded, so that no last digit puts one before another
        return tuple(sorted(sizes, key=lambda row: (-round(row[1] / self.u, 6), row[0])))


def with_part(estimate: Estimate, cause: str, of: str, size: float) -> Estimate:
    """The same value with one more independent part."""
    return Estimate(estimate.value, {**estimate.parts, Part(cause, of): size})


def combine(formula: Callable[..., float], *inputs: Estimate) -> Estimate:
    """`formula` of the inputs, with their parts carried along by its slopes.

    >>> gauge = {Part("gain", "gauge-1"): 0.2}
    >>> rise = combine(lambda a, b: b - a, Estimate(10.0, gauge), Estimate(30.0, gauge))
    >>> round(rise.value, 6), round(rise.u, 6)
    (20.0, 0.0)

    Raises `NoSuchStateError` where the formula has no real, finite value.
    """
    values = [each.value for each in inputs]
    value = _real(formula, values)
    total: dict[Part, float] = {}
    for position, each in enumerate(inputs):
        if not each.u:
            continue
        slope = _slope(formula, values, position, each.u * _STEP)
        for part, size in each.parts.items():
            total[part] = total.get(part, 0.0) + slope * size
    return Estimate(value, total)


def _slope(formula: Callable[..., float], values: list[float], position: int, step: float) -> float:
    up, down = list(values), list(values)
    up[position] += step
    down[position] -= step
    return (_real(formula, up) - _real(formula, down)) / (2 * step)


def _real(formula: Callable[..., float], values: list[float]) -> float:
    try:
        value = formula(*values)
    except (ZeroDivisionError, ValueError, OverflowError) as error:
        raise NoSuchStateError(str(error)) from error
    if isinstance(value, complex) or not math.isfinite(value):
        raise NoSuchStateError("no real, finite value")
    return value
