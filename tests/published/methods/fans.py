"""Fans and velocity pressure."""

from typing import Any

from lightoff.physics import moist_air, traverse
from lightoff.physics.atmosphere import barometric_pressure
from published.cases import Given, Method


def pitot(given: Given, _: dict[str, str]) -> dict[str, Any]:
    pressures = given["pv"] if isinstance(given["pv"], list) else [given["pv"]]
    density = given.get("rho", 0.075 * 0.45359237 / 0.3048**3)
    if "z" in given:
        density = moist_air.moist_air_density(
            given["t"], humidity_ratio=0.0, pressure=barometric_pressure(given["z"])
        )
    speeds = [traverse.pitot_velocity(p, density) for p in pressures]
    return {"V": speeds if isinstance(given["pv"], list) else speeds[0], "rho": density}


METHODS: tuple[tuple[str, Method], ...] = ((r"fa-.*", pitot),)
