"""A claim about the world: what was measured of it, what is aimed at, and the count behind it."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from statistics import NormalDist


@dataclass(frozen=True, kw_only=True)
class Claim:
    """`low` and `high` are the aim, ends included; `digits` those of the number as it is shown."""

    id: str
    says: str
    measured: float
    low: float = 0.0
    high: float = 1.0
    count: str
    seeds: str
    percent: bool = True

    @property
    def met(self) -> bool:
        return self.low <= self.measured <= self.high

    @property
    def number(self) -> str:
        return self._shown(self.measured)

    @property
    def aim(self) -> str:
        """In words: the ends that are no matter of course."""
        low, high = self._shown(self.low), self._shown(self.high)
        if self.low == 0.0:
            return "none" if self.high == 0.0 else f"at most {high}"
        return f"at least {low}" if self.high == 1.0 else f"{low} to {high}"

    @property
    def line(self) -> str:
        return f"{self.says}: {self.number} (aim {self.aim}; {self.count}; {self.seeds})"

    def _shown(self, number: float) -> str:
        return f"{100 * number:.3g} %" if self.percent else f"{number:.3g}"


def share(holds: Iterable[bool]) -> float:
    """Of how many something holds; no number where there are none."""
    every = list(holds)
    return sum(every) / len(every) if every else math.nan


def quantile(values: Iterable[float], part: float) -> float:
    """The value that this part of them does not exceed."""
    order = sorted(values)
    return order[min(int(part * len(order)), len(order) - 1)] if order else math.nan


def kolmogorov_smirnov(standardised: Sequence[float]) -> float:
    """Greatest distance of the errors' distribution from the one their uncertainties state."""
    normal, n = NormalDist(), len(standardised)
    told = sorted(map(normal.cdf, standardised))
    return max((max((i + 1) / n - p, p - i / n) for i, p in enumerate(told)), default=math.nan)
