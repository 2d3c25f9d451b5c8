"""Safety figures the workbench itself uses."""

from typing import Any

from lightoff.physics.combustion import CO_CLASS_LIMIT
from lightoff.physics.fuel_gas import ideal_relative_density, molar_mass
from published.cases import Given, Method


def class_limit(_: Given, __: dict[str, str]) -> dict[str, Any]:
    return {"limit": CO_CLASS_LIMIT}


def against_air(_: Given, __: dict[str, str]) -> dict[str, Any]:
    """The case holds molar masses together; a real propane is another 1.8 % heavier."""
    gases = ("propane", "methane")
    return {gas: ideal_relative_density(molar_mass({gas: 1.0})) for gas in gases}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"sa-co-airfree-class", class_limit),
    (r"sa-lp-density", against_air),
)
