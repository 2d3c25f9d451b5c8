"""A value of a calculation in the reader's units: as typed where it was typed so, else rounded."""

import math

from lightoff.quantity import (
    BY_NAME,
    KINDS,
    UNITS,
    Shown,
    System,
    decimals,
    in_unit,
    printed_unit,
    shown,
)

MOST_DECIMALS = 6
SIGNIFICANT = 3  # digits that an answer shows at least


def input_told(value: float, kind: str, system: System) -> Shown:
    """A typed value with the digits it was typed with, when that was in the reader's own unit.

    >>> input_told(0.0283168466 * 2.345, "volume", "us").text
    '2.345 ft³'
    """
    unit = KINDS[kind].unit(system)
    number = in_unit(value, kind, unit)
    if not math.isfinite(number):
        return _absurd(value, kind)
    exact = (n for n in range(MOST_DECIMALS + 1) if _same(round(number, n), number))
    return _to(next(exact, None), value, kind, system)


def result_told(value: float, kind: str, system: System) -> Shown:
    """An answer with the decimals of its kind, and with three digits where that gives fewer.

    >>> result_told(3.0, "pressure", "us").text
    '0.0120 in. w.c.'
    """
    unit = KINDS[kind].unit(system)
    number = in_unit(value, kind, unit)
    if not math.isfinite(number):
        return _absurd(value, kind)
    if kind == "number" and number == round(number):
        return _to(0, value, kind, system)
    if kind == "temperature" or not number:
        return shown(value, kind, system)
    digits = SIGNIFICANT - 1 - math.floor(math.log10(abs(number)))
    return _to(max(decimals(kind, unit, system), digits), value, kind, system)


def _absurd(value: float, kind: str) -> Shown:
    """What is too large to be told in the reader's unit."""
    return Shown(f"{value:.3g}", printed_unit(si_unit(kind)))


def _same(a: float, b: float) -> bool:
    """Whether two numbers differ by no more than changing units does."""
    return math.isclose(a, b, rel_tol=1e-12, abs_tol=1e-9)


def _to(places: int | None, value: float, kind: str, system: System) -> Shown:
    if places is None:
        return result_told(value, kind, system)
    factor = BY_NAME[KINDS[kind].unit(system)].factor
    return shown(value, kind, system, resolution=10.0**-places * factor)


def si_unit(kind: str) -> str:
    """The unit a kind is reckoned in, as it is typed; 1 for a bare number or a word.

    >>> si_unit("airflow"), si_unit("temperature"), si_unit("fraction")
    ('m3/s', 'K', '1')
    """
    what = KINDS.get(kind)
    if what is None:
        return "1"
    whole = (unit for unit in UNITS if unit.factor == 1.0 and not unit.offset)
    own = (unit.name for unit in whole if unit.dimension == what.dimension)
    return next(own, "1")
