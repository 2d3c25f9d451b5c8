"""What the solver says of a linear world, against the textbook's joint normal distribution."""

import math
from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lightoff.inference.algebra import Lists
from lightoff.inference.arrays import Arrays
from lightoff.inference.posterior import Posterior, Quantity
from lightoff.inference.solver import Readings, Slopes, State, solve

FREE, COMMON, OWN, GROUPS = 3, 5, 2, (4, 5, 3)
ROWS = sum(GROUPS)
SLICES = (slice(0, 4), slice(4, 9), slice(9, 12))
VAGUE = 1e6  # standard uncertainty that stands for knowing nothing


class Linear:
    """Readings that are sums of unknowns; the last of the common ones are errors of gauges."""

    def __init__(self, seed: int, use: Lists | Arrays) -> None:
        rng = np.random.default_rng(seed)
        self.free, self.common, self.own = (rng.normal(size=(ROWS, n)) for n in (FREE, COMMON, OWN))
        self.y, self.u = rng.normal(size=ROWS) * 3, rng.uniform(0.2, 1.5, ROWS)
        self.use = use

    def shown(self, state: State) -> Sequence[float]:
        own = np.concatenate(
            [self.own[rows] @ each for rows, each in zip(SLICES, state.own, strict=True)]
        )
        return (self.free @ state.free + self.common @ state.common + own).tolist()

    def slopes(self, state: State) -> Slopes:
        common, own = self.use.matrix(self.common.tolist()), self.use.matrix(self.own.tolist())
        return Slopes(self.free.tolist(), common, own)

    def joint(self) -> tuple[np.ndarray, np.ndarray]:
        """Mean and covariance of all unknowns by the normal equations, free, common, own."""
        own = np.zeros((ROWS, OWN * len(GROUPS)))
        for i, rows in enumerate(SLICES):
            own[rows, i * OWN : (i + 1) * OWN] = self.own[rows]
        whole = np.hstack([self.free, self.common, own])
        prior = np.diag([VAGUE**-2] * FREE + [1.0] * (whole.shape[1] - FREE))
        weighted = whole / self.u[:, None] ** 2
        covariance = np.linalg.inv(whole.T @ weighted + prior)
        return covariance @ weighted.T @ self.y, covariance


def apart(before: State, after: State) -> float:
    return 1e6 * max(abs(a - b) for a, b in zip(before.free, after.free, strict=True))


def fitted(model: Linear):
    readings = Readings(model.y.tolist(), model.u.tolist(), SLICES)
    start = State((0.0,) * FREE, (0.0,) * COMMON, ((0.0,) * OWN,) * 3)
    found = solve(model, readings, start, algebra=model.use, damping=1e-12, apart=apart)
    return found, Posterior(found, readings, model.common[:, COMMON - 1 :].tolist(), model.use)


@settings(max_examples=25)
@given(st.integers(0, 10**6), st.sampled_from([Lists(), Arrays()]))
def test_the_solution_is_the_mean_of_the_joint_distribution(seed: int, use: Lists | Arrays) -> None:
    model = Linear(seed, use)
    mean, covariance = model.joint()
    found, posterior = fitted(model)
    state = [*found.state.free, *found.state.common, *(v for own in found.state.own for v in own)]
    assert state == pytest.approx(mean.tolist(), abs=1e-6)
    rng = np.random.default_rng(seed + 1)
    weights = rng.normal(size=mean.size)
    quantity = Quantity(
        0.0,
        weights[:FREE].tolist(),
        weights[FREE : FREE + COMMON].tolist(),
        {i: weights[FREE + COMMON + i * OWN :][:OWN].tolist() for i in range(3)},
    )
    assert posterior.u(quantity) == pytest.approx((weights @ covariance @ weights) ** 0.5, rel=1e-5)
    errors = posterior.errors(quantity)
    parts = [*errors.readings, *errors.common, *(each for own in errors.own for each in own)]
    assert sum(each**2 for each in parts) ** 0.5 == pytest.approx(posterior.u(quantity), rel=1e-6)


