"""Moist air: humidity by every way it is measured, density, enthalpy."""

from lightoff.formula import Number, formula
from lightoff.physics.constants import (
    AIR_HEAT_CAPACITY,
    DRY_AIR_GAS_CONSTANT,
    VAPOUR_HEAT_CAPACITY,
    WATER_AIR_RATIO,
)
from lightoff.physics.saturation import FREEZING, saturation_pressure

VAPORISATION = 2501e3  # [J/kg] latent heat of water at 0 degC; ASHRAE Fundamentals, eq. 30


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
def vapour_pressure_of_ratio(humidity_ratio: Number, pressure: Number) -> Number:
    """Partial pressure of the water vapour in air of known humidity ratio.

    p_w = p W / (0.621945 + W)

    Parameters
    ----------
    humidity_ratio : W, mass of water per mass of dry air, 0 to 0.2 [kg/kg]
    pressure : p, absolute pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    p_w, vapour pressure [Pa]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 20 turned round.

    >>> round(vapour_pressure_of_ratio(0.00726, 101325.0), 0)
    1169.0
    """
    return pressure * humidity_ratio / (WATER_AIR_RATIO + humidity_ratio)


@formula
def relative_humidity(temperature: Number, *, humidity_ratio: Number, pressure: Number) -> Number:
    """Vapour pressure over that of saturation, over ice below freezing.

    phi = p_w / p_ws

    Parameters
    ----------
    temperature : T, dry bulb, 223.15 to 373.15 [K]
    humidity_ratio : W, mass of water per mass of dry air, 0 to 0.2 [kg/kg]
    pressure : p, absolute pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    phi, relative humidity [1]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 22.

    >>> round(relative_humidity(293.15, humidity_ratio=0.00726, pressure=101325.0), 3)
    0.5
    """
    return vapour_pressure_of_ratio(humidity_ratio, pressure) / saturation_pressure(temperature)


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
def saturated_humidity_ratio(temperature: Number, pressure: Number) -> Number:
    """Mass of water per mass of dry air that is saturated; at the dew point, that of the air.

    W_s = 0.621945 p_ws / (p - p_ws)

    Parameters
    ----------
    temperature : T, dew point, or wet bulb, 173.15 to 333.15 [K]
    pressure : p, absolute pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    W_s, humidity ratio at saturation [kg/kg]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 21.

    >>> round(saturated_humidity_ratio(293.15, 101325.0), 5)
    0.0147
    """
    saturated = saturation_pressure(temperature)
    return WATER_AIR_RATIO * saturated / (pressure - saturated)


@formula
def moist_air_volume(temperature: Number, *, humidity_ratio: Number, pressure: Number) -> Number:
    """Volume of moist air for each mass of dry air in it.

    v = 287.042 T (1 + W / 0.621945) / p

    Parameters
    ----------
    temperature : T, dry bulb, 173.15 to 473.15 [K]
    humidity_ratio : W, mass of water per mass of dry air, 0 to 0.2 [kg/kg]
    pressure : p, absolute pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    v, volume per mass of dry air [m3/kg]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 26.

    >>> round(moist_air_volume(293.15, humidity_ratio=0.01, pressure=101325.0), 4)
    0.8438
    """
    moist = 1 + humidity_ratio / WATER_AIR_RATIO
    return DRY_AIR_GAS_CONSTANT * temperature * moist / pressure


@formula
def moist_air_density(temperature: Number, *, humidity_ratio: Number, pressure: Number) -> Number:
    """Density of moist air.

    rho = (1 + W) / v

    Parameters
    ----------
    temperature : T, dry bulb, 173.15 to 473.15 [K]
    humidity_ratio : W, mass of water per mass of dry air, 0 to 0.2 [kg/kg]
    pressure : p, absolute pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    rho, mass of moist air per volume [kg/m3]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 11.

    >>> round(moist_air_density(293.15, humidity_ratio=0.0, pressure=101325.0), 4)
    1.2042
    """
    volume = moist_air_volume(temperature, humidity_ratio=humidity_ratio, pressure=pressure)
    return (1 + humidity_ratio) / volume


@formula
def moist_air_enthalpy(temperature: Number, humidity_ratio: Number) -> Number:
    """Enthalpy of moist air per mass of dry air, from dry air and liquid water at 0 degC.

    h = 1006 (T - 273.15) + W (2501000 + 1860 (T - 273.15))

    Parameters
    ----------
    temperature : T, dry bulb, 173.15 to 473.15 [K]
    humidity_ratio : W, mass of water per mass of dry air, 0 to 0.2 [kg/kg]

    Returns
    -------
    h, enthalpy [J/kg]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 30.

    >>> round(moist_air_enthalpy(303.15, 0.02))
    81316
    """
    t = temperature - FREEZING
    return AIR_HEAT_CAPACITY * t + humidity_ratio * (VAPORISATION + VAPOUR_HEAT_CAPACITY * t)


@formula
def temperature_of_enthalpy(enthalpy: Number, humidity_ratio: Number) -> Number:
    """Dry bulb of air of known enthalpy and humidity ratio.

    T = 273.15 + (h - 2501000 W) / (1006 + 1860 W)

    Parameters
    ----------
    enthalpy : h, per mass of dry air, from dry air and water at 0 degC, -60 000 to 700 000 [J/kg]
    humidity_ratio : W, mass of water per mass of dry air, 0 to 0.2 [kg/kg]

    Returns
    -------
    T, dry bulb [K]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 30 turned round.

    >>> round(temperature_of_enthalpy(81316.0, 0.02), 2)
    303.15
    """
    capacity = AIR_HEAT_CAPACITY + VAPOUR_HEAT_CAPACITY * humidity_ratio
    return FREEZING + (enthalpy - VAPORISATION * humidity_ratio) / capacity
