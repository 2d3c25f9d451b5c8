"""The laws of nature and of the trade that formulas must keep."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.physics import (
    atmosphere,
    combustion,
    electricity,
    orifice,
)


@given(st.floats(-500, 4000))
def test_altitude_and_pressure_are_two_ways_of_saying_one_thing(altitude: float) -> None:
    pressure = atmosphere.barometric_pressure(altitude)
    assert atmosphere.altitude_of_pressure(pressure) == pytest.approx(altitude, abs=1e-6)


@given(st.floats(0.1, 20), st.floats(0.1, 20))
def test_the_root_law_turned_round_is_the_root_law(factor: float, density: float) -> None:
    ratio = orifice.manifold_for_input_factor(factor, density)
    back = orifice.orifice_input(
        rated_input=1.0, manifold=ratio, rated_manifold=1.0, wobbe_ratio=1.0, density_ratio=density
    )
    assert back == pytest.approx(factor)


@given(st.floats(1e-6, 1e-3), st.floats(0, 0.14), st.floats(1e-4, 0.01))
def test_air_in_the_sample_changes_nothing_air_free(co: float, o2: float, air: float) -> None:
    """Diluting a sample with air of 20.9 % oxygen leaves its air-free CO as it was."""
    share = air
    diluted_co = co * (1 - share)
    diluted_o2 = o2 * (1 - share) + 0.209 * share
    before = combustion.air_free_from_o2(co, o2)
    assert combustion.air_free_from_o2(diluted_co, diluted_o2) == pytest.approx(before)


@given(st.floats(200, 500), st.floats(200, 500), st.floats(200, 500), st.floats(0.5, 2))
def test_unbalance_knows_neither_order_nor_scale(a: float, b: float, c: float, k: float) -> None:
    found = electricity.unbalance(a, b, c)
    assert electricity.unbalance(c, a, b) == pytest.approx(found)
    assert electricity.unbalance(k * a, k * b, k * c) == pytest.approx(found, abs=1e-12)
