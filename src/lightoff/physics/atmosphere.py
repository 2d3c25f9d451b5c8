"""Air pressure, temperature, density and altitude: the standard atmosphere and the weather's."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import exp
from lightoff.physics.constants import STANDARD_GRAVITY

EARTH_RADIUS = 6356766.0  # [m] ISO 2533, nominal
SEA_LEVEL_TEMPERATURE = 288.15  # [K] ISO 2533
SEA_LEVEL_PRESSURE = 101325.0  # [Pa] ISO 2533
LAPSE_RATE = 0.0065  # [K/m] ISO 2533
EXPONENT = 5.25588  # [1] g M / (R L), ISO 2533
AIR_GAS_CONSTANT = 287.05287  # [J/(kg K)] ISO 2533, for the standard atmosphere alone


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
def standard_density(altitude: Number) -> Number:
    """Density of the standard atmosphere, which is dry and as warm as its altitude says.

    rho = p / (287.053 T)

    Parameters
    ----------
    altitude : z, geometric altitude, -500 to 11 000 [m]

    Returns
    -------
    rho, density [kg/m3]

    Source: ISO 2533:1975, 2.8.

    >>> round(standard_density(1500.0), 4)
    1.0581
    """
    return barometric_pressure(altitude) / (AIR_GAS_CONSTANT * standard_temperature(altitude))


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


@formula
def pressure_of_altimeter_setting(altimeter_setting: Number, altitude: Number) -> Number:
    """Pressure that a barometer shows here, from what the airport reports as reduced to sea level.

    p = 101325 ((p_a / 101325)^0.190263 - 0.0065 H / 288.15)^5.25588

    Parameters
    ----------
    altimeter_setting : p_a, reduced to sea level by the standard atmosphere, 90 000 to 110 000 [Pa]
    altitude : z, geometric altitude of the barometer, -500 to 4000 [m]

    Returns
    -------
    p, absolute pressure at the barometer [Pa]

    Source: Smithsonian Meteorological Tables, 6th ed. 1951, p. 269, as MetPy quotes it, without the
    0.3 hPa of an aircraft's own height; constants of ISO 2533.

    >>> round(pressure_of_altimeter_setting(101325.0, 1500.0), 0)
    84560.0
    """
    height = geopotential_altitude(altitude)
    colder = LAPSE_RATE * height / SEA_LEVEL_TEMPERATURE
    ratio = (altimeter_setting / SEA_LEVEL_PRESSURE) ** (1 / EXPONENT) - colder
    return SEA_LEVEL_PRESSURE * ratio**EXPONENT


@formula
def pressure_of_sea_level_pressure(
    sea_level_pressure: Number, altitude: Number, *, temperature: Number
) -> Number:
    """Pressure that a barometer shows here, from a weather map's pressure at sea level.

    p = p_0 exp(-0.0341632 H / (T + 0.0065 H / 2))

    Parameters
    ----------
    sea_level_pressure : p_0, reduced to sea level by the temperature here, 90 000 to 110 000 [Pa]
    altitude : z, geometric altitude of the barometer, -500 to 4000 [m]
    temperature : T, mean of the temperature now and 12 hours ago, 220 to 330 [K]

    Returns
    -------
    p, absolute pressure at the barometer [Pa]

    Source: hypsometric equation for air that gets 6.5 K warmer each km down, as weather services
    use it (WMO-No. 8, from memory), without their terms for moisture and for high plains.

    >>> round(pressure_of_sea_level_pressure(101325.0, 1500.0, temperature=278.4), 0)
    84561.0
    """
    height = geopotential_altitude(altitude)
    column = temperature + LAPSE_RATE * height / 2
    return sea_level_pressure * exp(-(STANDARD_GRAVITY / AIR_GAS_CONSTANT) * height / column)
