"""Fuel gas."""

from typing import Any

from lightoff.physics import fuel_gas, heating_value
from lightoff.physics.constants import STANDARD_PRESSURE
from lightoff.physics.flue_flow import mass_per_heat
from lightoff.physics.gas_components import COMPONENTS, TYPICAL
from lightoff.physics.gas_properties import REFERENCE_STATES, ReferenceState, properties
from lightoff.physics.stoichiometry import stoichiometry
from published.cases import Given, Method


def component(_: Given, label: dict[str, str]) -> dict[str, Any]:
    pure = {label["gas"]: 1.0}
    state = REFERENCE_STATES["15/15"]
    heat = heating_value.molar_heating_value
    return {
        "M": fuel_gas.molar_mass(pure),
        "s_15": COMPONENTS[label["gas"]].summation[1],
        "Z_15": properties(pure, state).compressibility,
        "Hg_15": heat(pure, state.combustion),
        "Hn_15": heating_value.net_molar_heating_value(pure, state.combustion),
        "Hg_25": heat(pure, 298.15),
        "Hg_60F": heat(pure, REFERENCE_STATES["us-trade"].combustion),
    }


def of_pure(_: Given, label: dict[str, str]) -> dict[str, Any]:
    found = properties({label["gas"]: 1.0}, REFERENCE_STATES["15/15"])
    return {"Hg_v": found.heating_value, "d": found.relative_density, "W_g": found.wobbe}


def ideal(given: Given, label: dict[str, str]) -> dict[str, Any]:
    molar = heating_value.molar_heating_value({label["gas"]: 1.0}, given["t"])
    value = heating_value.volumetric_heating_value(
        molar, compressibility=1.0, temperature=given["t"], pressure=given["p"]
    )
    return {"Hg_ideal": value}


def fractions(given: Given) -> dict[str, float]:
    """The names of a case are those of its file format."""
    hyphens = ("n_butane", "n_pentane", "n_hexane")
    return {name.replace("_", "-" if name in hyphens else " "): x for name, x in given.items()}


def mixture(given: Given, state: ReferenceState) -> dict[str, Any]:
    parts = fractions(given)
    found = properties(parts, state)
    molar = heating_value.molar_heating_value(parts, state.combustion)
    return {
        "M": found.molar_mass,
        "Z": found.compressibility,
        "Hg_molar": molar,
        "Hg_mass": heating_value.heating_value_per_mass(molar, found.molar_mass),
        "Hg_v": found.heating_value,
        "Hn_v": found.net_heating_value,
        "rho": found.density,
        "d": found.relative_density,
        "W_g": found.wobbe,
        "W_n": fuel_gas.wobbe(found.net_heating_value, found.relative_density),
        "d_ideal": fuel_gas.ideal_relative_density(found.molar_mass),
    }


def standard_example(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return mixture(given, REFERENCE_STATES["15/15"])


def cold_example(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return mixture(given, REFERENCE_STATES["25/0"])


def inch_pound_example(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return mixture(given, REFERENCE_STATES["us-14.696"])


def contract_example(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return mixture(given, REFERENCE_STATES["us-14.73"])


def volume(_: Given, __: dict[str, str]) -> dict[str, Any]:
    temperatures = {"v_60F": (60 + 459.67) * 5 / 9, "v_32F": 273.15, "v_15C": 288.15}
    return {name: fuel_gas.molar_volume(t, STANDARD_PRESSURE) for name, t in temperatures.items()}


def emission(gas: str) -> dict[str, Any]:
    burning = stoichiometry(TYPICAL[gas])
    mass = COMPONENTS["carbon dioxide"].molar_mass
    return {
        "Hg": properties(TYPICAL[gas], REFERENCE_STATES["us-14.696"]).heating_value,
        "CO2": mass_per_heat(burning.carbon_dioxide, molar_mass=mass, heat=burning.heat),
    }


def natural_gas(_: Given, __: dict[str, str]) -> dict[str, Any]:
    return emission("natural gas")


def propane(_: Given, __: dict[str, str]) -> dict[str, Any]:
    return emission("propane")


def wobbe(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"W_g": fuel_gas.wobbe(given["Hg"], given["d"])}


def base_pressure(given: Given, _: dict[str, str]) -> dict[str, Any]:
    value = heating_value.heating_value_at(
        given["Hg"], pressure=given["p1"], base_pressure=given["p2"]
    )
    return {"Hg_2": value}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"gp-iso6976-example3-25-0", cold_example),
    (r"gp-iso6976-example[13].*", standard_example),
    (r"gp-iso6976-example2", inch_pound_example),
    (r"gp-iso6976-.*", component),
    (r"gp-vol-.*", of_pure),
    (r"gp-gpa2145-.*", ideal),
    (r"gp-aga5-example", contract_example),
    (r"gp-molar-volume", volume),
    (r"gp-epa-natural-gas", natural_gas),
    (r"gp-epa-propane", propane),
    (r"gp-wobbe-.*", wobbe),
    (r"gp-base-pressure", base_pressure),
)
