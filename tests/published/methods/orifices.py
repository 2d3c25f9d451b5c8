"""Orifices and altitude."""

from typing import Any

from lightoff.physics import orifice
from lightoff.physics.constants import GAS_BASE_TEMPERATURE, STANDARD_PRESSURE
from lightoff.physics.drills import DRILLS
from lightoff.physics.orifice_size import flowing_density, orifice_flow, orifice_speed
from published.cases import Given, Method

TABLE_DENSITY = 0.60  # relative density of the gas the code's table is made for


def number_drills(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"d": [DRILLS[f"no. {n:.0f}"] for n in given["number"]]}


def letter_drills(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"d": [DRILLS[f"letter {chr(64 + int(i))}"] for i in given["index"]]}


def capacity(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """At sea level and 60 degF, as it flows."""
    densities = given["s"] if isinstance(given["s"], list) else [given["s"]] * len(given["h"])
    return {"Q": [one(given, h, s) for h, s in zip(given["h"], densities, strict=True)]}


def one(given: Given, drop: float, relative: float) -> float:
    density = flowing_density(
        relative, pressure=STANDARD_PRESSURE, temperature=GAS_BASE_TEMPERATURE
    )
    speed = orifice_speed(drop, density)
    return float(orifice_flow(given["d"], coefficient=given["K"], speed=speed))


def code_derate(given: Given, _: dict[str, str]) -> dict[str, Any]:
    # the rule's own column begins below the altitude at which it is applied
    return {"factor": [orifice.code_derate(z) for z in given["z"]]}


def orifice_altitude(given: Given, _: dict[str, str]) -> dict[str, Any]:
    ratios = [orifice.altitude_density_ratio(z) for z in given["z"]]
    return {"factor": [orifice.untouched_factor(1.0, ratio) for ratio in ratios]}


def root_law(given: Given, _: dict[str, str]) -> dict[str, Any]:
    ratio = orifice.orifice_input(
        rated_input=1.0,
        manifold=given["h2"],
        rated_manifold=given["h1"],
        wobbe_ratio=1.0,
        density_ratio=1.0,
    )
    return {"ratio": ratio}


def multiplier(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"m": orifice.relative_density_multiplier(given["s"], TABLE_DENSITY)}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"or-drills-letters", letter_drills),
    (r"or-drills-.*", number_drills),
    (r"or-(bc|nfpa)-.*", capacity),
    (r"or-alt-rule", code_derate),
    (r"or-alt-physics", orifice_altitude),
    (r"or-sqrt-.*", root_law),
    (r"or-sgmult-.*", multiplier),
)
