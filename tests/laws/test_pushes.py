"""The evidence for a cause is what integrating over its size gives."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.special import logsumexp
from scipy.stats import multivariate_normal, norm

from lightoff.inference.pushes import Size, Told, between, either_way, found, log_odds

SIZES = st.lists(
    st.tuples(st.floats(0.05, 1), st.floats(-3, 3), st.floats(0.05, 2)), min_size=1, max_size=3
).map(lambda rows: [Size(w / sum(r[0] for r in rows), m, s) for w, m, s in rows])
TOLD = st.builds(Told, st.floats(-5, 5), st.floats(0, 5))


EVERY = np.linspace(-60.0, 60.0, 400_001)  # sizes, finely enough for the narrowest


@settings(max_examples=30)
@given(TOLD, SIZES)
def test_the_odds_are_the_integral_over_every_size(told: Told, sizes: list[Size]) -> None:
    known = [math.log(e.share) + norm.logpdf(EVERY, e.mean, e.spread) for e in sizes]
    likelier = told.pull * EVERY - told.firm * EVERY**2 / 2
    whole = logsumexp(np.stack(known) + likelier) + math.log(EVERY[1] - EVERY[0])
    assert log_odds(told, sizes) == pytest.approx(float(whole), abs=1e-6)


@given(st.lists(st.floats(-3, 3), min_size=3, max_size=3), st.floats(-2, 2), st.floats(0.1, 2))
def test_the_odds_are_those_of_two_normal_laws(y: list[float], mean: float, spread: float) -> None:
    """Readings pushed by s along d are normal about mean d, wider along d by its spread."""
    d, covariance = (
        np.array([1.0, -0.5, 2.0]),
        np.array([[2, 0.3, 0], [0.3, 1, 0.2], [0, 0.2, 1.5]]),
    )
    inverse = np.linalg.inv(covariance)
    told = Told(float(d @ inverse @ y), float(d @ inverse @ d))
    with_it = multivariate_normal(mean * d, covariance + spread**2 * np.outer(d, d)).logpdf(y)
    without = multivariate_normal(np.zeros(3), covariance).logpdf(y)
    assert log_odds(told, [Size(1.0, mean, spread)]) == pytest.approx(with_it - without, abs=1e-9)


@given(TOLD, SIZES)
def test_more_is_known_of_a_size_than_before(told: Told, sizes: list[Size]) -> None:
    one = sizes[:1]
    assert found(told, one).u <= one[0].spread + 1e-12
    nothing = found(Told(), sizes)
    assert nothing.size == pytest.approx(sum(e.share * e.mean for e in sizes))


def test_nothing_read_speaks_for_nothing() -> None:
    assert log_odds(Told(), between(0.5, 4.0)) == pytest.approx(0.0)
    assert log_odds(Told(), either_way(0.5, 4.0)) == pytest.approx(0.0)
