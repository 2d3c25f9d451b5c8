"""Orifices and altitude."""

from typing import Any

from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.constants import STANDARD_PRESSURE
from lightoff.physics.orifice import CODE_DERATE, orifice_input
from published.cases import Given, Method


def code_derate(given: Given, _: dict[str, str]) -> dict[str, Any]:
    # the rule's own column begins below the altitude at which it is applied
    return {"factor": [1 - CODE_DERATE * z for z in given["z"]]}


def orifice_altitude(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"factor": [(barometric_pressure(z) / STANDARD_PRESSURE) ** 0.5 for z in given["z"]]}


def root_law(given: Given, _: dict[str, str]) -> dict[str, Any]:
    ratio = orifice_input(
        rated_input=1.0,
        manifold=given["h2"],
        rated_manifold=given["h1"],
        wobbe_ratio=1.0,
        density_ratio=1.0,
    )
    return {"ratio": ratio}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"or-alt-rule", code_derate),
    (r"or-alt-physics", orifice_altitude),
    (r"or-sqrt-.*", root_law),
)
