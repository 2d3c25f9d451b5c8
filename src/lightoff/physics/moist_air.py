"""Moist air: saturation, humidity ratio, density."""

from lightoff.physics.constants import DRY_AIR_GAS_CONSTANT, WATER_AIR_RATIO
from lightoff.physics.elementary import Number, exp, log, where

TRIPLE_POINT = 273.16  # [K]

_ICE = (-5.6745359e3, 6.3925247, -9.6778430e-3, 6.2215701e-7, 2.0747825e-9, -9.4840240e-13,
        4.1635019)  # fmt: skip
_WATER = (-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673)


def saturation_pressure(temperature: Number) -> Number:
    """Saturation pressure of water vapour, over ice below the triple point.

    ln p = c0/T + c1 + c2 T + ... + cn ln T

    Parameters
    ----------
    temperature : dry bulb, 173.15 to 473.15 [K]

    Returns
    -------
    saturation pressure [Pa]

    Source: Hyland and Wexler 1983; ASHRAE Fundamentals, psychrometrics, eq. 5 and 6.

    >>> round(saturation_pressure(293.15), 1)
    2338.8
    """
    T = temperature
    a, b, c, d, e, f, g = _ICE
    ice = a / T + b + T * (c + T * (d + T * (e + T * f))) + g * log(T)
    h, i, j, k, m, n = _WATER
    water = h / T + i + T * (j + T * (k + T * m)) + n * log(T)
    return exp(where(TRIPLE_POINT > T, ice, water))


def humidity_ratio(temperature: Number, *, relative_humidity: Number, pressure: Number) -> Number:
    """Mass of water per mass of dry air: W = 0.621945 pw / (p - pw).

    Parameters
    ----------
    temperature : dry bulb [K]
    relative_humidity : 0 to 1 [1]
    pressure : absolute pressure [Pa]

    Returns
    -------
    humidity ratio [kg/kg]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 20 and 22.

    >>> round(humidity_ratio(293.15, relative_humidity=0.5, pressure=101325.0), 5)
    0.00726
    """
    vapour = relative_humidity * saturation_pressure(temperature)
    return WATER_AIR_RATIO * vapour / (pressure - vapour)


def moist_air_density(temperature: Number, *, humidity_ratio: Number, pressure: Number) -> Number:
    """Density of moist air: rho = p (1 + W) / (R T (1 + W / 0.621945)).

    Parameters
    ----------
    temperature : dry bulb [K]
    humidity_ratio : mass of water per mass of dry air [kg/kg]
    pressure : absolute pressure [Pa]

    Returns
    -------
    mass of moist air per volume [kg/m3]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 26 and 11.

    >>> round(moist_air_density(293.15, humidity_ratio=0.0, pressure=101325.0), 4)
    1.2042
    """
    W = humidity_ratio
    specific = DRY_AIR_GAS_CONSTANT * temperature * (1 + W / WATER_AIR_RATIO) / pressure
    return (1 + W) / specific
