"""Fuel gas."""

from typing import Any

from lightoff.physics import fuel_gas
from lightoff.physics.constants import GAS_BASE_PRESSURE, STANDARD_PRESSURE
from published.cases import Given, Method


def component(_: Given, label: dict[str, str]) -> dict[str, Any]:
    mass, summation, heat = fuel_gas.COMPONENTS[label["gas"]]
    z = fuel_gas.compressibility({label["gas"]: 1.0}, STANDARD_PRESSURE)
    return {"M": mass, "s_15": summation, "Hg_60F": heat, "Z_15": z}


def mixture(given: Given, _: dict[str, str]) -> dict[str, Any]:
    fractions = {
        name.replace("carbon_", "carbon ").replace("n_", "n-"): x for name, x in given.items()
    }
    base = 14.73 * 6894.757293168  # the example's own base pressure
    value = fuel_gas.heating_value(fractions) * base / GAS_BASE_PRESSURE
    density = fuel_gas.relative_density(fractions)
    return {
        "Z": fuel_gas.compressibility(fractions, base),
        "Hg_v": value,
        "d": density,
        "W_g": fuel_gas.wobbe(value, density),
    }


def wobbe(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"W_g": fuel_gas.wobbe(given["Hg"], given["d"])}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"gp-iso6976-.*", component),
    (r"gp-aga5-example", mixture),
    (r"gp-wobbe-.*", wobbe),
)
