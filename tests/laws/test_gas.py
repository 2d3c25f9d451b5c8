"""Fuel gas: what mixes in shares, what the Wobbe number promises."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.physics import fuel_gas, heating_value, orifice
from lightoff.physics.gas_components import COMPONENTS, TYPICAL
from lightoff.physics.gas_properties import (
    REFERENCE_STATES,
    US_TRADE,
    ReferenceState,
    properties,
)

# mean atomic masses [kg/kmol]: IUPAC 2007, the values ISO 6976:2016 uses
ATOMS = {"carbon": 12.0107, "hydrogen": 1.00794, "oxygen": 15.9994, "nitrogen": 14.0067}
BURNING = ["methane", "ethane", "propane", "n-butane", "isobutane", "ethylene", "propylene"]
OTHERS = [name for name in COMPONENTS if name != "oxygen"]
states = st.sampled_from(list(REFERENCE_STATES.values()))


@st.composite
def gases(draw: st.DrawFn) -> dict[str, float]:
    """Shares of some components, together one: a third of it burns, little of it is oxygen."""
    names = draw(st.lists(st.sampled_from(OTHERS), min_size=1, max_size=6, unique=True))
    parts = {name: draw(st.floats(0.01, 1)) for name in names}
    fuel, air = draw(st.sampled_from(BURNING)), draw(st.floats(0, 0.05))
    whole = sum(parts.values()) * 3 / 2 / (1 - air)
    gas = {"oxygen": air} | {name: x / whole for name, x in parts.items()}
    return gas | {fuel: gas.get(fuel, 0.0) + (1 - air) / 3}


def test_a_molar_mass_is_that_of_its_atoms() -> None:
    for name, part in COMPONENTS.items():
        atoms = sum(getattr(part, atom) * mass for atom, mass in ATOMS.items())
        assert name == "helium" or part.molar_mass == pytest.approx(atoms, abs=2e-5)


@given(gases(), gases(), st.floats(0, 1), st.floats(273.15, 298.15))
def test_the_heat_of_a_mixture_is_that_of_its_parts(
    one: dict[str, float], other: dict[str, float], share: float, at: float
) -> None:
    mixed = {
        name: share * one.get(name, 0.0) + (1 - share) * other.get(name, 0.0)
        for name in one | other
    }
    for heat in (heating_value.molar_heating_value, heating_value.net_molar_heating_value):
        parts = share * heat(one, at) + (1 - share) * heat(other, at)
        assert heat(mixed, at) == pytest.approx(parts, rel=1e-12)


@given(gases(), states, st.floats(0.5, 2))
def test_an_analysis_is_read_by_its_shares(
    gas: dict[str, float], state: ReferenceState, sum_of_it: float
) -> None:
    scaled = {name: x * sum_of_it for name, x in gas.items()}
    assert properties(scaled, state) == pytest.approx(properties(gas, state), rel=1e-12)


@given(st.floats(0, 1), st.floats(0, 0.3))
def test_what_does_not_burn_takes_heat_away_in_its_share(methane: float, inert: float) -> None:
    """With one compressibility for all, heat is a weighted mean; the real one is within 1 %."""
    burning = {"methane": methane, "ethane": 1 - methane}
    thinned = {name: x * (1 - inert) for name, x in burning.items()} | {"nitrogen": inert}
    expected = properties(burning, US_TRADE).heating_value * (1 - inert)
    found = properties(thinned, US_TRADE).heating_value
    assert found == pytest.approx(expected, rel=0.01)
    assert found <= expected * (1 + 1e-12)


@given(gases(), st.floats(273.15, 298.15))
def test_net_is_less_than_gross_by_the_water(gas: dict[str, float], at: float) -> None:
    gross = heating_value.molar_heating_value(gas, at)
    net = heating_value.net_molar_heating_value(gas, at)
    hydrogen = sum(x * COMPONENTS[name].hydrogen for name, x in gas.items()) / sum(gas.values())
    assert gross - net == pytest.approx(hydrogen / 2 * 44.5e3, rel=0.015)


@given(gases(), st.floats(273.15, 293.15))
def test_a_thin_gas_is_ideal(gas: dict[str, float], at: float) -> None:
    """The departure from the ideal gas goes with the pressure, and so to nothing."""
    full = 1 - fuel_gas.compressibility(gas, temperature=at, pressure=1e5)
    half = 1 - fuel_gas.compressibility(gas, temperature=at, pressure=5e4)
    assert half == pytest.approx(full / 2, abs=1e-12)


@given(gases(), states)
def test_density_and_relative_density_say_the_same(
    gas: dict[str, float], state: ReferenceState
) -> None:
    found = properties(gas, state)
    # dry air's own density by the same laws: its molar mass, its compressibility
    air = fuel_gas.gas_density(
        fuel_gas.AIR_MOLAR_MASS,
        compressibility=fuel_gas.air_compressibility(state.temperature, state.pressure),
        temperature=state.temperature,
        pressure=state.pressure,
    )
    assert found.density / air == pytest.approx(found.relative_density, rel=1e-12)


@given(gases(), gases(), states)
def test_gases_of_one_wobbe_number_give_one_heat_flow(
    one: dict[str, float], other: dict[str, float], state: ReferenceState
) -> None:
    """Bernoulli through one orifice, each gas with its own density: volume flow is v/d^0.5."""
    a, b = properties(one, state), properties(other, state)
    flows = [1e-3 * (500.0 / gas.density) ** 0.5 * gas.heating_value for gas in (a, b)]
    by_wobbe = orifice.orifice_input(
        rated_input=flows[0],
        manifold=870.0,
        rated_manifold=870.0,
        wobbe_ratio=b.wobbe / a.wobbe,
        density_ratio=1.0,
    )
    assert by_wobbe == pytest.approx(flows[1], rel=1e-9)


def test_the_typical_gas_is_that_of_the_country() -> None:
    """US EIA: 1037 Btu/ft3, from state to state 16; GRI-92/0123: 0.598, 0.018 (from memory)."""
    found = properties(TYPICAL["natural gas"], US_TRADE)
    assert found.heating_value / 37258.9458 == pytest.approx(1037, abs=16)
    assert found.relative_density == pytest.approx(0.598, abs=0.018)
    assert all(sum(gas.values()) == pytest.approx(1) for gas in TYPICAL.values())