@settings(max_examples=15)
@given(st.integers(0, 10**6), st.integers(0, ROWS - 1))
def test_a_standardised_residual_is_that_of_leaving_the_reading_out(seed: int, out: int) -> None:
    model = Linear(seed, Lists())
    found, posterior = fitted(model)
    kept = [i for i in range(ROWS) if i != out]
    own = np.zeros((ROWS, OWN * len(GROUPS)))
    for i, rows in enumerate(SLICES):
        own[rows, i * OWN : (i + 1) * OWN] = model.own[rows]
    known = np.hstack([model.common, own])
    covariance = known @ known.T + np.diag(model.u**2)
    # what the others foretell, by the textbook's best linear unbiased prediction
    weights = np.linalg.inv(covariance[np.ix_(kept, kept)])
    free, to = model.free[kept], covariance[out, kept] @ weights
    spare = np.linalg.inv(free.T @ weights @ free)
    told = spare @ free.T @ weights @ model.y[kept]
    beyond = model.free[out] - to @ free
    error = model.y[out] - to @ model.y[kept] - beyond @ told
    variance = covariance[out, out] - to @ covariance[kept, out] + beyond @ spare @ beyond
    assert posterior.standardised(out) == pytest.approx(error / variance**0.5, rel=1e-6, abs=1e-6)
    assert posterior.checked(out) ** -0.5 == pytest.approx(variance**0.5, rel=1e-6)
    assert 0 <= posterior.redundancy(out) <= 1
    assert found.converged


def test_nothing_but_free_unknowns_leaves_a_reading_unchecked() -> None:
    class Alone:
        def shown(self, state: State) -> Sequence[float]:
            return [state.free[0], state.free[1]]

        def slopes(self, state: State) -> Slopes:
            return Slopes([[1.0, 0.0], [0.0, 1.0]], [[], []], [[], []])

    readings = Readings([4.0, 5.0], [0.1, 0.2], (slice(0, 2),))
    start = State((0.0, 0.0), (), ((),))
    found = solve(Alone(), readings, start, apart=lambda a, b: 1e6 * abs(a.free[0] - b.free[0]))
    posterior = Posterior(found, readings, [[], []], Lists())
    assert found.state.free == pytest.approx((4.0, 5.0))
    assert posterior.redundancy(0) == posterior.standardised(0) == 0.0
    assert posterior.condition == pytest.approx(1.0)
    assert posterior.u(Quantity(0.0, [1.0, 0.0], [])) == pytest.approx(0.1)


class Bent:
    """One reading that falls the faster the farther: a whole step of the slopes goes too far."""

    def __init__(self, bend: float) -> None:
        self.bend = bend

    def shown(self, state: State) -> list[float]:
        (x,), (v,) = state.free, state.common
        return [math.exp(self.bend * x) + 0.1 * v, x]

    def slopes(self, state: State) -> Slopes:
        (x,) = state.free
        return Slopes([[self.bend * math.exp(self.bend * x)], [1.0]], [[0.1], [0.0]], [[], []])


@given(st.floats(0.5, 3.0), st.floats(0.1, 3.0))
def test_a_fit_says_solved_only_where_nothing_is_left_to_gain(bend: float, read: float) -> None:
    """Held against small steps either way from where it ended."""
    model, readings = Bent(bend), Readings([read, 0.0], [0.05, 2.0], (slice(0, 2),))
    start = State((0.0,), (0.0,), ((),))
    found = solve(model, readings, start, apart=apart, damping=1e-9)
    assert found.converged

    def total(x: float, v: float) -> float:
        one, two = model.shown(State((x,), (v,), ((),)))
        return ((read - one) / 0.05) ** 2 + (two / 2.0) ** 2 + v**2

    (x,), (v,) = found.state.free, found.state.common
    assert found.objective == pytest.approx(total(x, v), rel=1e-6, abs=1e-9)
    for step in (1e-2, -1e-2):
        assert total(x + step, v) >= found.objective - 1e-6
        assert total(x, v + step) >= found.objective - 1e-6
