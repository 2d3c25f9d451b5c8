"""Estimates: uncertainty is carried by slopes, shared errors add or cancel."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.inference.conformity import acceptance, decide, probability_within
from lightoff.inference.estimate import Estimate, NoSuchStateError, Part, combine

values = st.floats(0.5, 100)
sizes = st.floats(1e-4, 0.1)


def own(name: str, size: float) -> dict[Part, float]:
    return {Part("own", name): size}


@given(values, values, sizes, sizes)
def test_independent_errors_add_in_squares(a: float, b: float, u: float, v: float) -> None:
    total = combine(lambda x, y: x + y, Estimate(a, own("a", u)), Estimate(b, own("b", v)))
    assert total.u == pytest.approx(math.hypot(u, v))


@given(values, values, sizes)
def test_one_gauge_read_twice_errs_twice_in_a_sum_and_not_in_a_difference(
    a: float, b: float, u: float
) -> None:
    shared = own("gauge", u)
    one, two = Estimate(a, shared), Estimate(b, shared)
    assert combine(lambda x, y: x + y, one, two).u == pytest.approx(2 * u)
    assert combine(lambda x, y: x - y, one, two).u == pytest.approx(0, abs=1e-9)


@given(values, sizes)
def test_a_root_halves_a_relative_uncertainty(a: float, share: float) -> None:
    root = combine(lambda x: x**0.5, Estimate(a, own("a", share * a)))
    assert root.u / root.value == pytest.approx(share / 2, rel=1e-3)


@given(values, sizes)
def test_a_budget_is_the_parts_and_adds_up(a: float, u: float) -> None:
    parts = own("a", u) | {Part("zero", "g"): -u / 2}
    estimate = Estimate(a, parts)
    sizes_told = [size for _, size in estimate.budget()]
    assert sizes_told == sorted(sizes_told, reverse=True)
    assert math.sqrt(sum(s * s for s in sizes_told)) == pytest.approx(estimate.u)


@pytest.mark.parametrize(
    "formula",
    [lambda x: 1 / x, lambda x: math.log(x), lambda x: x**-400.0, lambda x: (x - 1) ** 0.5],
)
def test_a_formula_without_a_value_says_so(formula: object) -> None:
    with pytest.raises(NoSuchStateError):
        combine(formula, Estimate(0.0))


@given(values, sizes, values)
def test_being_within_and_being_beyond_a_limit_are_all_there_is(
    y: float, u: float, limit: float
) -> None:
    below = probability_within(y, u, None, limit)
    above = probability_within(y, u, limit, None)
    assert below + above == pytest.approx(1)


@given(values, st.floats(0.01, 5), st.floats(1, 50), st.floats(0.1, 20))
def test_a_guarded_decision_never_contradicts_a_simple_one(
    y: float, u: float, lower: float, width: float
) -> None:
    upper = lower + width
    guarded = decide(y, u, lower, upper, "guarded")
    simple = decide(y, u, lower, upper, "simple")
    assert guarded in (simple, "undecided", "does not conform")
    if guarded == "conforms":
        assert simple == "conforms"


@given(st.floats(0.001, 10), st.floats(1, 50), st.floats(0.1, 20))
def test_a_finer_gauge_never_needs_a_more_cautious_rule(
    u: float, lower: float, width: float
) -> None:
    upper = lower + width
    if acceptance(u, lower, upper) == "simple":
        assert acceptance(u / 2, lower, upper) == "simple"
