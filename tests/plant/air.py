"""Moist air: saturation, density, enthalpy, viscosity, and the standard atmosphere."""

from math import exp

from plant.root import between

R_DRY = 287.05  # [J/kg K]
FREEZING = 273.15  # [K]


def atmosphere(altitude: float) -> float:
    """Pressure at a height of the standard atmosphere (ISO 2533) [Pa]."""
    return 101_325.0 * (1.0 - 0.0065 * altitude / 288.15) ** 5.2559


def saturation(T: float) -> float:
    """Water vapour pressure at saturation, over ice below 0 degC (Buck 1996, from memory) [Pa]."""
    t = T - FREEZING
    if t < 0.0:
        return 611.15 * exp((23.036 - t / 333.7) * (t / (279.82 + t)))
    return 611.21 * exp((18.678 - t / 234.5) * (t / (257.14 + t)))


def humidity_ratio(T: float, rh: float, p: float) -> float:
    """Water by dry air [kg/kg]."""
    vapour = rh * saturation(T)
    return 0.62195 * vapour / (p - vapour)


def density(T: float, w: float, p: float) -> float:
    """Mass of moist air by its volume [kg/m3]."""
    return p / (R_DRY * T) * (1.0 + w) / (1.0 + w / 0.62195)


def enthalpy(T: float, w: float) -> float:
    """By dry air, zero at 0 degC dry (cp rises a little, as in gas tables) [J/kg]."""
    t = T - FREEZING
    return 1005.2 * t + 0.026 * t * t + w * (2.5009e6 + 1848.0 * t + 0.12 * t * t)


def temperature(h: float, w: float) -> float:
    """The inverse of `enthalpy` [K]."""
    t = (h - 2.5009e6 * w) / (1005.2 + 1848.0 * w)
    for _ in range(3):
        slope = 1005.2 + 0.052 * t + w * (1848.0 + 0.24 * t)
        t -= (enthalpy(t + FREEZING, w) - h) / slope
    return t + FREEZING


def viscosity(T: float) -> float:
    """Sutherland's law [Pa s]."""
    return 1.458e-6 * T**1.5 / (T + 110.4)


def wet_bulb(T: float, w: float, p: float) -> float:
    """What a whirled psychrometer shows (psychrometer equation, A = 6.6e-4 / K) [K]."""
    vapour = p * w / (0.62195 + w)

    def over(wet: float) -> float:
        t = wet - FREEZING
        factor = 6.6e-4 * (1.0 + 1.15e-3 * t) if t >= 0.0 else 5.8e-4
        return saturation(wet) - factor * p * (T - wet) - vapour

    return between(over, T - 40.0, T, 1e-4)
