"""Air pressure, temperature and altitude in the standard atmosphere."""

from lightoff.formula import Number, formula

EARTH_RADIUS = 6356766.0  # [m] ISO 2533, nominal
SEA_LEVEL_TEMPERATURE = 288.15  # [K] ISO 2533
SEA_LEVEL_PRESSURE = 101325.0  # [Pa] ISO 2533
LAPSE_RATE = 0.0065  # [K/m] ISO 2533
EXPONENT = 5.25588  # [1] g M / (R L), ISO 2533


@formula
def geopotential_altitude(altitude: Number) -> Number:
    """Geopotential altitude: the height that has the same potential under uniform gravity.

    H = 6356766 z / (6356766 + z)

    Parameters
    ----------
    altitude : z, geometric altitude, -500 to 11 000 [m]

    Returns
    -------
    H, geopotential altitude [m]

    Source: ISO 2533:1975, 2.3.

    >>> round(geopotential_altitude(3000.0), 2)
    2998.58
    """
    return EARTH_RADIUS * altitude / (EARTH_RADIUS + altitude)


@formula
def standard_temperature(altitude: Number) -> Number:
    """Temperature of the standard atmosphere.

    T = 288.15 - 0.0065 H

    Parameters
    ----------
    altitude : z, geometric altitude, -500 to 11 000 [m]

    Returns
    -------
    T, temperature [K]

    Source: ISO 2533:1975, 2.5.

    >>> round(standard_temperature(1000.0), 3)
    281.651
    """
    return SEA_LEVEL_TEMPERATURE - LAPSE_RATE * geopotential_altitude(altitude)


@formula
def barometric_pressure(altitude: Number) -> Number:
    """Pressure of the standard atmosphere.

    p = 101325 (T / 288.15)^5.25588

    Parameters
    ----------
    altitude : z, geometric altitude, -500 to 11 000 [m]

    Returns
    -------
    p, absolute pressure [Pa]

    Source: ISO 2533:1975, 2.7.

    >>> round(barometric_pressure(1500.0), 0)
    84560.0
    """
    return SEA_LEVEL_PRESSURE * (standard_temperature(altitude) / SEA_LEVEL_TEMPERATURE) ** EXPONENT


@formula
def altitude_of_pressure(pressure: Number) -> Number:
    """Altitude at which the standard atmosphere has this pressure.

    z = 6356766 H / (6356766 - H)

    Parameters
    ----------
    pressure : p, absolute pressure, 22 600 to 107 500 [Pa]

    Returns
    -------
    z, geometric altitude [m]

    Source: ISO 2533:1975, 2.3 turned round.

    >>> round(altitude_of_pressure(84559.7), 0)
    1500.0
    """
    height = geopotential_altitude_of_pressure(pressure)
    return EARTH_RADIUS * height / (EARTH_RADIUS - height)


@formula
def geopotential_altitude_of_pressure(pressure: Number) -> Number:
    """Geopotential altitude at which the standard atmosphere has this pressure.

    H = 44330.8 (1 - (p / 101325)^0.190263)

    Parameters
    ----------
    pressure : p, absolute pressure, 22 600 to 107 500 [Pa]

    Returns
    -------
    H, geopotential altitude [m]

    Source: ISO 2533:1975, 2.7 turned round.

    >>> round(geopotential_altitude_of_pressure(84559.7), 1)
    1499.6
    """
    ratio = pressure / SEA_LEVEL_PRESSURE
    return SEA_LEVEL_TEMPERATURE / LAPSE_RATE * (1 - ratio ** (1 / EXPONENT))
