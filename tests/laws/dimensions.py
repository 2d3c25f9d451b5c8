"""Units written in docstrings, taken apart into metre, kilogram, second, kelvin and ampere."""

import re
from collections.abc import Mapping

# exponents of m, kg, s, K, A
_BASE: dict[str, tuple[int, int, int, int, int]] = {
    "m": (1, 0, 0, 0, 0), "kg": (0, 1, 0, 0, 0), "s": (0, 0, 1, 0, 0), "K": (0, 0, 0, 1, 0),
    "A": (0, 0, 0, 0, 1), "Pa": (-1, 1, -2, 0, 0), "N": (1, 1, -2, 0, 0), "J": (2, 1, -2, 0, 0),
    "W": (2, 1, -3, 0, 0), "V": (2, 1, -3, 0, -1), "VA": (2, 1, -3, 0, 0),
    "ohm": (2, 1, -3, 0, -2), "Hz": (0, 0, -1, 0, 0), "rpm": (0, 0, -1, 0, 0),
    "mol": (0, 0, 0, 0, 0), "kmol": (0, 0, 0, 0, 0), "rad": (0, 0, 0, 0, 0), "1": (0, 0, 0, 0, 0),
}  # fmt: skip
_POWER = re.compile(r"([A-Za-z]+|1)(-?\d+)?")

Scale = Mapping[str, float]


def factor(unit: str, scale: Scale) -> float:
    """How much a number grows when each base unit shrinks by its scale.

    >>> factor("W/(m2 K)", {"m": 2.0, "kg": 1.0, "s": 1.0, "K": 1.0, "A": 1.0})
    1.0
    """
    over, _, under = unit.split(" or ")[0].partition("/")
    return _product(over, scale) / _product(under.strip("()"), scale)


def _product(text: str, scale: Scale) -> float:
    grown = 1.0
    for part in text.split():
        match = _POWER.fullmatch(part)
        assert match is not None, f"{part!r} is not a unit of a docstring"
        name, power = match[1], int(match[2] or 1)
        for base, exponent in zip(("m", "kg", "s", "K", "A"), _BASE[name], strict=True):
            grown *= scale[base] ** (exponent * power)
    return grown
