"""The most probable state of a model, its readings and what was known before being as they are.

Some unknowns are free: nothing is known of them but what the readings say. The others are known
before, each as a standard normal number `v` (the model scales it); of these some are common to all
readings, some belong to one group of them (a run), so that their slopes are nothing elsewhere.

Maximum a posteriori, which is weighted least squares, by Gauss-Newton with Levenberg's damping.
What is known before is eliminated first: it only adds to the covariance of the readings, common
unknowns everywhere and a group's own inside its block. So the equations are as many as there are
readings, however many unknowns there are; and without anything known before this is plain least
squares (`least_squares.fit`).
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal, NamedTuple, Protocol

from lightoff.inference.algebra import Algebra, Groups, Lists, Matrix, Vector
from lightoff.inference.orthogonal import dot

START = 1e-2  # [1] damping of the first step
LEAST_KEPT = 0.1  # [1] of what the slopes promise, for a step to count
WHOLE = 0.5  # of a step: one that went no farther tells nothing of the end
TRIES = 60  # of a step, each ten times as much damped as the one before
LINE_TRIES = 12  # of a step cut down along its line, each half as long as the one before


class UndeterminedError(ArithmeticError):
    """Some free unknown moves no reading, or only together with another."""


class State(NamedTuple):
    """Where a fit stands: free unknowns, common known ones, and those of each group."""

    free: tuple[float, ...]
    common: tuple[float, ...]
    own: tuple[tuple[float, ...], ...]


class Slopes(NamedTuple):
    """How each reading moves, one row a reading; `own` with its group's unknowns."""

    free: Matrix
    common: Matrix
    own: Matrix
    holds: bool = True  # whether anything is known before


class Model(Protocol):
    """What a fit asks of a model: what its readings would be, and how they move."""

    def shown(self, state: State) -> Sequence[float]:
        """Each reading as it would be; an `ArithmeticError` where there is no such state."""

    def slopes(self, state: State) -> Slopes:
        """How each moves there."""


class Readings(NamedTuple):
    """What was read, its standard uncertainty that is no other reading's, and the groups."""

    values: Sequence[float]
    u: Sequence[float]
    groups: Groups


class Ground(NamedTuple):
    """The linear equations at a state: the readings' covariance as a triangle, and in its measure
    the free slopes (a column each) and what is to be explained."""

    slopes: Slopes
    triangle: Matrix
    free: tuple[Vector, ...]
    due: Vector


@dataclass(frozen=True)
class Solution:
    """Where the fit ended.

    `left` is what the model does not explain of each reading, `pull` how hard each reading pulls
    against all that is known, both in the order of the readings; `objective` their weighted sum of
    squares with that of the known unknowns.
    """

    state: State
    left: tuple[float, ...]
    objective: float
    ground: Ground
    pull: Vector
    steps: int
    converged: bool


Apart = Callable[[State, State], float]
Ended = Literal["solved", "stuck"] | None


def solve(
    model: Model,
    readings: Readings,
    start: State,
    *,
    apart: Apart,
    algebra: Algebra | None = None,
    damping: float = START,
    most_steps: int = 500,
    gain: float = 0.0,
) -> Solution:
    """The most probable state near `start`.

    `apart` says how far two states are from each other; the fit ends when a step goes less than 1,
    or where one would lessen the sum of squares by less than `gain`.
    """
    use = algebra or Lists()
    state, left = start, _left(model, readings, start)
    scale, steps = [0.0] * len(start.free), 0
    ended: Ended = None
    slopes = model.slopes(state)
    while steps < most_steps and ended is None:
        ground = _ground(slopes, readings, state, left, use)
        scale = [max(s, math.sqrt(dot(c, c))) for s, c in zip(scale, ground.free, strict=True)]
        trial = _Trial(model, readings, ground, scale, use, apart, gain)
        state, left, damping, ended = trial.improved(state, left, damping)
        slopes, steps = model.slopes(state), steps + 1
    ground = _ground(slopes, readings, state, left, use)
    _, rest = _free_step(ground, scale, 0.0, use)
    return Solution(
        state=state,
        left=tuple(left),
        objective=_objective(readings, state, left),
        ground=ground,
        pull=use.backward(ground.triangle, rest),
        steps=steps,
        converged=ended == "solved",
    )


def _left(model: Model, readings: Readings, state: State) -> list[float]:
    return [y - h for y, h in zip(readings.values, model.shown(state), strict=True)]


def _objective(readings: Readings, state: State, left: Sequence[float]) -> float:
    """Weighted sum of squares of everything that was read or known."""
    read = math.fsum((e / u) ** 2 for e, u in zip(left, readings.u, strict=True))
    known = math.fsum(v * v for v in state.common)
    return read + known + math.fsum(v * v for own in state.own for v in own)


def _ground(
    slopes: Slopes, readings: Readings, state: State, left: Sequence[float], use: Algebra
) -> Ground:
    due = [e + k for e, k in zip(left, use.times(slopes.common, state.common), strict=True)]
    for group, own in zip(readings.groups, state.own, strict=True):
        known = use.times(slopes.own[group], own)
        due[group] = [e + k for e, k in zip(due[group], known, strict=True)]
    triangle = _triangle(slopes, readings, use)
    *free, due = use.forward(triangle, [*zip(*slopes.free, strict=True), due])
    return Ground(slopes, triangle, tuple(free), due)


