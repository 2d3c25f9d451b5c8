"""A value in SI, as a person reads it: the unit of their system, the digits the gauge can tell.

>>> shown(871.8, "pressure", "us").text
'3.50 in. w.c.'
>>> shown(871.8, "pressure", "us", resolution=25.0).text
'3.5 in. w.c.'
>>> typed(871.811185, "pressure", "us")
'3.50 inwc'
"""

import math
from dataclasses import dataclass

from lightoff.quantity.kinds import KINDS, System
from lightoff.quantity.units import BY_NAME

_PRINTED = {
    "inwc": "in. w.c.",
    "degF": "°F",
    "degC": "°C",
    "kBtu/h": "MBH",
    "m3/h": "m³/h",
    "m3/s": "m³/s",
    "ft3/h": "ft³/h",
    "ft2": "ft²",
    "m2": "m²",
    "ft3": "ft³",
    "m3": "m³",
    "Btu/ft3": "Btu/ft³",
    "MJ/m3": "MJ/m³",
    "lb/ft3": "lb/ft³",
    "kg/m3": "kg/m³",
    "uA": "µA",
    "deg": "°",
    "1": "",
}
MINUS = "−"
MOST_DECIMALS = 6


@dataclass(frozen=True)
class Shown:
    """A number and its unit, ready to print; `text` joins them."""

    number: str
    unit: str

    @property
    def text(self) -> str:
        return f"{self.number} {self.unit}" if self.unit else self.number


def printed_unit(name: str) -> str:
    """How a unit looks on a page ('inwc' is how it is typed, 'in. w.c.' how it is read)."""
    return _PRINTED.get(name, name)


def shown(
    value: float,
    kind: str,
    system: System = "us",
    *,
    resolution: float | None = None,
    unit: str | None = None,
) -> Shown:
    """`value` [SI] of `kind`, rounded to what `resolution` [SI] can tell, with a true minus."""
    name = unit or KINDS[kind].unit(system)
    number = _rounded(value, kind, name, decimals(kind, name, system, resolution))
    return Shown(number.replace("-", MINUS), printed_unit(name))


def typed(
    value: float,
    kind: str,
    system: System = "us",
    *,
    resolution: float | None = None,
    unit: str | None = None,
) -> str:
    """The same as `shown`, but as it would be typed in: `parse` reads it back."""
    name = unit or KINDS[kind].unit(system)
    number = _rounded(value, kind, name, decimals(kind, name, system, resolution))
    return number if name == "1" else f"{number} {name}"


def decimals(kind: str, unit: str, system: System = "us", resolution: float | None = None) -> int:
    """How many decimals to show in `unit`: the place of the resolution's first digit, or a default.

    >>> decimals("pressure", "inwc", resolution=2.4908891)
    2
    """
    if resolution is None or not resolution > 0:
        what = KINDS[kind]
        if unit == what.us and (system == "us" or unit != what.si):
            return what.decimals[0]
        if unit == what.si:
            return what.decimals[1]
        resolution = 10.0 ** -what.decimals[0] * BY_NAME[what.us].factor
    step = resolution / BY_NAME[unit].factor
    # a step that is a power of ten up to rounding counts as that power
    return max(0, min(MOST_DECIMALS, -math.floor(math.log10(step) + 1e-9)))


def in_unit(value: float, kind: str, unit: str) -> float:
    """`value` [SI] as a bare number in `unit`."""
    row = BY_NAME[unit]
    return (value - (0.0 if KINDS[kind].difference else row.offset)) / row.factor


def _rounded(value: float, kind: str, unit: str, places: int) -> str:
    number = in_unit(value, kind, unit)
    text = f"{number:.{places}f}"
    return text.replace("-", "", 1) if float(text) == 0 else text
