"""Combustion: nothing is lost in a fire, and what goes up the flue is not in the air."""

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from laws.test_gas import gases
from lightoff.physics import (
    combustion,
    flue_flow,
    flue_gas,
    flue_loss,
    saturation,
)
from lightoff.physics.flue_loss import flue_enthalpy
from lightoff.physics.flue_temperature import (
    flue_capacity,
    flue_temperature,
    wet_flue_enthalpy,
)
from lightoff.physics.fuel_gas import molar_mass
from lightoff.physics.gas_components import COMPONENTS, TYPICAL
from lightoff.physics.stoichiometry import (
    AIR_OXYGEN,
    Stoichiometry,
    flue_air_ratio,
    stoichiometric_air,
    stoichiometry,
    ultimate_co2,
)
from lightoff.physics.thermochemistry import condensation_heat, water_vapour_enthalpy

Gas = dict[str, float]

excesses = st.floats(0, 3)
moistures = st.floats(0, 0.03)
pressures = st.floats(65e3, 105e3)


def dry_parts(made: Stoichiometry) -> dict[str, float]:
    return {
        "oxygen": made.oxygen,
        "carbon_dioxide": made.carbon_dioxide,
        "nitrogen": made.nitrogen,
    }


def burnt(made: Stoichiometry, excess: float, moisture: float = 0.0) -> flue_gas.FlueGas:
    return flue_gas.flue_gas(
        excess_air=excess, water=made.water, humidity_ratio=moisture, **dry_parts(made)
    )


def dry(flue: flue_gas.FlueGas) -> float:
    return flue_gas.dry_flue(
        carbon_dioxide=flue.carbon_dioxide, nitrogen=flue.nitrogen, oxygen=flue.oxygen
    )


def atoms(gas: Gas, kind: str) -> float:
    return sum(x * getattr(COMPONENTS[name], kind) for name, x in gas.items()) / sum(gas.values())


@given(gases(), excesses, moistures)
def test_every_atom_that_goes_in_comes_out(gas: Gas, excess: float, moisture: float) -> None:
    assume("helium" not in gas)  # counted as nitrogen, which its atoms are not
    made = stoichiometry(gas)
    flue = burnt(made, excess, moisture)
    air = (1 + excess) * stoichiometric_air(made.oxygen)
    vapour = air * moisture / 0.621945
    assert flue.carbon_dioxide == pytest.approx(atoms(gas, "carbon"), rel=1e-9)
    assert 2 * flue.water == pytest.approx(atoms(gas, "hydrogen") + 2 * vapour, rel=1e-9)
    assert 2 * flue.nitrogen == pytest.approx(
        atoms(gas, "nitrogen") + 2 * (1 - AIR_OXYGEN) * air, rel=1e-9
    )
    assert 2 * flue.carbon_dioxide + flue.water + 2 * flue.oxygen == pytest.approx(
        atoms(gas, "oxygen") + vapour + 2 * AIR_OXYGEN * air, rel=1e-9
    )


@given(gases(), excesses, moistures)
def test_no_mass_is_lost(gas: Gas, excess: float, moisture: float) -> None:
    """Within 0.5 %: counted as molecules, the argon of the air weighs no more than nitrogen."""
    assume("helium" not in gas)
    made = stoichiometry(gas)
    flue = burnt(made, excess, moisture)
    masses = (44.0095, 18.01528, 28.0134, 31.9988)
    air = flue_gas.combustion_air(made.oxygen, excess)
    whole = flue_flow.flue_mass(molar_mass(gas), air, humidity_ratio=moisture)
    assert whole == pytest.approx(sum(n * m for n, m in zip(flue, masses, strict=True)), rel=5e-3)


