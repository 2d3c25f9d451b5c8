"""Slips of the pen or of the gauge that would explain a value far from its window.

The value is kept and judged as typed: it may be the finding of the day.
"""

from collections.abc import Callable, Iterator, Sequence
from math import isclose, log10

from lightoff.judgement.answer import Row
from lightoff.judgement.evidence import Evidence
from lightoff.judgement.message import Remark
from lightoff.machine import kind_of
from lightoff.machine.visit import Reading
from lightoff.quantity import si

INCH, PSI, MERCURY = si(1, "inwc"), si(1, "psi"), si(1, "inHg")  # [Pa]

Slip = Callable[[float], float]

# what the value would have been, had this slip not been made
_PRESSURE: dict[str, Slip] = {
    "psi-for-inwc": lambda p: p / INCH * PSI,
    "inwc-for-psi": lambda p: p / PSI * INCH,
    "inhg-for-inwc": lambda p: p / INCH * MERCURY,
    "pascal-for-inwc": lambda p: p / INCH,
    "inwc-for-pascal": lambda p: p * INCH,
}
_TEMPERATURE: dict[str, Slip] = {
    "celsius-for-fahrenheit": lambda t: (t * 9 / 5 - 459.67) + 273.15,
    "fahrenheit-for-celsius": lambda t: ((t - 273.15) + 459.67) * 5 / 9,
}
_ANY: dict[str, Slip] = {
    "ten-times": lambda x: x / 10,
    "a-tenth": lambda x: x * 10,
    "double": lambda x: x / 2,
    "half": lambda x: x * 2,
}
FAR = 1.0  # [1] widths of the window outside it, before a slip is looked for
MANY = 3.0  # times a limit, or a part of it: far, too, however wide the window
FAHRENHEIT, ZERO_F, ZERO_C = 5 / 9, 459.67 * 5 / 9, 273.15  # [K] a degree, and both zeros
WHOLE = 1e-6  # [1] of a digit: rounding


def slips(evidence: Evidence, rows: Sequence[Row]) -> Iterator[Remark]:
    """A remark for each reading far outside its window that a slip would bring inside."""
    told: set[str] = set()
    for row in rows:
        if row.point is None or row.run is None or row.measured is None:
            continue
        readings = evidence.with_stale().readings(row.point, row.run)
        if not readings or readings[-1].place in told or not _far(row):
            continue
        if readings[-1].value is None or not isclose(readings[-1].value, row.measured):
            continue  # worked out, as a difference is: no slip of a pen
        for name, slip in candidates(row.kind).items():
            meant = slip(row.measured)
            if _inside(meant, row):
                told.add(readings[-1].place)
                values = {"slip": name, "meant": meant, "kind": row.kind, "point": row.point}
                yield Remark(f"{readings[-1].place}.value", "slip", values)
                break


def candidates(kind: str | None) -> dict[str, Slip]:
    """The slips that a quantity invites."""
    if kind == "pressure":
        return _PRESSURE | _ANY
    if kind == "temperature":
        return _TEMPERATURE
    return _ANY


def swapped(reading: Reading) -> Iterator[float]:
    """What a reading would be with two neighbouring digits the other way round [SI]."""
    if reading.value is None or not reading.step:
        return
    zero = _zero(reading)
    number = abs(reading.value - zero) / reading.step
    if abs(number - round(number)) > WHOLE * number:
        return
    digits, sign = str(round(number)), -1.0 if reading.value < zero else 1.0
    for i in range(len(digits) - 1):
        other = digits[:i] + digits[i + 1] + digits[i] + digits[i + 2 :]
        if other != digits:
            yield zero + sign * int(other) * reading.step


def _zero(reading: Reading) -> float:
    """Where the scale begins that a reading was written in: degrees have no zero of their own."""
    if kind_of(reading.point) != "temperature":
        return 0.0
    exponent = log10(reading.step / FAHRENHEIT)
    return ZERO_F if abs(exponent - round(exponent)) < WHOLE else ZERO_C


def _far(row: Row) -> bool:
    """Further out than the window is wide, or than the limit is large."""
    value = row.measured or 0.0
    low, high = row.lower, row.upper
    if low is not None and high is not None:
        width = FAR * (high - low)
    else:
        width = 0.5 * FAR * abs(low if low is not None else high or 0.0)
    below = low is not None and (value < low - width or 0 < value < low / MANY)
    return below or (high is not None and (value > high + width or value > MANY * high > 0))


def _inside(value: float, row: Row) -> bool:
    """Within the window; a single upper limit must not be met by a value of nothing."""
    if row.lower is None and row.upper is not None and not value > 0.3 * row.upper:
        return False
    above = row.lower is None or value >= row.lower
    return above and (row.upper is None or value <= row.upper)
