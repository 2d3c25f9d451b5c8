"""What the air goes through: hood, damper, filters, exchangers, coil, opening, duct."""

from dataclasses import dataclass, replace
from math import exp, log10, pi

from plant.air import viscosity
from plant.si import STANDARD_AIR


@dataclass(frozen=True)
class Duct:
    """A supply duct: wall friction by Reynolds number and roughness, fittings, an outlet."""

    diameter: float  # [m] hydraulic
    length: float  # [m]
    roughness: float  # [m]
    fittings: float  # in velocity pressures, balancing damper and outlets in it

    @property
    def area(self) -> float:
        return pi / 4.0 * self.diameter**2

    def velocity_pressure(self, m: float, density: float) -> float:
        return 0.5 * (m / self.area) ** 2 / density

    def loss(self, m: float, density: float, T: float) -> float:
        """Static at its beginning over the room (the outlet's velocity is in the fittings) [Pa]."""
        reynolds = max(4.0 * m / (pi * self.diameter * viscosity(T)), 4000.0)
        factor = friction_factor(reynolds, self.roughness / self.diameter)
        numbers = factor * self.length / self.diameter + self.fittings
        return self.velocity_pressure(m, density) * numbers


def friction_factor(reynolds: float, roughness: float) -> float:
    """Darcy's, turbulent (Haaland 1983)."""
    return (-1.8 * log10((roughness / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2


@dataclass(frozen=True)
class Airside:
    """Drops at the design flow of standard air [Pa], and how each moves."""

    design: float  # [kg/s]
    hood: float
    damper: float
    filters: float
    viscous: float  # share of the filter's drop that goes with the velocity, not its square
    furnace: float  # each
    coil: float
    opening: float  # casing to duct, in velocity pressures of the duct
    system_effect: float  # in velocity pressures of the fan's outlet
    duct: Duct
    recirculation: float = 0.0
    angle: float = 90.0  # of the damper's blades, 90 is open

    def hood_drop(self, m: float, density: float) -> float:
        """Hood and damper; a damper's loss grows exponentially as its blades close."""
        damper = self.damper * exp(0.075 * (90.0 - self.angle))
        return (self.hood + damper) * _squared(m, self.design, density)

    def filter_drop(self, m: float, density: float, T: float) -> float:
        volume = m / density * STANDARD_AIR / self.design
        sticky = viscosity(T) / 1.82e-5
        square = density / STANDARD_AIR * volume
        return self.filters * volume * (self.viscous * sticky + (1.0 - self.viscous) * square)

    def furnace_drop(self, m: float, density: float) -> float:
        """Tubes in cross flow: the 1.85th power of the flow."""
        return self.furnace * (m / self.design) ** 1.85 * STANDARD_AIR / density

    def coil_drop(self, m: float, density: float) -> float:
        return self.coil * (m / self.design) ** 1.7 * STANDARD_AIR / density

    def opening_drop(self, m: float, density: float) -> float:
        return self.opening * self.duct.velocity_pressure(m, density)


def _squared(m: float, design: float, density: float) -> float:
    return (m / design) ** 2 * STANDARD_AIR / density


def duct_for(static: float, m: float, velocity: float, length: float, roughness: float) -> Duct:
    """A duct that needs `static` for `m` of standard air entering at `velocity`."""
    diameter = (4.0 * m / (STANDARD_AIR * velocity * pi)) ** 0.5
    bare = Duct(diameter, length, roughness, 0.0)
    per_number = bare.velocity_pressure(m, STANDARD_AIR)
    own = bare.loss(m, STANDARD_AIR, 293.15)
    if own > 0.8 * static:  # a long run in a small duct: shorten it
        return duct_for(static, m, velocity, length * 0.6 * static / own, roughness)
    return replace(bare, fittings=(static - own) / per_number)
