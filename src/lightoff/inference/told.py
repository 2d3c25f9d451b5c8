"""A value as all readings together leave it; what its uncertainty is made of is asked for later."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Protocol

from lightoff.inference.estimate import COVERAGE, Estimate, Part

Budget = tuple[tuple[Part, float], ...]


class Uncertain(Protocol):
    """A value and how uncertain it is [SI]: an `Estimate` of one reading, or a `Told` of all."""

    @property
    def value(self) -> float: ...
    @property
    def u(self) -> float: ...
    @property
    def expanded(self) -> float: ...
    def budget(self) -> Budget: ...


@dataclass(frozen=True)
class Told:
    """A value and its standard uncertainty [SI]; `parts` works out what that is made of.

    `plain` is the uncertainty before it was widened because readings do not go together.
    """

    value: float
    u: float
    parts: Callable[[], Mapping[Part, float]]
    plain: float

    @property
    def expanded(self) -> float:
        """Expanded uncertainty, k = 2 [SI]."""
        return COVERAGE * self.u

    def budget(self) -> Budget:
        """The parts, largest first, without sign."""
        return Estimate(self.value, self.parts()).budget()
