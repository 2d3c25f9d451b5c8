"""The building: an envelope that leaks, exhaust fans that feel it, doors."""

from dataclasses import dataclass

from plant.root import between
from plant.si import STANDARD_AIR


@dataclass(frozen=True)
class Building:
    """What the supply air meets."""

    exhaust: float  # [m3/s] of standard air at no pressure difference
    yielding: float  # [1/Pa] of exhaust gained by a pascal indoors
    others: float  # [kg/s] other supply, less other exhaust
    leak: float  # [kg/s Pa^-n]
    exponent: float
    running: float = 1.0  # share of the exhaust that runs
    closer: float = 30.0  # [N] of the door's closer, at the handle
    inertia: float = 60.0  # [N] to set the door in motion, no pressure
    door: float = 1.95  # [m2]

    def exhausted(self, pressure: float) -> float:
        return self.exhaust * self.running * max(1.0 + self.yielding * pressure, 0.0)

    def pressure(self, supply: float) -> float:
        """Indoors minus outdoors for a supply mass flow [Pa]."""

        def left(p: float) -> float:
            leaving = self.exhausted(p) * STANDARD_AIR + self.leak * _power(p, self.exponent)
            return supply + self.others - leaving

        return between(left, -400.0, 400.0, 1e-6)

    def doors(self, pressure: float) -> tuple[float, float, float]:
        """Forces to unlatch, to set in motion and to open fully, door opening outwards [N]."""
        push = -pressure * self.door * 0.5 / 0.93  # W/(2(W - d)) with d = 0.07 W
        unlatch = max(self.closer * 0.9 + 0.5 * push, 4.0)
        return unlatch, max(self.inertia + push, 5.0), max(self.closer + 0.3 * push, 5.0)


def _power(p: float, n: float) -> float:
    return abs(p) ** n if p >= 0.0 else -(abs(p) ** n)
