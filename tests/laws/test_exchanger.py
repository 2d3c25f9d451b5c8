"""The model's heat exchanger where water condenses, against the streams followed step by step."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lightoff.machine.model.air import Air
from lightoff.machine.model.exchanger import (
    Hot,
    exchange,
    heat_capacity,
    leaving_wet,
    rated_transfer_units,
)
from lightoff.physics.flue_gas import flue_gas
from lightoff.physics.flue_loss import flue_enthalpy
from lightoff.physics.flue_temperature import flue_capacity, flue_temperature, wet_flue_enthalpy
from lightoff.physics.gas_components import TYPICAL
from lightoff.physics.stoichiometry import stoichiometry
from lightoff.physics.thermochemistry import condensation_heat

FUEL = stoichiometry(TYPICAL["natural gas"])
PRESSURE = 98_000.0
START = 345.0  # [K] hotter than any dew point of flue gas


def flue_at(excess: float):
    return flue_gas(excess_air=excess, humidity_ratio=0.004, oxygen=FUEL.oxygen,
                    carbon_dioxide=FUEL.carbon_dioxide, water=FUEL.water,
                    nitrogen=FUEL.nitrogen)  # fmt: skip


def followed(flue, air: float, units: float) -> float:
    """Temperature of flue gas that began at 345 K, its transfer units spent in small steps."""
    moles, steps, temperature = flue._asdict(), 300, START
    plain = flue_capacity(START, pressure=PRESSURE, saturated=False, **moles)
    for _ in range(steps):
        dry = flue_enthalpy(temperature, **moles)
        wet = wet_flue_enthalpy(temperature, pressure=PRESSURE, **moles) < dry - 1e-6
        capacity = flue_capacity(temperature, pressure=PRESSURE, saturated=wet, **moles)
        temperature -= plain / capacity * (temperature - air) * units / steps
    return temperature


@settings(max_examples=25)
@given(st.floats(0.0, 5.0), st.floats(0.0, 1.5), st.floats(273.5, 295.0))
def test_condensing_slows_the_cooling_as_it_should(
    units: float, excess: float, entering: float
) -> None:
    """Against the stream followed in small steps."""
    flue = flue_at(excess)
    dry = entering + (START - entering) * math.exp(-units)
    found = leaving_wet(flue, dry, entering, PRESSURE)
    assert found == pytest.approx(followed(flue, entering, units), abs=2.0)


@pytest.mark.parametrize("efficiency", [0.72, 0.80, 0.83, 0.90, 0.95])
def test_the_rated_efficiency_comes_back(efficiency: float) -> None:
    flue = flue_at(0.4)
    units = rated_transfer_units(FUEL, flue, heat=1e5, efficiency=efficiency, airflow=1.5)
    hot = Hot(FUEL, 1e5, flue, 1e5 / FUEL.heat * heat_capacity(flue), 0.0, units)
    air = Air(101_325.0, 0.0, 298.15, 298.15)
    found = exchange(hot, air, entering=298.15, flow=1.5 * 1.204, lost=0.01)
    assert found.efficiency == pytest.approx(efficiency, abs=2e-4)


@given(st.floats(1.5, 6.0), st.floats(0.0, 1.5), st.floats(255.0, 300.0))
def test_what_the_air_does_not_get_the_flue_keeps(
    units: float, excess: float, entering: float
) -> None:
    """Efficiency and flue temperature tell of the same heat, wet or dry."""
    flue = flue_at(excess)
    hot = Hot(FUEL, 1e5, flue, 1e5 / FUEL.heat * heat_capacity(flue), 0.0, units)
    air = Air(PRESSURE, 0.004, entering, entering)
    found = exchange(hot, air, entering=entering, flow=1.5, lost=0.01)
    kept = wet_flue_enthalpy(found.flue, pressure=PRESSURE, **flue._asdict())
    lost = kept / FUEL.heat + FUEL.water * condensation_heat(298.15) / FUEL.heat
    assert found.efficiency == pytest.approx(1 - lost - 0.01, abs=1e-6)
    assert found.flue > entering - 1e-6
    if found.flue > 345.0:
        assert flue_temperature(kept, **flue._asdict()) == pytest.approx(found.flue, abs=1e-4)
