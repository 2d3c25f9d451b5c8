"""Quantities: "3.5 inwc" to 870 Pa and back, and how a number is shown."""

from lightoff.quantity.errors import LightoffError, QuantityError
from lightoff.quantity.kinds import EXAMPLES, KINDS, SI_UNIT, Kind, System
from lightoff.quantity.parse import Quantity, parse, ways
from lightoff.quantity.show import Shown, decimals, in_unit, printed_unit, shown, typed
from lightoff.quantity.units import BY_NAME, UNITS, Unit, find, si

__all__ = [
    "BY_NAME",
    "EXAMPLES",
    "KINDS",
    "SI_UNIT",
    "UNITS",
    "Kind",
    "LightoffError",
    "Quantity",
    "QuantityError",
    "Shown",
    "System",
    "Unit",
    "decimals",
    "find",
    "in_unit",
    "parse",
    "printed_unit",
    "shown",
    "si",
    "typed",
    "ways",
]
