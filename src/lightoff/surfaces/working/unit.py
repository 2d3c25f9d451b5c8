"""The unit of a formula's quantity, as it is read: `J/m3` is J/m³."""

import re

from lightoff.surfaces.working.digits import RAISED

_POWER = re.compile(r"(?<=[A-Za-z])\^?(-?\d+)(?![\d.])")


def unit_text(unit: str) -> str:
    """The unit with its powers raised; nothing for what has none, or may have one or another.

    >>> unit_text("kg/m3"), unit_text("W/(m2 K)"), unit_text("1"), unit_text("rpm or Hz")
    ('kg/m³', 'W/(m² K)', '', '')
    """
    if unit == "1" or " or " in unit:
        return ""
    return _POWER.sub(lambda match: match[1].translate(RAISED), unit)


def said(text: str) -> str:
    """A sentence of a formula's description as it is read: degrees with their sign.

    >>> said("At 60 degF and 30 inHg.")
    'At 60 °F and 30 inHg.'
    """
    return text.replace("degF", "°F").replace("degC", "°C")
