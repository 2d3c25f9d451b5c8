"""Laws of a duct traverse."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.formula import Number, working
from lightoff.physics import traverse, traverse_points
from lightoff.physics.traverse_points import LOG_LINEAR, LOG_TCHEBYCHEFF

RINGS = {
    n: tuple(traverse_points.ring_position(i, n) for i in range(1, n + 1)) for n in range(2, 21, 2)
}
STRIPS = {
    n: tuple(traverse_points.strip_position(i, n) for i in range(1, n + 1)) for n in range(2, 21)
}
LINES = [line for rule in (LOG_TCHEBYCHEFF, LOG_LINEAR, RINGS, STRIPS) for line in rule.values()]
READINGS = st.dictionaries(st.text(min_size=1), st.floats(0.5, 40), min_size=2, max_size=40)


@pytest.mark.parametrize("line", LINES, ids=len)
def test_points_are_symmetric_and_inside_the_duct(line: tuple[float, ...]) -> None:
    assert line[0] > 0
    assert line[-1] < 1
    assert all(a < b for a, b in pairwise(line))
    assert [1 - x for x in reversed(line)] == pytest.approx(line, abs=1e-12)


def profile(x: float, exponent: float) -> float:
    """A power law of the distance from the nearer wall; 1 in the middle."""
    return float((2 * min(x, 1 - x)) ** exponent)


def error(line: tuple[float, ...], exponent: float, *, circular: bool) -> float:
    """Mean of the profile at the points over its true mean by area, less one."""
    m = exponent
    true = 2 / ((m + 1) * (m + 2)) if circular else 1 / (m + 1)
    velocities = {str(x): profile(x, m) for x in line}
    return float(traverse.mean_velocity(velocities) / true - 1)


@pytest.mark.parametrize("line", LOG_TCHEBYCHEFF.values(), ids=len)
def test_log_tchebycheff_finds_a_mean_to_a_quarter_percent(line: tuple[float, ...]) -> None:
    """A seventh power law of one side, 0.8741, 0.8730, 0.8747 for 0.8750 as the cases publish."""
    assert abs(error(line, 1 / 7, circular=False)) < 0.0025


@pytest.mark.parametrize("line", LOG_LINEAR.values(), ids=len)
def test_log_linear_finds_a_mean_to_three_tenths_percent(line: tuple[float, ...]) -> None:
    """The same in a circle, 0.8144 to 0.8159 for 0.8167 as the cases publish."""
    assert abs(error(line, 1 / 7, circular=True)) < 0.003


@given(st.floats(1 / 12, 1 / 5))
def test_the_log_rules_stand_for_duct_profiles_from_smooth_to_rough(exponent: float) -> None:
    for line in LOG_TCHEBYCHEFF.values():
        assert abs(error(line, exponent, circular=False)) < 0.006
    for line in LOG_LINEAR.values():
        assert abs(error(line, exponent, circular=True)) < 0.006


@pytest.mark.parametrize("n", [4, 6, 8, 10])
def test_equal_areas_read_high_where_the_log_rule_does_not(n: int) -> None:
    """Its points next to the wall stand too far in for what the wall takes away."""
    assert error(RINGS[n], 1 / 7, circular=True) > abs(error(LOG_LINEAR[n], 1 / 7, circular=True))


def test_more_points_of_equal_area_come_closer_to_the_mean() -> None:
    errors = [error(RINGS[n], 1 / 7, circular=True) for n in (4, 8, 12, 16, 20)]
    assert all(a > b > 0 for a, b in pairwise(errors))


@given(st.integers(2, 10))
def test_rings_of_equal_area_are_halved_by_their_points(half: int) -> None:
    """The area outside the i-th point is i - 1/2 rings of n / 2."""
    n = 2 * half
    for i, x in enumerate(RINGS[n][:half], start=1):
        assert 1 - (1 - 2 * x) ** 2 == pytest.approx((i - 0.5) / half)


@given(READINGS)
def test_the_velocity_of_the_mean_pressure_is_never_too_low(pressures: dict[str, float]) -> None:
    velocities = {name: traverse.pitot_velocity(p, 1.2) for name, p in pressures.items()}
    mean = sum(pressures.values()) / len(pressures)
    assert traverse.mean_velocity(velocities) <= traverse.pitot_velocity(mean, 1.2) * (1 + 1e-12)


@given(READINGS, st.floats(0.5, 3))
def test_evenness_knows_neither_scale_nor_order(velocities: dict[str, float], k: float) -> None:
    scaled = {name: k * velocities[name] for name in reversed(velocities)}
    for judge in (traverse.velocity_spread, traverse.share_above_tenth):
        assert judge(scaled) == pytest.approx(judge(velocities), abs=1e-9)


@given(st.floats(1, 40), st.integers(2, 40))
def test_even_air_has_no_spread(velocity: float, count: int) -> None:
    even = {str(i): velocity for i in range(count)}
    assert traverse.velocity_spread(even) == pytest.approx(0.0, abs=1e-12)
    assert traverse.share_above_tenth(even) == 1.0


@given(st.floats(-500, 0))
def test_air_that_turns_back_counts_as_none(pressure: float) -> None:
    assert traverse.pitot_velocity(pressure, 1.2) == 0.0


@given(READINGS)
def test_a_mean_is_that_of_numpy(velocities: dict[str, float]) -> None:
    values = list(velocities.values())
    assert traverse.mean_velocity(velocities) == pytest.approx(np.mean(values))
    spread = np.std(values, ddof=1) / np.mean(values)
    assert traverse.velocity_spread(velocities) == pytest.approx(spread, abs=1e-12)


def test_a_side_typed_as_thirty_inches_is_not_below_it() -> None:
    inch = 0.0254
    asked = (29.9, 30.0, 30 * inch / inch, 36.0, 36.1)
    found = [traverse_points.log_tchebycheff_points(a * inch) for a in asked]
    assert found == [5, 6, 6, 6, 7]


def test_every_velocity_of_a_mean_can_be_opened() -> None:
    def sheet(pressures: tuple[float, ...]) -> Number:
        speeds = {str(i): traverse.pitot_velocity(p, 1.2) for i, p in enumerate(pressures)}
        return traverse.mean_velocity(speeds)

    steps = working(sheet, pressures=(60.0, 15.0)).steps
    assert [step.formula.name for step in steps] == ["pitot_velocity"] * 2 + ["mean_velocity"]
