"""Every formula, by topic, in the order a start-up meets them."""

from collections.abc import Callable
from types import ModuleType
from typing import Any

from lightoff.formula import is_formula
from lightoff.physics import (
    airstream,
    atmosphere,
    combustion,
    electricity,
    fuel_gas,
    heat_exchanger,
    meter,
    moist_air,
    orifice,
    tightness,
    traverse,
)

TOPICS: tuple[ModuleType, ...] = (
    atmosphere,
    moist_air,
    electricity,
    traverse,
    fuel_gas,
    tightness,
    orifice,
    meter,
    combustion,
    heat_exchanger,
    airstream,
)


def formulas(topic: ModuleType) -> list[Callable[..., Any]]:
    """The formulas of a topic, in the order they are written."""
    return [
        thing
        for thing in vars(topic).values()
        if is_formula(thing) and thing.__module__ == topic.__name__
    ]
