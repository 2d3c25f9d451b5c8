"""Moist air: saturation, humidity ratio, density."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import exp, log, where
from lightoff.physics.constants import DRY_AIR_GAS_CONSTANT, WATER_AIR_RATIO

TRIPLE_POINT = 273.16  # [K]

_ICE = (-5.6745359e3, 6.3925247, -9.6778430e-3, 6.2215701e-7, 2.0747825e-9, -9.4840240e-13,
        4.1635019)  # fmt: skip
_WATER = (-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 6.5459673)


@formula
def saturation_pressure(temperature: Number) -> Number:
    """Saturation pressure of water vapour, over ice below the triple point.

    p_ws = exp(-5674.54 / T + 6.39252 + T (-0.00967784 + T (6.22157e-07 + T (2.07478e-09 +
    T (-9.48402e-13)))) + 4.1635 log(T) if T < 273.16 else -5800.22 / T + 1.3915 +
    T (-0.0486402 + T (4.17648e-05 + T (-1.44521e-08))) + 6.54597 log(T))

    Parameters
    ----------
    temperature : T, temperature, 173.15 to 473.15 [K]

    Returns
    -------
    p_ws, saturation pressure [Pa]

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


@formula
def vapour_pressure(temperature: Number, relative_humidity: Number) -> Number:
    """Partial pressure of the water vapour in moist air.

    p_w = phi p_ws

    Parameters
    ----------
    temperature : T, dry bulb, 173.15 to 373.15 [K]
    relative_humidity : phi, relative humidity, 0 to 1 [1]

    Returns
    -------
    p_w, vapour pressure [Pa]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 22.

    >>> round(vapour_pressure(293.15, 0.5), 1)
    1169.4
    """
    return relative_humidity * saturation_pressure(temperature)


@formula
def humidity_ratio(temperature: Number, *, relative_humidity: Number, pressure: Number) -> Number:
    """Mass of water per mass of dry air.

    W = 0.621945 p_w / (p - p_w)

    Parameters
    ----------
    temperature : T, dry bulb, 173.15 to 333.15 [K]
    relative_humidity : phi, relative humidity, 0 to 1 [1]
    pressure : p, absolute pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    W, humidity ratio [kg/kg]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 20 and 22.

    >>> round(humidity_ratio(293.15, relative_humidity=0.5, pressure=101325.0), 5)
    0.00726
    """
    vapour = vapour_pressure(temperature, relative_humidity)
    return WATER_AIR_RATIO * vapour / (pressure - vapour)


@formula
def moist_air_density(temperature: Number, *, humidity_ratio: Number, pressure: Number) -> Number:
    """Density of moist air.

    rho = (1 + W) / (287.042 T (1 + W / 0.621945) / p)

    Parameters
    ----------
    temperature : T, dry bulb, 173.15 to 473.15 [K]
    humidity_ratio : W, mass of water per mass of dry air, 0 to 0.2 [kg/kg]
    pressure : p, absolute pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    rho, mass of moist air per volume [kg/m3]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 26 and 11.

    >>> round(moist_air_density(293.15, humidity_ratio=0.0, pressure=101325.0), 4)
    1.2042
    """
    W = humidity_ratio
    specific = DRY_AIR_GAS_CONSTANT * temperature * (1 + W / WATER_AIR_RATIO) / pressure
    return (1 + W) / specific
