"""A reader: how a display becomes a number in a notebook."""

from dataclasses import dataclass
from random import Random

HABITS = ("as shown", "as shown", "as shown", "to the fives", "a digit short", "last digit 0")
# what a slip does to a number: the dial read double, a decade, psi for in. w.c., degC for degF
SLIPS = {
    "pressure": ("double", "decade", "psi"),
    "temperature": ("degC", "turned"),
    "current": ("decade", "double"),
    "speed": ("double", "turned"),
    "time": ("double",),
}


@dataclass(frozen=True)
class Reader:
    """One person's habit, and how their eye stands to a needle."""

    habit: str
    squint: float  # of a division, on what has a coarse scale

    def writes(self, shown: float, resolution: float, coarse: bool) -> tuple[float, float]:
        """The number and the step it is written to."""
        if coarse:
            shown += self.squint * resolution
        step = resolution
        if self.habit == "to the fives" and resolution != 0.5:
            step = 5.0 * resolution
        elif self.habit in ("a digit short", "last digit 0"):
            step = 10.0 * resolution
        if abs(shown) < 12.0 * step:  # nobody rounds a small number away
            step = resolution
        return round(shown / step) * step, min(step, resolution) if step < 1 else resolution


def drawn(rng: Random) -> Reader:
    return Reader(rng.choice(HABITS), rng.gauss(0.0, 0.3))


def slipped(rng: Random, quantity: str, number: float) -> tuple[float, str]:
    """The number as a slip leaves it, and which slip it was; untouched where none is usual."""
    kinds = SLIPS.get(quantity, ())
    kind = rng.choice(kinds) if kinds else ""
    if kind == "double":
        return number * rng.choice((2.0, 0.5)), "double"
    if kind == "decade":
        return number * rng.choice((10.0, 0.1)), "decade"
    if kind == "psi":
        return number / 27.68, "psi"
    if kind == "degC":
        return (number - 32.0) / 1.8, "degC"
    if kind == "turned":
        return _turned(number), "turned"
    return number, ""


def _turned(number: float) -> float:
    """The two digits before the point exchanged, as 47 for 74."""
    whole = int(abs(number))
    tens, ones = whole // 10 % 10, whole % 10
    return number + (10 * ones + tens - 10 * tens - ones) * (1 if number > 0 else -1)
