"""The unknowns that leave the smallest sum of squares, nothing being known of them before.

The same solver as that of a visit. Steps are scaled by each column's own size (Moré 1978), so that
a pressure and a share may stand side by side.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from lightoff.inference.algebra import Apart
from lightoff.inference.orthogonal import Matrix, Triangle
from lightoff.inference.solver import Readings, State, UndeterminedError, solve
from lightoff.inference.solver import Slopes as SlopesOf

Residuals = Callable[[list[float]], Sequence[float]]
Slopes = Callable[[list[float]], Matrix]

FINE = 6e-6  # [1] step of a slope from both sides, the cube root of a float's last digit


@dataclass(frozen=True)
class Fit:
    """Where the sum of squares is least.

    `spread` is the inverse of the triangle of the slopes there: the covariance of the values is
    `spread` times its own transpose, for residuals of unit variance. `leverages` say how much each
    residual is bound to its own reading; what is left of one is the reading's redundancy.
    """

    values: tuple[float, ...]
    residuals: tuple[float, ...]
    spread: Matrix
    leverages: tuple[float, ...]
    steps: int
    converged: bool

    @property
    def sum_of_squares(self) -> float:
        return math.fsum(r * r for r in self.residuals)

    @property
    def degrees_of_freedom(self) -> int:
        """How many residuals more than unknowns."""
        return len(self.residuals) - len(self.values)

    def covariance(self, i: int, j: int) -> float:
        """Covariance of two values."""
        return math.fsum(a * b for a, b in zip(self.spread[i], self.spread[j], strict=True))

    def u(self, i: int) -> float:
        """Standard uncertainty of a value."""
        return math.sqrt(self.covariance(i, i))


@dataclass(frozen=True)
class _Plain:
    """Residuals as a model: readings of nothing, each as uncertain as the next."""

    residuals: Residuals
    slope: Slopes

    def shown(self, state: State) -> Sequence[float]:
        return self.residuals(list(state.free))

    def slopes(self, state: State) -> SlopesOf:
        free = self.slope(list(state.free))
        none: Matrix = [[] for _ in free]
        return SlopesOf(free, none, none, holds=False)


def fit(
    residuals: Residuals,
    start: Sequence[float],
    *,
    slopes: Slopes | None = None,
    most_steps: int = 500,
) -> Fit:
    """The values near `start` that make the residuals smallest; `UndeterminedError` if none can.

    `slopes` says how each residual moves with each value, one row a residual; else it is tried out.
    """
    slope: Slopes = slopes or (lambda values: slopes_of(residuals, values))
    n = len(residuals(list(start)))
    found = solve(
        _Plain(residuals, slope),
        Readings([0.0] * n, [1.0] * n, ()),
        State(tuple(map(float, start)), (), ()),
        apart=_apart,
        algebra=Apart(),
        most_steps=most_steps,
    )
    values, left = list(found.state.free), [-each for each in found.left]
    return _finished(slope(values), values, left, found.steps, found.converged)


def _apart(before: State, after: State) -> float:
    """How far a step went, in what moves nothing but the last digits."""
    pairs = zip(before.free, after.free, strict=True)
    return max((abs(a - b) / (1e-13 * abs(b) + 1e-300) for b, a in pairs), default=0.0)


def slopes_of(residuals: Residuals, values: Sequence[float]) -> Matrix:
    """How each residual moves with each value, from both sides; one row a residual."""
    columns = []
    for i, value in enumerate(values):
        step = FINE * (abs(value) or 1.0)
        up, down = list(values), list(values)
        up[i], down[i] = value + step, value - step
        width = up[i] - down[i]
        pairs = zip(residuals(up), residuals(down), strict=True)
        columns.append([(a - b) / width for a, b in pairs])
    return [list(row) for row in zip(*columns, strict=True)]


def _finished(
    slopes: Matrix, values: list[float], found: list[float], steps: int, converged: bool
) -> Fit:
    triangle = Triangle(slopes)
    if not triangle.full_rank():
        raise UndeterminedError("some unknowns can only be told apart by another reading")
    spread = triangle.inverse()
    rows = [
        [math.fsum(a * b for a, b in zip(row, column, strict=True)) for column in _columns(spread)]
        for row in slopes
    ]
    leverages = tuple(math.fsum(x * x for x in row) for row in rows)
    return Fit(tuple(values), tuple(found), spread, leverages, steps, converged)


def _columns(matrix: Matrix) -> list[tuple[float, ...]]:
    return list(zip(*matrix, strict=True))
