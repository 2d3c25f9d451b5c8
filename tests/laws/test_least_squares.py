"""Least squares by reflections, against other people's linear algebra."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import chi2

from lightoff.inference.least_squares import UndeterminedError, fit
from lightoff.inference.orthogonal import Triangle
from lightoff.inference.reliability import (
    LEVEL,
    POWER,
    chi_square_above,
    critical,
    detectable_bias,
    noncentrality,
)

seeds = st.integers(0, 10**6)


def problem(seed: int, rows: int = 9, columns: int = 4) -> tuple[np.ndarray, np.ndarray]:
    rng = np.random.default_rng(seed)
    matrix = rng.normal(size=(rows, columns)) * 10 ** rng.uniform(-3, 3, columns)
    return matrix, rng.normal(size=rows)


@given(seeds)
def test_a_tall_system_is_solved_as_numpy_solves_it(seed: int) -> None:
    matrix, wanted = problem(seed)
    triangle = Triangle(matrix.tolist())
    found = triangle.back(triangle.turned(wanted.tolist()))
    expected = np.linalg.lstsq(matrix, wanted)[0]
    np.testing.assert_allclose(found, expected, rtol=1e-8, atol=1e-12 * np.abs(expected).max())


@given(seeds)
def test_covariance_and_leverages_are_those_of_the_normal_equations(seed: int) -> None:
    matrix, wanted = problem(seed)
    found = fit(
        lambda x: (matrix @ x - wanted).tolist(), [0.0] * 4, slopes=lambda _: matrix.tolist()
    )
    covariance = np.linalg.inv(matrix.T @ matrix)
    for i in range(4):
        assert found.u(i) == pytest.approx(math.sqrt(covariance[i, i]), rel=1e-6)
    hat = np.einsum("ij,jk,ik->i", matrix, covariance, matrix)
    np.testing.assert_allclose(found.leverages, hat, rtol=1e-6)
    assert sum(found.leverages) == pytest.approx(4)


@given(seeds)
def test_where_it_stops_no_direction_is_downhill(seed: int) -> None:
    rng = np.random.default_rng(seed)
    t = rng.uniform(0, 3, 12)
    y = 5 * np.exp(-0.7 * t) + 2 + rng.normal(0, 0.05, 12)

    def residuals(b: list[float]) -> list[float]:
        return (b[0] * np.exp(-b[1] * t) + b[2] - y).tolist()

    found = fit(residuals, [1.0, 1.0, 1.0])
    assert found.converged
    a, k, _ = found.values
    slopes = np.stack([np.exp(-k * t), -a * t * np.exp(-k * t), np.ones(12)])
    gradient = slopes @ np.array(found.residuals) / np.linalg.norm(slopes, axis=1)
    assert np.abs(gradient).max() < 1e-7


def test_an_unknown_that_moves_nothing_is_said_to_be_undetermined() -> None:
    with pytest.raises(UndeterminedError):
        fit(lambda x: [x[0] - 1, x[0] - 2], [0.0, 0.0])


def test_two_unknowns_that_only_move_together_are_undetermined() -> None:
    with pytest.raises(UndeterminedError):
        fit(lambda x: [x[0] + x[1] - 1, 2 * x[0] + 2 * x[1] - 3, 0.5], [0.0, 0.0])


def test_a_step_to_where_there_is_no_answer_is_taken_back() -> None:
    found = fit(lambda x: [math.log(x[0]) + 3] if x[0] > 0 else [1 / 0], [1.0])
    assert found.values[0] == pytest.approx(math.exp(-3))


@given(st.floats(0, 100), st.integers(1, 60))
def test_chi_square_is_that_of_scipy(value: float, degrees: int) -> None:
    expected = chi2.sf(value, degrees)
    assert chi_square_above(value, degrees) == pytest.approx(expected, rel=1e-9, abs=1e-15)


@given(st.floats(0.01, 0.99), st.floats(0.001, 10))
def test_a_bias_just_detectable_is_found_as_often_as_was_asked(redundancy: float, u: float) -> None:
    """Its residual then exceeds the critical value with the power asked for."""
    shows = detectable_bias(u, redundancy) / u * math.sqrt(redundancy)
    chance = 0.5 * math.erfc((critical(LEVEL) - shows) / math.sqrt(2))
    assert chance == pytest.approx(POWER, rel=1e-9)
    assert shows == pytest.approx(noncentrality())


def test_what_nothing_checks_hides_any_error() -> None:
    assert detectable_bias(0.1, 0.0) == math.inf
