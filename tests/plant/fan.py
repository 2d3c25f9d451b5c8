"""A centrifugal fan: Euler's head less shock, friction and outlet losses; power from the same."""

from dataclasses import dataclass, replace
from math import pi

from plant.root import between
from plant.si import RPM, STANDARD_AIR


@dataclass(frozen=True)
class Fan:
    """All coefficients belong to rho u^2 / 2 and to the flow number Q / (pi/4 D^2 u)."""

    diameter: float  # [m]
    head: float  # Euler's head at no flow, slip taken off
    lean: float  # how it changes with flow: falls for backward, rises for forward blades
    shock: float
    best: float  # flow number without shock at the inlet
    friction: float
    outlet: float  # outlet area by wheel area
    leak: float = 0.04  # flow that goes round again, of the flow
    disc: float = 0.012  # disc friction and bearings, as a power number
    width: float = 1.0  # of the wheel against the pattern's
    turned: float = 1.0  # what is left of Euler's head when the wheel runs backwards

    @property
    def area(self) -> float:
        return pi / 4.0 * self.diameter**2 * self.width

    def tip(self, speed: float) -> float:
        """Tip speed at `speed` rpm [m/s]."""
        return speed * RPM * self.diameter / 2.0

    def _euler(self, flow: float) -> float:
        return 2.0 * self.turned * (self.head + self.lean * flow)

    def static(self, volume: float, density: float, speed: float) -> float:
        """Fan static pressure at the inlet's volume flow [Pa]."""
        u = max(self.tip(speed), 1e-6)
        flow = volume / (self.area * u)
        shock = self.shock * (flow - self.best) ** 2
        losses = shock + (self.friction / self.turned + self.outlet**-2) * flow * flow
        return 0.5 * density * u * u * (self._euler(flow) - losses)

    def power(self, volume: float, density: float, speed: float) -> float:
        """At the shaft [W]."""
        u = max(self.tip(speed), 1e-6)
        flow = volume / (self.area * u)
        work = flow * (1.0 + self.leak) * self._euler(flow) / self.turned**0.5
        return 0.5 * density * u**3 * self.area * (max(work, 0.0) + self.disc)

    def velocity_pressure(self, volume: float, density: float) -> float:
        """At the outlet [Pa]."""
        return 0.5 * density * (volume / (self.outlet * self.area)) ** 2


# flow number, head and losses of a good wheel of each kind (judgement, after textbook diagrams:
# static efficiency 0.75, 0.62 and 0.60 at best)
PATTERNS = {
    "backward": Fan(1.0, 0.86, -1.25, 6.0, 0.22, 2.5, 0.85),
    "forward": Fan(1.0, 1.00, 0.45, 1.6, 0.38, 4.2, 0.95, leak=0.06, disc=0.03),
    "plenum": Fan(1.0, 0.84, -1.30, 5.0, 0.21, 4.6, 0.60),
}


def speed_for(fan: Fan, volume: float, pressure: float, density: float = STANDARD_AIR) -> float:
    """The speed at which it makes this pressure at this flow, on the falling side [rpm]."""
    return between(lambda n: fan.static(volume, density, n) - pressure, 50.0, 9000.0, 0.01)


def selected(pattern: Fan, volume: float, pressure: float, loading: float) -> Fan:
    """The pattern at the diameter at which the duty lies at `loading` times its best flow."""
    flow = pattern.best * loading
    number = pattern.static(flow * pattern.area * 100.0, 2.0 / 100.0**2, 100.0 / (RPM * 0.5))
    u = (2.0 * pressure / (STANDARD_AIR * number)) ** 0.5
    return replace(pattern, diameter=(volume / (flow * u * pi / 4.0)) ** 0.5)
