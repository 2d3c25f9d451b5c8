"""Combustion."""

from collections.abc import Mapping
from typing import Any

from lightoff.physics import combustion, flue_gas, flue_loss
from lightoff.physics.flue_flow import volume_per_heat
from lightoff.physics.gas_components import TYPICAL
from lightoff.physics.saturation import dew_point
from lightoff.physics.stoichiometry import (
    Stoichiometry,
    flue_air_ratio,
    stoichiometric_air,
    stoichiometric_dry_flue,
    stoichiometry,
    ultimate_co2,
)
from published.cases import Given, Method


def gas_of(label: Mapping[str, str]) -> Stoichiometry:
    """The gas a case names; its natural gas is our typical one."""
    name = label.get("gas", "natural-gas")
    return stoichiometry(TYPICAL["natural gas"] if name == "natural-gas" else {name: 1.0})


def dry_parts(gas: Stoichiometry) -> dict[str, Any]:
    return {
        "oxygen": gas.oxygen,
        "carbon_dioxide": gas.carbon_dioxide,
        "nitrogen": gas.nitrogen,
    }


def burnt(gas: Stoichiometry, excess_air: float) -> flue_gas.FlueGas:
    """Its flue gas in dry air."""
    return flue_gas.flue_gas(
        excess_air=excess_air, water=gas.water, humidity_ratio=0.0, **dry_parts(gas)
    )


def dry(flue: flue_gas.FlueGas) -> float:
    return flue_gas.dry_flue(
        carbon_dioxide=flue.carbon_dioxide, nitrogen=flue.nitrogen, oxygen=flue.oxygen
    )


def needs_and_makes(_: Given, label: dict[str, str]) -> dict[str, Any]:
    gas = gas_of(label)
    flue = burnt(gas, 0.0)
    return {
        "air": stoichiometric_air(gas.oxygen),
        "dry_flue": stoichiometric_dry_flue(**dry_parts(gas)),
        "wet_flue": sum(flue),
        "H2O": gas.water,
        "CO2_ultimate": ultimate_co2(**dry_parts(gas)),
    }


def heat(_: Given, label: dict[str, str]) -> dict[str, Any]:
    return {"Hg_25": gas_of(label).heat}


def of_the_trade(_: Given, __: dict[str, str]) -> dict[str, Any]:
    methane, propane = gas_of({"gas": "methane"}), gas_of({"gas": "propane"})
    return {
        "ng_low": ultimate_co2(**dry_parts(methane)),
        "propane": ultimate_co2(**dry_parts(propane)),
    }


def composition(given: Given, label: dict[str, str]) -> dict[str, Any]:
    flue = burnt(gas_of(label), given["EA"])
    water = flue_gas.water_fraction(flue.water, dry(flue))
    return {
        "O2_dry": flue_gas.dry_fraction(flue.oxygen, dry(flue)),
        "CO2_dry": flue_gas.dry_fraction(flue.carbon_dioxide, dry(flue)),
        "H2O_wet": water,
        "t_dp": dew_point(flue_gas.flue_vapour_pressure(water, given["p"])),
    }


def excess_air(given: Given, label: dict[str, str]) -> dict[str, Any]:
    ratio = given.get("ratio", flue_air_ratio(**dry_parts(gas_of(label))))
    return {"EA": combustion.excess_air_from_o2(given["O2"], ratio)}


def balance(given: Given, label: dict[str, str]) -> dict[str, Any]:
    gas = gas_of(label)
    excess = excess_air(given, label)["EA"]
    flue = burnt(gas, excess)
    sensible = flue_loss.sensible_loss(
        flue_loss.flue_enthalpy(given["t_flue"], **flue._asdict()),
        flue_loss.flue_enthalpy(given["t_air"], **flue._asdict()),
        heat=gas.heat,
    )
    latent = flue_loss.latent_loss(
        water=gas.water, condensed=0.0, temperature=given["t_flue"], heat=gas.heat
    )
    return {
        "eff": flue_loss.combustion_efficiency(sensible, latent),
        "loss_sensible": sensible,
        "loss_latent": latent,
        "EA": excess,
    }


def tip_sheet(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """Neither gas nor air temperature is given: methane, as in the tolerance, and 70 degF."""
    air, methane = (70 + 459.67) * 5 / 9, {"gas": "methane"}
    states = [{"O2": given["O2"], "t_air": air, "t_flue": air + rise} for rise in given["dT"]]
    return {"eff": [balance(state, methane)["eff"] for state in states]}


def air_free(given: Given, _: dict[str, str]) -> dict[str, Any]:
    if "CO2" in given:
        return {
            "CO_af": combustion.air_free_from_co2(given["CO"], given["CO2"], given["CO2_ultimate"])
        }
    return {"CO_af": combustion.air_free_from_o2(given["CO"], given["O2"])}


def f_factors(gas: Stoichiometry) -> dict[str, Any]:
    flue = burnt(gas, 0.0)
    at = {"temperature": (68 + 459.67) * 5 / 9, "pressure": 101325.0}
    return {
        "Fd": volume_per_heat(dry(flue), gas.heat, **at),
        "Fw": volume_per_heat(sum(flue), gas.heat, **at),
        "Fc": volume_per_heat(flue.carbon_dioxide, gas.heat, **at),
    }


def f_natural_gas(_: Given, __: dict[str, str]) -> dict[str, Any]:
    return f_factors(gas_of({}))


def f_propane(_: Given, __: dict[str, str]) -> dict[str, Any]:
    return f_factors(gas_of({"gas": "propane"}))


def fuel_factors(_: Given, __: dict[str, str]) -> dict[str, Any]:
    (low, high), (propane_low, propane_high) = combustion.FUEL_FACTORS.values()
    return {
        "ng_low": low,
        "ng_high": high,
        "propane_low": propane_low,
        "propane_high": propane_high,
    }


METHODS: tuple[tuple[str, Method], ...] = (
    (r"co-stoich-.*", needs_and_makes),
    (r"co-hhv-.*", heat),
    (r"co-ult-trade", of_the_trade),
    (r"co-doe-ea-.*", excess_air),
    (r"co-doe-eff-.*", tip_sheet),
    (r"co-flue-.*|co-dp-alt-.*", composition),
    (r"co-loss-.*", balance),
    (r"co-airfree-.*", air_free),
    (r"co-epa-f-natural-gas", f_natural_gas),
    (r"co-epa-f-propane", f_propane),
    (r"co-epa-fo", fuel_factors),
    (r"co-o2-ea-formula", excess_air),
)
