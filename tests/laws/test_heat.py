"""Heat from the flame to the airstream: nothing lost, nothing gained."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from lightoff.physics.airstream import (
    airflow_from_rise,
    dry_air_flow,
    enthalpy_after,
    temperature_rise,
)
from lightoff.physics.heat_exchanger import (
    TURBULENT,
    effectiveness,
    rated_effectiveness,
    thermal_efficiency,
    transfer_units,
    transfer_units_at_flow,
)

units = st.floats(0.01, 10)
ratios = st.floats(0, 0.9)


@given(units, ratios)
def test_transfer_units_and_effectiveness_say_the_same(n: float, ratio: float) -> None:
    found = effectiveness(n, ratio)
    assume(found < 1 - 1e-6)
    assert transfer_units(found, ratio) == pytest.approx(n, rel=1e-6)


@given(units, ratios)
def test_no_exchanger_gives_more_than_there_is(n: float, ratio: float) -> None:
    assert 0 < effectiveness(n, ratio) <= 1


@given(units, units, ratios)
def test_a_larger_exchanger_gives_more(n: float, more: float, ratio: float) -> None:
    assert effectiveness(n + more, ratio) >= effectiveness(n, ratio)


@given(units, ratios, ratios)
def test_air_that_warms_less_takes_more(n: float, one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert effectiveness(n, low) >= effectiveness(n, high) - 1e-12


@given(units, ratios, st.floats(300, 2300), st.floats(230, 300))
def test_what_the_flue_gas_loses_the_air_gains(
    n: float, ratio: float, flame: float, air: float
) -> None:
    """The differential equations of the two streams, integrated along the exchanger in steps."""
    assume(flame > air + 10)
    found = effectiveness(n, ratio)
    # at the hot end: the flame, and the air as it leaves
    hot, cold = flame, air + ratio * found * (flame - air)
    steps = 2000
    for _ in range(steps):
        # the midpoint rule: half a step, then a whole one with the difference found there
        half = (hot - cold) * (1 - n / steps / 2 * (1 - ratio))
        hot, cold = hot - n / steps * half, cold - ratio * n / steps * half
    assert cold == pytest.approx(air, abs=1e-3 * (flame - air))
    assert hot == pytest.approx(flame - found * (flame - air), abs=1e-3 * (flame - air))


@given(st.floats(0.7, 0.84), st.floats(0, 0.03), st.floats(0.88, 0.92))
def test_an_exchanger_set_to_its_plate_gives_the_plate_back(
    efficiency: float, casing: float, available: float
) -> None:
    rated = rated_effectiveness(efficiency=efficiency, casing_loss=casing, available=available)
    assume(rated < 0.99)
    same = transfer_units_at_flow(transfer_units(rated, 0.02), 1.0, exponent=TURBULENT)
    found = thermal_efficiency(
        effectiveness=effectiveness(same, 0.02), casing_loss=casing, available=available
    )
    assert found == pytest.approx(efficiency, rel=1e-9)


@given(st.floats(0.2, 0.99))
def test_less_fire_leaves_less_in_the_flue(flow: float) -> None:
    assert transfer_units_at_flow(1.5, flow, exponent=TURBULENT) > 1.5


@given(
    heat=st.floats(1e4, 1e6),
    rise=st.floats(5, 80),
    density=st.floats(0.8, 1.4),
    moisture=st.floats(0, 0.03),
)
def test_airflow_and_rise_say_the_same(
    heat: float, rise: float, density: float, moisture: float
) -> None:
    flow = airflow_from_rise(heat, rise, density=density, humidity_ratio=moisture)
    dry = dry_air_flow(airflow=flow, density=density, humidity_ratio=moisture)
    assert temperature_rise(heat, dry, humidity_ratio=moisture) == pytest.approx(rise)


@given(st.lists(st.floats(0, 5e5), min_size=1, max_size=3), st.floats(0.5, 20))
def test_furnaces_in_a_row_add_up_in_any_order(heats: list[float], flow: float) -> None:
    def through(order: list[float]) -> float:
        enthalpy = 10e3
        for heat in order:
            enthalpy = enthalpy_after(enthalpy, heat, mass_flow=flow)
        return enthalpy

    assert through(heats) == pytest.approx(through(heats[::-1]))
    assert through(heats) == pytest.approx(10e3 + sum(heats) / flow)