@given(gases(), st.floats(0.001, 3))
def test_a_flue_reading_tells_the_air_it_was_made_with(gas: Gas, excess: float) -> None:
    made = stoichiometry(gas)
    flue = burnt(made, excess)
    o2 = flue_gas.dry_fraction(flue.oxygen, dry(flue))
    co2 = flue_gas.dry_fraction(flue.carbon_dioxide, dry(flue))
    ratio, largest = flue_air_ratio(**dry_parts(made)), ultimate_co2(**dry_parts(made))
    assert combustion.excess_air_from_o2(o2, ratio) == pytest.approx(excess, rel=1e-9)
    assert combustion.o2_from_excess_air(excess, ratio) == pytest.approx(o2, rel=1e-9)
    by_co2 = combustion.excess_air_from_co2(co2, largest_co2=largest, ratio=ratio)
    assert by_co2 == pytest.approx(excess, rel=1e-6, abs=1e-9)
    assert combustion.co2_from_o2(o2, largest) == pytest.approx(co2, rel=1e-9)
    assert combustion.o2_from_co2(co2, largest) == pytest.approx(o2, rel=1e-6, abs=1e-9)


@given(gases(), excesses, moistures)
def test_wet_and_dry_are_one_flue(gas: Gas, excess: float, moisture: float) -> None:
    flue = burnt(stoichiometry(gas), excess, moisture)
    water = flue_gas.water_fraction(flue.water, dry(flue))
    shares = [flue_gas.dry_fraction(part, dry(flue)) * (1 - water)
              for part in (flue.carbon_dioxide, flue.nitrogen, flue.oxygen)]  # fmt: skip
    assert sum(shares) + water == pytest.approx(1, rel=1e-12)


def test_the_largest_co2_is_that_of_the_typical_gas() -> None:
    for name, largest in combustion.LARGEST_CO2.items():
        made = stoichiometry(TYPICAL[name])
        assert largest == pytest.approx(ultimate_co2(**dry_parts(made)), abs=5e-5)
        # the regulation's range for two readings of this fuel holds its own factor
        low, high = combustion.FUEL_FACTORS[name]
        assert low < combustion.fuel_factor(0.0, largest) < high


def efficiency(
    gas: Gas, *, excess: float, flue_at: float, air_at: float, pressure: float, moisture: float
) -> float:
    made = stoichiometry(gas)
    flue = burnt(made, excess, moisture)
    sensible = flue_loss.sensible_loss(
        flue_loss.flue_enthalpy(flue_at, **flue._asdict()),
        flue_loss.flue_enthalpy(air_at, **flue._asdict()),
        heat=made.heat,
    )
    capacity = flue_gas.vapour_capacity(dry(flue), temperature=flue_at, pressure=pressure)
    latent = flue_loss.latent_loss(
        water=made.water,
        condensed=flue_gas.condensed_water(flue.water, capacity),
        temperature=flue_at,
        heat=made.heat,
    )
    return float(flue_loss.combustion_efficiency(sensible, latent))


flames = st.fixed_dictionaries(
    {"excess": excesses, "flue_at": st.floats(275, 900), "air_at": st.floats(240, 310),
     "pressure": pressures, "moisture": st.floats(0, 0.02)}
)  # fmt: skip


@given(gases(), flames, st.floats(0.1, 200))
def test_a_hotter_flue_takes_more(gas: Gas, flame: dict[str, float], more: float) -> None:
    hotter = flame | {"flue_at": min(flame["flue_at"] + more, 1000.0)}
    assert efficiency(gas, **hotter) < efficiency(gas, **flame)


@given(gases(), flames, st.floats(0.01, 2))
def test_more_air_takes_more(gas: Gas, flame: dict[str, float], more: float) -> None:
    """Where the flue gas is warmer than the air it was made of."""
    flame = flame | {"flue_at": max(flame["flue_at"], flame["air_at"] + 1), "moisture": 0.0}
    diluted = flame | {"excess": flame["excess"] + more}
    assert efficiency(gas, **diluted) < efficiency(gas, **flame)


