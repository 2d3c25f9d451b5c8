"""What is wrong with what was typed, and what would be right."""

from collections.abc import Iterable
from dataclasses import dataclass

from lightoff.quantity import LightoffError

MOST_LISTED = 200


@dataclass(frozen=True)
class Fault:
    """One fault in one sentence; `place` is the input it concerns, blank for all of them."""

    place: str
    message: str

    def __str__(self) -> str:
        return f"{self.place}: {self.message}" if self.place else self.message


class FaultsError(LightoffError):
    """Every fault at once, one a line; a long list says how many more there are."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(faults)
        listed = [str(fault) for fault in self.faults[:MOST_LISTED]]
        more = len(self.faults) - len(listed)
        super().__init__("\n".join([*listed, *([f"and {more} more"] if more else [])]))
