"""Standard atmosphere."""

from typing import Any

from lightoff.physics.atmosphere import (
    barometric_pressure,
    standard_density,
    standard_temperature,
)
from lightoff.physics.moist_air import moist_air_density
from published.cases import Given, Method

EARTH = 6356766.0


def altitude(given: Given) -> float:
    """Geometric altitude; the handbook's tables give the geopotential one."""
    return given["z"] if "z" in given else EARTH * given["H"] / (EARTH - given["H"])


def atmosphere(given: Given, _: dict[str, str]) -> dict[str, Any]:
    z = altitude(given)
    return {
        "p": barometric_pressure(z),
        "T": standard_temperature(z),
        "rho": standard_density(z),
    }


def density_ratio(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """Dry air of 70 degF, there and at sea level."""
    there, below = (
        moist_air_density(294.261, humidity_ratio=0.0, pressure=barometric_pressure(z))
        for z in (altitude(given), 0.0)
    )
    return {"ratio": there / below}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"at-density-ratio-.*", density_ratio),
    (r"at-.*", atmosphere),
)
