"""How finely a number was written down, and how a person rounds: the numbers themselves tell."""

import math
from collections.abc import Iterable, Mapping, Sequence

from lightoff.inference.estimate import RECTANGULAR
from lightoff.machine import kind_of
from lightoff.machine.visit import Reading

ROUND = (50, 20, 10, 5, 2)  # steps of the last digit that people round to
ENOUGH = 3  # readings from which on numbers show how a person rounds
CHANCE = 0.02  # [1] that numbers nobody rounded would look rounded
# what wavers while it is read, a share of the value; engineering judgement
WAVERS = {"pressure": 0.006, "rotational speed": 0.004, "voltage": 0.002, "current": 0.005,
          "fraction": 0.015}  # fmt: skip


def rounding(readings: Iterable[Reading]) -> Mapping[str, float]:
    """The steps [SI] in which readings were written, by place, where their numbers show any.

    The finest digit ever written with an instrument is how finely it is read; where all numbers as
    long stand at tens of it, those are not. A few numbers show nothing.
    """
    groups: dict[tuple[str | None, str | None], list[Reading]] = {}
    for reading in readings:
        if reading.value is not None and reading.step > 0:
            key = (reading.instrument, kind_of(reading.point))
            groups.setdefault(key, []).append(reading)
    found: dict[str, float] = {}
    for group in groups.values():
        if len(group) >= ENOUGH:
            found |= _steps(group)
    return found


def _steps(group: Sequence[Reading]) -> dict[str, float]:
    """Long numbers are rounded more than short ones: each length by itself."""
    finest = min(each.step for each in group)
    lengths: dict[int, list[Reading]] = {}
    for reading in group:
        digits = len(str(round(abs(reading.value or 0.0) / finest)))
        lengths.setdefault(digits, []).append(reading)
    return {
        reading.place: step
        for alike in lengths.values()
        for step in [finest * _rounded([each.value or 0.0 for each in alike], finest)]
        for reading in alike
    }


def _rounded(values: Sequence[float], step: float) -> int:
    """How many last digits a person rounds to, seen from all that was written."""
    counts = [abs(value) / step for value in values if value]
    whole = [round(count) for count in counts]
    if any(abs(count - n) > 0.01 for count, n in zip(counts, whole, strict=True)):
        return 1  # a scale that does not begin at nothing
    common = math.gcd(*whole)
    likely = (many for many in ROUND if common % many == 0 and many ** -len(whole) < CHANCE)
    return next(likely, 1) if common else 1


def read_by_eye(reading: Reading, value: float, step: float) -> float:
    """Standard uncertainty of what an eye makes of a display or a needle [SI]."""
    wavering = WAVERS.get(kind_of(reading.point) or "", 0.0) * abs(value)
    return math.hypot(step / 2 * RECTANGULAR, wavering)