@given(gases(), st.floats(240, 298.15))
def test_a_flue_as_cold_as_the_air_and_dry_keeps_all(gas: Gas, at: float) -> None:
    """All water condensed at 25 degC, nothing warmer than the air: the gross heat is there."""
    made = stoichiometry(gas)
    latent = flue_loss.latent_loss(
        water=made.water, condensed=made.water, temperature=298.15, heat=made.heat
    )
    enthalpy = flue_loss.flue_enthalpy(at, **burnt(made, 0.0)._asdict())
    sensible = flue_loss.sensible_loss(enthalpy, enthalpy, heat=made.heat)
    assert flue_loss.combustion_efficiency(sensible, latent) == pytest.approx(1, abs=1e-12)


@given(gases(), excesses, moistures, pressures)
def test_water_begins_to_condense_at_the_dew_point(
    gas: Gas, excess: float, moisture: float, pressure: float
) -> None:
    flue = burnt(stoichiometry(gas), excess, moisture)
    assume(flue.water > 1e-3)
    share = flue_gas.water_fraction(flue.water, dry(flue))
    dew_point = saturation.dew_point(flue_gas.flue_vapour_pressure(share, pressure))
    assume(dew_point < 370)

    def condensed(temperature: float) -> float:
        capacity = flue_gas.vapour_capacity(dry(flue), temperature=temperature, pressure=pressure)
        return float(flue_gas.condensed_water(flue.water, capacity))

    assert condensed(dew_point + 0.01) == 0.0
    assert 0.0 < condensed(dew_point - 0.01) < 0.01 * flue.water


@given(st.floats(274, 370))
def test_the_heat_of_condensation_falls_as_vapour_and_water_warm(at: float) -> None:
    """Kirchhoff: by the vapour's heat capacity less that of water, 75.3 J/(mol K) at 25 to 60 degC
    (IAPWS-95); the table's straight pieces and water's own small change leave 1 %."""
    step = 2.0
    fall = condensation_heat(at) - condensation_heat(at + step)
    vapour = water_vapour_enthalpy(at + step) - water_vapour_enthalpy(at)
    assert (fall + vapour) / step == pytest.approx(75.3, rel=0.01)


@given(st.floats(0.6, 1.05), gases())
def test_net_efficiency_stands_above_gross(gross: float, gas: Gas) -> None:
    made = stoichiometry(gas)
    net_heat = made.heat - 44013.0 * made.water
    net = flue_loss.net_efficiency(gross, heat=made.heat, net_heat=net_heat)
    assert net >= gross
    assert net * net_heat == pytest.approx(gross * made.heat)


@given(st.floats(280.0, 700.0), st.floats(0.0, 3.0))
def test_flue_gas_is_as_warm_as_the_heat_it_holds(temperature: float, excess: float) -> None:
    flue = {"carbon_dioxide": 1.04, "water": 2.03, "nitrogen": 7.7 * (1 + excess),
            "oxygen": 2.05 * excess}  # fmt: skip
    found = flue_temperature(flue_enthalpy(temperature, **flue), **flue)
    assert found == pytest.approx(temperature, abs=1e-6)


@given(st.floats(276.0, 355.0), st.floats(0.0, 2.0), st.floats(70_000.0, 105_000.0))
def test_the_heat_of_flue_gas_grows_as_its_capacity_says(
    temperature: float, excess: float, pressure: float
) -> None:
    """On either side of the dew point, where water condenses and where it does not."""
    flue = {"carbon_dioxide": 1.04, "water": 2.03, "nitrogen": 7.7 * (1 + excess),
            "oxygen": 2.05 * excess}  # fmt: skip
    step = 0.01
    low, middle, high = (
        wet_flue_enthalpy(temperature + s, pressure=pressure, **flue) for s in (-step, 0.0, step)
    )
    wet = middle < flue_enthalpy(temperature, **flue) - 1.0
    assume(wet == (high < flue_enthalpy(temperature + step, **flue) - 1.0))
    grown = (high - low) / (2 * step)
    # straight pieces of the tables, and the heat of condensation changes a little by itself
    assert flue_capacity(temperature, pressure=pressure, saturated=wet, **flue) == pytest.approx(
        grown, rel=0.03
    )
