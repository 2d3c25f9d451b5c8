"""What a fit says of anything: the spread of every quantity, and how well readings check another.

Everything is linear about the solution. In the measure of the readings' own covariance (their
triangle L) a quantity a has the variance a·a - g·g + r·r: what was known before, less what the
readings told (g), plus what the free unknowns leave open (r).
"""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import NamedTuple

from lightoff.inference.algebra import Algebra, Matrix
from lightoff.inference.orthogonal import Turned, dot
from lightoff.inference.solver import Readings, Solution

Weights = Sequence[float]
ROUNDING = 1e-12  # [1] of a reading's own variance: less than that is no check but rounding


@dataclass(frozen=True)
class Quantity:
    """Something of the model: its value, and its slopes by free, common and each group's own.

    `alone` is a standard uncertainty that nothing else shares [its unit].
    """

    value: float
    free: Weights
    common: Weights
    own: Mapping[int, Weights] = field(default_factory=dict)
    alone: float = 0.0


def combined(value: float, terms: Sequence[tuple[float, Quantity]]) -> Quantity:
    """A quantity of others, with its slopes by each of them."""
    own: dict[int, list[float]] = {}
    for slope, each in terms:
        for group, weights in each.own.items():
            there = own.setdefault(group, [0.0] * len(weights))
            own[group] = [t + slope * w for t, w in zip(there, weights, strict=True)]
    return Quantity(
        value,
        _sum((slope, each.free) for slope, each in terms),
        _sum((slope, each.common) for slope, each in terms),
        own,
        math.hypot(*(slope * each.alone for slope, each in terms)),
    )


def _sum(terms: Iterable[tuple[float, Weights]]) -> list[float]:
    scaled = [[slope * w for w in weights] for slope, weights in terms]
    return [sum(each) for each in zip(*scaled, strict=True)]


class Errors(NamedTuple):
    """What the error of an estimate is made of, each a signed standard uncertainty [its unit].

    `readings` are what each reading's own error does, `common` and `own` what the unknowns do that
    were known before: those of gauges, of the machine, and of each run.
    """

    readings: Weights
    common: Weights
    own: tuple[Weights, ...]


@dataclass(frozen=True)
class Posterior:
    """The linear picture of a solution."""

    solution: Solution
    readings: Readings
    shared: Sequence[Weights]
    algebra: Algebra

    @cached_property
    def _triangle(self) -> Turned:
        """The free slopes in the readings' measure, turned into a triangle."""
        return self.algebra.tall(list(zip(*self.solution.ground.free, strict=True)))

    @cached_property
    def condition(self) -> float:
        """How nearly a free unknown only moves what those before it move: 1 where none does."""
        columns = self.solution.ground.free
        if not columns:
            return 1.0
        sizes = [math.sqrt(dot(column, column)) for column in columns]
        return max(s / abs(d) for s, d in zip(sizes, self._triangle.diagonal, strict=True))

    @cached_property
    def _open(self) -> list[list[float]]:
        """What of each reading no free unknown can follow, in the readings' measure."""
        n = len(self.readings.values)
        units = [[float(i == j) for i in range(n)] for j in range(n)]
        measured = self.algebra.forward(self.solution.ground.triangle, units)
        if not self.solution.ground.free:
            return [list(each) for each in measured]
        p = len(self.solution.ground.free)
        return [list(self._triangle.turned(each)[p:]) for each in measured]

    def u(self, quantity: Quantity) -> float:
        """Standard uncertainty of a quantity [its unit]."""
        told = self._told(quantity)
        variance = dot(quantity.common, quantity.common) - dot(told, told)
        variance += sum(dot(own, own) for own in quantity.own.values()) + quantity.alone**2
        if self.solution.ground.free:
            spread = self._triangle.back_turned(self._left_open(quantity, told))
            variance += dot(spread, spread)
        return math.sqrt(max(variance, 0.0))

    def errors(self, quantity: Quantity) -> Errors:
        """The same uncertainty in its parts: their squares add up to its square."""
        ground, use = self.solution.ground, self.algebra
        told = self._told(quantity)
        if ground.free:
            spread = self._triangle.back_turned(self._left_open(quantity, told))
            told = [t + s for t, s in zip(told, self._triangle.turned_back(spread), strict=True)]
        gain = use.backward(ground.triangle, told)
        common = use.across(ground.slopes.common, gain)
        own = [use.across(ground.slopes.own[rows], gain[rows]) for rows in self.readings.groups]
        for group, slopes in quantity.own.items():
            own[group] = [o - s for o, s in zip(own[group], slopes, strict=True)]
        return Errors(
            [g * u for g, u in zip(gain, self.readings.u, strict=True)],
            [c - a for c, a in zip(common, quantity.common, strict=True)],
            tuple(own),
        )

    def _told(self, quantity: Quantity) -> Sequence[float]:
        """How a quantity moves with the readings by what was known before, in their measure."""
        ground, use = self.solution.ground, self.algebra
        moved = use.times(ground.slopes.common, quantity.common)
        for group, own in quantity.own.items():
            rows = self.readings.groups[group]
            of_group = use.times(ground.slopes.own[rows], own)
            moved[rows] = [m + o for m, o in zip(moved[rows], of_group, strict=True)]
        (told,) = use.forward(ground.triangle, [moved])
        return list(told)

    def _left_open(self, quantity: Quantity, told: Sequence[float]) -> list[float]:
        """How it moves with the free unknowns beyond that."""
        moved = self.algebra.times(self._free, told)
        return [a - m for a, m in zip(quantity.free, moved, strict=True)]

    @cached_property
    def _free(self) -> Matrix:
        return self.algebra.matrix(self.solution.ground.free)

    def weight(self, reading: int, other: int) -> float:
        """How the pull of one reading moves with another [1/(unit of both)]."""
        low, high = sorted((reading, other))
        return self._weights[high][low]

    @cached_property
    def _weights(self) -> Sequence[Weights]:
        """Of each reading with itself and those before it."""
        return self.algebra.products(self._open)

    def checked(self, reading: int) -> float:
        """One over the variance of a reading against what all others foretell; 0 where none can."""
        return self._checked[reading]

    @cached_property
    def _checked(self) -> list[float]:
        known = [row[i] for i, row in enumerate(self._weights)]
        return [
            k if k * u**2 > ROUNDING else 0.0 for k, u in zip(known, self.readings.u, strict=True)
        ]

    def standardised(self, reading: int) -> float:
        """How far a reading stands from what all others foretell, in standard uncertainties."""
        known = self.checked(reading)
        return self.solution.pull[reading] / math.sqrt(known) if known > 0 else 0.0

    def redundancy(self, reading: int) -> float:
        """Share of a reading's variance that others foretell; 0 where nothing checks it, at most 1.

        Where no two readings share an error it is Baarda's redundancy number.
        """
        shared = self.shared[reading]
        variance = self.readings.u[reading] ** 2 + dot(shared, shared)
        return min(variance * self.checked(reading), 1.0)
