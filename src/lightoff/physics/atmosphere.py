"""Air pressure and altitude."""

from lightoff.physics.constants import STANDARD_PRESSURE
from lightoff.physics.elementary import Number

SEA_LEVEL_TEMPERATURE = 288.15  # [K] ISO 2533
LAPSE_RATE = 0.0065  # [K/m] ISO 2533
EXPONENT = 5.25588  # [1] g M / (R L), ISO 2533
EARTH_RADIUS = 6356766.0  # [m] ISO 2533, nominal


def geopotential_altitude(altitude: Number) -> Number:
    """Geopotential altitude of a geometric one: H = r z / (r + z).

    Parameters
    ----------
    altitude : geometric altitude [m]

    Returns
    -------
    geopotential altitude [m]

    Source: ISO 2533:1975, 2.3.

    >>> round(geopotential_altitude(3000.0), 2)
    2998.58
    """
    return EARTH_RADIUS * altitude / (EARTH_RADIUS + altitude)


def barometric_pressure(altitude: Number) -> Number:
    """Pressure of the standard atmosphere: p = p0 (1 - L H / T0)^5.25588.

    Parameters
    ----------
    altitude : geometric altitude, -500 to 11 000 [m]

    Returns
    -------
    absolute pressure [Pa]

    Source: ISO 2533:1975, 2.7.

    >>> round(barometric_pressure(1500.0), 0)
    84560.0
    """
    height = geopotential_altitude(altitude)
    ratio = 1 - LAPSE_RATE * height / SEA_LEVEL_TEMPERATURE
    return STANDARD_PRESSURE * ratio**EXPONENT


def altitude_of_pressure(pressure: Number) -> Number:
    """Altitude at which the standard atmosphere has this pressure.

    Parameters
    ----------
    pressure : absolute pressure [Pa]

    Returns
    -------
    geometric altitude [m]

    Source: ISO 2533:1975, inverse of 2.7.

    >>> round(altitude_of_pressure(84559.7), 0)
    1500.0
    """
    ratio = (pressure / STANDARD_PRESSURE) ** (1 / EXPONENT)
    height = SEA_LEVEL_TEMPERATURE / LAPSE_RATE * (1 - ratio)
    return EARTH_RADIUS * height / (EARTH_RADIUS - height)
