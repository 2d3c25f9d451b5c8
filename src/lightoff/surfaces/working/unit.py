"""The unit of a formula's quantity, as it is read: `J/m3` is J/m³."""

import re

from lightoff.surfaces.working.digits import RAISED

_POWER = re.compile(r"(?<=[A-Za-z])\^?(-?\d+)(?![\d.])")


def unit_text(unit: str) -> str:
    """The unit with its powers raised; nothing for what has none.

    >>> unit_text("kg/m3"), unit_text("W/(m2 K)"), unit_text("1")
    ('kg/m³', 'W/(m² K)', '')
    """
    if unit == "1":
        return ""
    return _POWER.sub(lambda match: match[1].translate(RAISED), unit)
