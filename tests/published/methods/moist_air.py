"""Moist air."""

from typing import Any

from lightoff.physics import moist_air
from published.cases import Given, Method


def saturation(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"p_ws": moist_air.saturation_pressure(given["t"])}


def saturated_ratio(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"W_s": moist_air.humidity_ratio(given["t"], relative_humidity=1.0, pressure=given["p"])}


def moist(given: Given, _: dict[str, str]) -> dict[str, Any]:
    ratio = moist_air.humidity_ratio(given["t"], relative_humidity=given["RH"], pressure=given["p"])
    density = moist_air.moist_air_density(given["t"], humidity_ratio=ratio, pressure=given["p"])
    return {"W": ratio, "rho": density, "v": (1 + ratio) / density}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"ma-p(ws|ice)-.*", saturation),
    (r"ma-ws-.*", saturated_ratio),
    (r"ma-cp-.*", moist),
)
