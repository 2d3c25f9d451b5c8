"""Formulas: one body for a float and an array, and the laws they must keep."""

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.physics import (
    airflow,
    atmosphere,
    combustion,
    electricity,
    fuel_gas,
    gas_flow,
    moist_air,
    tightness,
)

Formula = Callable[..., Any]
RANGES: dict[str, tuple[Formula, dict[str, tuple[float, float]]]] = {
    "barometer": (atmosphere.barometric_pressure, {"altitude": (-500, 4000)}),
    "altitude": (atmosphere.altitude_of_pressure, {"pressure": (6e4, 1.05e5)}),
    "saturation": (moist_air.saturation_pressure, {"temperature": (230, 330)}),
    "humidity": (
        lambda t, rh, p: moist_air.humidity_ratio(t, relative_humidity=rh, pressure=p),
        {"t": (230, 310), "rh": (0, 1), "p": (6e4, 1.05e5)},
    ),
    "density": (
        lambda t, w, p: moist_air.moist_air_density(t, humidity_ratio=w, pressure=p),
        {"t": (230, 330), "w": (0, 0.03), "p": (6e4, 1.05e5)},
    ),
    "base volume": (gas_flow.base_volume_factor, {"p": (6e4, 1.2e5), "t": (250, 320)}),
    "derate": (gas_flow.code_derate_factor, {"altitude": (-500, 4000)}),
    "pitot": (airflow.pitot_velocity, {"p": (0, 500), "rho": (0.7, 1.4)}),
    "air-free": (combustion.air_free_from_o2, {"co": (0, 1e-3), "o2": (0, 0.15)}),
    "unbalance": (electricity.unbalance, {"a": (200, 500), "b": (200, 500), "c": (200, 500)}),
    "derating": (electricity.unbalance_derating, {"u": (0, 0.08)}),
    "wobbe": (fuel_gas.wobbe, {"h": (3e7, 1e8), "d": (0.5, 2)}),
    "decay": (
        lambda a, b, t, u, p: tightness.temperature_corrected_drop(
            start=a, end=b, start_temperature=t, end_temperature=u, barometer=p
        ),
        {"a": (0, 2e4), "b": (0, 2e4), "t": (250, 310), "u": (250, 310), "p": (6e4, 1.05e5)},
    ),
}


@pytest.mark.parametrize("name", RANGES)
def test_a_float_and_an_array_agree(name: str) -> None:
    formula, ranges = RANGES[name]
    rng = np.random.default_rng(5)
    arrays = [rng.uniform(low, high, 200) for low, high in ranges.values()]
    together = formula(*arrays)
    alone = [formula(*map(float, row)) for row in zip(*arrays, strict=True)]
    assert together == pytest.approx(alone, rel=1e-12, abs=1e-12)


@given(st.floats(-500, 4000))
def test_altitude_and_pressure_are_two_ways_of_saying_one_thing(altitude: float) -> None:
    pressure = atmosphere.barometric_pressure(altitude)
    assert atmosphere.altitude_of_pressure(pressure) == pytest.approx(altitude, abs=1e-6)


@given(st.floats(0.1, 20), st.floats(0.1, 20))
def test_the_root_law_turned_round_is_the_root_law(factor: float, density: float) -> None:
    ratio = gas_flow.manifold_for_input_factor(factor, density)
    back = gas_flow.orifice_input(
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


@given(st.floats(0, 1), st.floats(0, 0.3))
def test_what_does_not_burn_takes_heat_away_in_its_share(methane: float, inert: float) -> None:
    """With one compressibility for all, heat is a weighted mean; the real one is within 1 %."""
    burning = {"methane": methane, "ethane": 1 - methane}
    thinned = {name: x * (1 - inert) for name, x in burning.items()} | {"nitrogen": inert}
    expected = fuel_gas.heating_value(burning) * (1 - inert)
    assert fuel_gas.heating_value(thinned) == pytest.approx(expected, rel=0.01)
    assert fuel_gas.heating_value(thinned) <= expected * (1 + 1e-12)
