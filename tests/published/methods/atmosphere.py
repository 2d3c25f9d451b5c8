"""Standard atmosphere."""

from typing import Any

from lightoff.physics.atmosphere import barometric_pressure
from published.cases import Given, Method

EARTH = 6356766.0


def altitude(given: Given) -> float:
    """Geometric altitude; the handbook's tables give the geopotential one."""
    return given["z"] if "z" in given else EARTH * given["H"] / (EARTH - given["H"])


def atmosphere(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"p": barometric_pressure(altitude(given))}


METHODS: tuple[tuple[str, Method], ...] = ((r"at-.*", atmosphere),)