def _triangle(slopes: Slopes, readings: Readings, use: Algebra) -> Matrix:
    """The triangle of what is not free: errors of the readings, and what was known before."""
    variances = [u * u for u in readings.u]
    covariance = use.covariance(slopes.common, slopes.own, readings.groups, variances)
    return use.cholesky(covariance)


def _free_step(
    ground: Ground, scale: Sequence[float], damping: float, use: Algebra
) -> tuple[Sequence[float], list[float]]:
    """The step of the free unknowns that leaves least unexplained, and what it leaves."""
    if not scale:
        return [], list(ground.due)
    held = [
        [math.sqrt(damping) * scale[i] * (i == j) for j in range(len(scale))]
        for i in range(len(scale))
    ]
    rows = list(zip(*ground.free, strict=True))
    triangle = use.tall([*rows, *held] if damping else rows)
    if not all(triangle.diagonal):
        raise UndeterminedError("an unknown moves no reading")
    step = triangle.back(triangle.turned([*ground.due, *[0.0] * (len(scale) if damping else 0)]))
    return step, [y - dot(row, step) for y, row in zip(ground.due, rows, strict=True)]


@dataclass(frozen=True)
class _Trial:
    """Steps from one state, more and more damped until one is an improvement."""

    model: Model
    readings: Readings
    ground: Ground
    scale: Sequence[float]
    use: Algebra
    apart: Apart
    gain: float

    def improved(
        self, state: State, left: list[float], damping: float
    ) -> tuple[State, list[float], float, Ended]:
        """The next state, what it leaves, the next damping, and whether the fit has ended.

        A step counts when the sum of squares falls by a fair share of what the slopes promise; the
        damping follows that share. Where they promise next to nothing, or a whole step goes
        nowhere, is the end; where a step had to be cut down to nothing too, but no solution.
        """
        now = _objective(self.readings, state, left)
        for _ in range(LINE_TRIES if self._is_line else TRIES):
            tried, promised, part = self._stepped(state, damping)
            if self._is_line and now - promised < self.gain:
                return state, left, damping, "solved"
            there = self._there(tried)
            still = self.apart(state, tried) < 1
            hoped = (now - promised) * part * (2 - part)  # along a line the sum is a parabola
            kept = (now - there[0]) / hoped if there is not None and hoped > 0 else 0.0
            if there is not None and there[0] <= now and (kept > LEAST_KEPT or still):
                ended: Ended = "solved" if still and part > WHOLE else None
                return tried, there[1], self._eased(damping, kept, part), ended
            if still:
                return state, left, damping, "solved" if part > WHOLE else "stuck"
            damping = 2 * damping + 1 if self._is_line else damping * 10
        return state, left, damping, "stuck"

    @property
    def _is_line(self) -> bool:
        """Whether steps are cut along their line: what is known before shapes them well enough."""
        return bool(self.ground.slopes.holds)

    def _eased(self, damping: float, kept: float, part: float) -> float:
        """Less damping where the slopes told the truth, more where they did not.

        Along a line the next step goes as far as would have been best of this one, its sum of
        squares being a parabola. Else smoothly (Nielsen, IMM-REP-1999-05): by decades it would
        swing between too little and too much, and creep along a narrow valley.
        """
        if self._is_line:
            return max((2 - kept * (2 - part)) / part - 1, 0.0)
        return max(damping * max(1 / 3, 1 - (2 * kept - 1) ** 3), 1e-15)

    def _stepped(self, state: State, damping: float) -> tuple[State, float, float]:
        """The state after a step, the sum of squares the slopes promise after the whole of it, and
        what part of it was gone."""
        part = 1 / (1 + damping) if self._is_line else 1.0
        step, rest = _free_step(
            self.ground, self.scale, 0.0 if self._is_line else damping, self.use
        )
        pull = self.use.backward(self.ground.triangle, rest)
        common = _towards(state.common, self.use.across(self.ground.slopes.common, pull), part)
        own = tuple(
            _towards(known, self.use.across(self.ground.slopes.own[group], pull[group]), part)
            for group, known in zip(self.readings.groups, state.own, strict=True)
        )
        free = tuple(v + part * s for v, s in zip(state.free, step, strict=True))
        return State(free, common, own), math.fsum(x * x for x in rest), part

    def _there(self, state: State) -> tuple[float, list[float]] | None:
        """The sum of squares at a state, and what it leaves; None where there is no such state."""
        try:
            left = _left(self.model, self.readings, state)
            total = _objective(self.readings, state, left)
        except ArithmeticError:
            return None
        return (total, left) if math.isfinite(total) else None


def _towards(now: Sequence[float], wanted: Sequence[float], part: float) -> tuple[float, ...]:
    return tuple(n + part * (w - n) for n, w in zip(now, wanted, strict=True))
