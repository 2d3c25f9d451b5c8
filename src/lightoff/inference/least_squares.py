"""The unknowns that leave the smallest sum of squares: Gauss-Newton with Levenberg's damping.

Steps are scaled by each column's own size (Moré 1978), so that a pressure and a share may stand
side by side. Everything goes through orthogonal reflections; nothing is random.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from lightoff.inference.orthogonal import Matrix, Triangle

Residuals = Callable[[list[float]], Sequence[float]]
Slopes = Callable[[list[float]], Matrix]

START = 1e-2  # [1] damping of the first step
LEAST_KEPT = 0.1  # [1] of what the slopes promise, for a step to count
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


class UndeterminedError(ArithmeticError):
    """Some unknown moves no residual, or only together with another."""


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
    values = [float(each) for each in start]
    found = list(residuals(values))
    damping, scale, steps, converged = START, [0.0] * len(values), 0, False
    while steps < most_steps and not converged:
        there = slope(values)
        sizes = [math.sqrt(math.fsum(x * x for x in c)) for c in zip(*there, strict=True)]
        scale = [max(s, n) for s, n in zip(scale, sizes, strict=True)]
        values, found, damping, converged = _improved(
            residuals, values, found, there, scale, damping
        )
        steps += 1
    return _finished(slope(values), values, found, steps, converged)


def _improved(
    residuals: Residuals, values: list[float], found: list[float], slopes: Matrix,
    scale: list[float], damping: float,
) -> tuple[list[float], list[float], float, bool]:  # fmt: skip
    """The next values: a step counts when the sum of squares falls by a fair share of what the
    slopes promise; the damping follows that share."""
    now = math.fsum(r * r for r in found)
    for _ in range(60):
        step = _step(slopes, found, scale, damping)
        tried = [v + s for v, s in zip(values, step, strict=True)]
        there = _sum(residuals, tried)
        small = _small(step, values)
        promised = now - _promised(slopes, found, step)
        kept = (now - there[0]) / promised if there is not None and promised > 0 else 0.0
        if there is not None and there[0] <= now and (kept > LEAST_KEPT or small):
            return tried, there[1], _damped(damping, kept), small
        if small:
            return values, found, damping, True
        damping *= 10
    return values, found, damping, True


def _damped(damping: float, kept: float) -> float:
    """Less damping where the slopes told the truth, more where they did not."""
    if kept > 0.75:
        return max(damping / 10, 1e-15)
    return damping if kept > 0.25 else damping * 4


def _promised(slopes: Matrix, found: list[float], step: list[float]) -> float:
    """The sum of squares after a step, if the slopes stayed as they are."""
    rows = zip(slopes, found, strict=True)
    after = (r + math.fsum(a * s for a, s in zip(row, step, strict=True)) for row, r in rows)
    return math.fsum(r * r for r in after)


def _step(slopes: Matrix, found: list[float], scale: list[float], damping: float) -> list[float]:
    """The step that makes the linear residuals least, held back in proportion to the damping."""
    n = len(scale)
    held = [[math.sqrt(damping) * scale[i] * (i == j) for j in range(n)] for i in range(n)]
    triangle = Triangle([*slopes, *held])
    if not all(triangle.diagonal):
        raise UndeterminedError("an unknown moves no residual")
    return triangle.back(triangle.turned([-r for r in found] + [0.0] * n))


def _sum(residuals: Residuals, values: list[float]) -> tuple[float, list[float]] | None:
    """The sum of squares and the residuals there; None where there is no such state."""
    try:
        found = list(residuals(values))
        total = math.fsum(r * r for r in found)
    except ArithmeticError:
        return None
    return (total, found) if math.isfinite(total) else None


def _small(step: list[float], values: list[float]) -> bool:
    return all(abs(s) <= 1e-13 * abs(v) + 1e-300 for s, v in zip(step, values, strict=True))


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
