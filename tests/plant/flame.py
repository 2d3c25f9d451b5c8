"""Combustion: what leaves a flame, the heat it carries, its dew point and its carbon monoxide."""

from dataclasses import dataclass
from functools import cached_property
from math import exp

from plant.air import saturation
from plant.fuel import Fuel
from plant.root import between

DRY_AIR = {"o2": 0.2095, "n2": 0.7808, "ar": 0.0093, "co2": 0.0004}
LATENT = 44_004.0  # [J/mol] of water at 25 degC
BASE = 298.15  # [K]
# enthalpy above 298.15 K over the temperature difference, in powers of that difference / 1000 K
# [J/mol K]: least squares, 230 to 2400 K, through the GRI-Mech set as Cantera ships it, 0.1 %
HEAT = {
    "n2": (29.074, 0.483, 3.893, -2.556, 0.564, -0.022),
    "o2": (29.372, 3.210, 5.040, -7.318, 3.618, -0.625),
    "co2": (37.137, 22.441, -14.669, 6.774, -1.875, 0.226),
    "h2o": (33.587, 2.683, 5.207, -3.520, 1.070, -0.136),
    "ar": (20.786, 0.0, 0.0, 0.0, 0.0, 0.0),
}
MASS = {"n2": 0.028013, "o2": 0.031999, "co2": 0.04401, "h2o": 0.018015, "ar": 0.039948}


@dataclass(frozen=True)
class Flue:
    """The products of one mole of fuel with `air` moles of dry air [mol/mol]."""

    co2: float
    h2o: float
    o2: float
    n2: float
    ar: float
    heat: float  # set free above the products' sensible heat at 25 degC [J/mol fuel]

    @cached_property
    def dry(self) -> float:
        return self.co2 + self.o2 + self.n2 + self.ar

    @cached_property
    def mass(self) -> float:
        """[kg/mol fuel]"""
        return sum(getattr(self, name) * mass for name, mass in MASS.items())

    @cached_property
    def moles(self) -> float:
        return self.dry + self.h2o

    @cached_property
    def _powers(self) -> tuple[float, ...]:
        rows = [(getattr(self, name), powers) for name, powers in HEAT.items()]
        return tuple(sum(x * powers[i] for x, powers in rows) for i in range(6))

    def sensible(self, T: float) -> float:
        """Above 25 degC, all water as vapour [J/mol fuel]."""
        a, b, c, d, e, f = self._powers
        x = (T - BASE) / 1000.0
        return (T - BASE) * (a + x * (b + x * (c + x * (d + x * (e + x * f)))))

    def enthalpy(self, T: float, p: float) -> float:
        """Above 25 degC, less what its water gave back by condensing [J/mol fuel]."""
        vapour = saturation(T) if T < 370.0 else p
        held = self.dry * vapour / (p - vapour) if vapour < 0.5 * p else self.h2o
        return self.sensible(T) - LATENT * max(self.h2o - held, 0.0)

    def dew_point(self, p: float) -> float:
        """Where its water begins to condense [K]."""
        due = p * self.h2o / self.moles
        return between(lambda T: saturation(T) - due, 240.0, 372.0, 1e-4)


def burn(fuel: Fuel, excess: float, moisture: float) -> Flue:
    """Products at an air ratio of 1 + `excess`; short of air, heat is lost in proportion."""
    air = fuel.oxygen * (1.0 + excess) / DRY_AIR["o2"]
    water = fuel.hydrogen / 2.0 + air * moisture
    burnt = min(1.0 + excess, 1.0)
    net = (fuel.gross - LATENT * fuel.hydrogen / 2.0) * burnt
    return Flue(
        co2=fuel.carbon + air * DRY_AIR["co2"],
        h2o=water,
        o2=max(fuel.oxygen * excess, 0.0),
        n2=fuel.inert + air * DRY_AIR["n2"],
        ar=air * DRY_AIR["ar"],
        heat=net,
    )


def with_air(flue: Flue, air: float, moisture: float) -> Flue:
    """The same products with `air` moles of dry air mixed in behind the flame."""
    return Flue(
        co2=flue.co2 + air * DRY_AIR["co2"],
        h2o=flue.h2o + air * moisture,
        o2=flue.o2 + air * DRY_AIR["o2"],
        n2=flue.n2 + air * DRY_AIR["n2"],
        ar=flue.ar + air * DRY_AIR["ar"],
        heat=flue.heat,
    )


def temperature(flue: Flue, heat: float, guess: float) -> float:
    """Where the products hold this sensible heat [K]."""
    T = guess
    for _ in range(6):
        held = flue.sensible(T)
        step = (heat - held) / (1.12 * held / (T - BASE))  # cp rises with T: the secant is low
        T += step
        if abs(step) < 1e-4:
            break
    return T


def carbon_monoxide(excess: float, base: float, impingement: float) -> float:
    """Air-free: flat in plenty of air, steep under a tenth of excess, up again when chilled.

    Judgement, after the shape every burner's curve has; capped where an analyser gives up.
    """
    starved = 2.0e-3 * exp(min((0.08 - excess) / 0.06, 4.0))
    chilled = 40e-6 * max(excess - 1.4, 0.0)
    return min(base + impingement + starved + chilled, 0.06)
