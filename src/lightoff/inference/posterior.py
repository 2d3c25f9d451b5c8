"""What a fit says of anything: the spread of every quantity, and how well readings check another.

Everything is linear about the solution. In the measure of the readings' own covariance (their
triangle L) a quantity a has the variance a·a - g·g + r·r: what was known before, less what the
readings told (g), plus what the free unknowns leave open (r).
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

from lightoff.inference.algebra import Algebra, dot
from lightoff.inference.orthogonal import Triangle
from lightoff.inference.solver import Readings, Solution

Weights = Sequence[float]
ROUNDING = 1e-12  # [1] of a reading's own variance: less than that is no check but rounding


@dataclass(frozen=True)
class Quantity:
    """Something of the model: its value, and its slopes by free, common and each group's own."""

    value: float
    free: Weights
    common: Weights
    own: Mapping[int, Weights] = field(default_factory=dict)


def combined(value: float, parts: Sequence[tuple[float, Quantity]]) -> Quantity:
    """A quantity made of others, each with its weight: how the whole moves with it."""
    own: dict[int, list[float]] = {}
    for weight, part in parts:
        for group, slopes in part.own.items():
            before = own.get(group, [0.0] * len(slopes))
            own[group] = [b + weight * s for b, s in zip(before, slopes, strict=True)]
    return Quantity(
        value,
        _sum([(weight, part.free) for weight, part in parts]),
        _sum([(weight, part.common) for weight, part in parts]),
        own,
    )


def _sum(parts: Sequence[tuple[float, Weights]]) -> list[float]:
    columns = zip(*(weights for _, weights in parts), strict=True)
    factors = [factor for factor, _ in parts]
    return [dot(factors, column) for column in columns]


@dataclass(frozen=True)
class Posterior:
    """The linear picture of a solution."""

    solution: Solution
    readings: Readings
    errors: Sequence[Weights]
    algebra: Algebra

    @cached_property
    def _triangle(self) -> Triangle:
        """The free slopes in the readings' measure, turned into a triangle."""
        return Triangle(list(zip(*self.solution.ground.free, strict=True)))

    @cached_property
    def _open(self) -> list[list[float]]:
        """What of each reading no free unknown can follow, in the readings' measure."""
        n = len(self.readings.values)
        units = [[float(i == j) for i in range(n)] for j in range(n)]
        measured = self.algebra.forward(self.solution.ground.triangle, units)
        if not self.solution.ground.free:
            return [list(each) for each in measured]
        p = len(self.solution.ground.free)
        return [self._triangle.turned(each)[p:] for each in measured]

    def u(self, quantity: Quantity) -> float:
        """Standard uncertainty of a quantity [its unit]."""
        ground, use = self.solution.ground, self.algebra
        moved = use.times(ground.slopes.common, quantity.common)
        for group, own in quantity.own.items():
            rows = self.readings.groups[group]
            of_group = use.times(ground.slopes.own[rows], own)
            moved[rows] = [m + o for m, o in zip(moved[rows], of_group, strict=True)]
        (told,) = use.forward(ground.triangle, [moved])
        variance = dot(quantity.common, quantity.common) - dot(told, told)
        variance += sum(dot(own, own) for own in quantity.own.values())
        if ground.free:
            left = [a - dot(c, told) for a, c in zip(quantity.free, ground.free, strict=True)]
            spread = self._triangle.back_turned(left)
            variance += dot(spread, spread)
        return math.sqrt(max(variance, 0.0))

    def weight(self, reading: int, other: int) -> float:
        """How the pull of one reading moves with another [1/(unit of both)]."""
        return dot(self._open[reading], self._open[other])

    def checked(self, reading: int) -> float:
        """One over the variance of a reading against what all others foretell; 0 where none can."""
        known = self.weight(reading, reading)
        return known if known * self.readings.u[reading] ** 2 > ROUNDING else 0.0

    def standardised(self, reading: int) -> float:
        """How far a reading stands from what all others foretell, in standard uncertainties."""
        known = self.checked(reading)
        return self.solution.pull[reading] / math.sqrt(known) if known > 0 else 0.0

    def redundancy(self, reading: int) -> float:
        """Share of a reading's variance that others foretell; 0 where nothing checks it, at most 1.

        Where no two readings share an error it is Baarda's redundancy number.
        """
        shared = self.errors[reading]
        variance = self.readings.u[reading] ** 2 + dot(shared, shared)
        return min(variance * self.checked(reading), 1.0)

    def alike(self, reading: int, other: int) -> float:
        """Correlation of what two readings stand off: at 1 nothing tells whose error it is."""
        size = math.sqrt(self.checked(reading) * self.checked(other))
        return self.weight(reading, other) / size if size > 0 else 0.0
