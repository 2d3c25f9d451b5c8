"""Moist air: saturation, humidity by every way it is measured, density, enthalpy."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import clip, exp, log, where
from lightoff.physics.constants import (
    AIR_HEAT_CAPACITY,
    DRY_AIR_GAS_CONSTANT,
    VAPOUR_HEAT_CAPACITY,
    WATER_AIR_RATIO,
)

FREEZING = 273.15  # [K] 0 degC
TRIPLE_POINT = 273.16  # [K]
TRIPLE_PRESSURE = 611.657  # [Pa] the saturation pressure there
VAPORISATION = 2501e3  # [J/kg] latent heat of water at 0 degC; ASHRAE Fundamentals, eq. 30

LOWEST, HIGHEST = 173.15, 473.15  # [K] where the saturation pressure holds

_STEPS = 3  # each leaves a hundredth of the error or less: after these 6e-10 K at most


@formula
def log_saturation_over_ice(temperature: Number) -> Number:
    """Logarithm of the saturation pressure in pascals, over ice.

    y_i = -5674.54 / T + 6.39252 + T (-0.00967784 + T (6.22157e-07 + T (2.07478e-09 +
    T (-9.48402e-13)))) + 4.1635 log(T)

    Parameters
    ----------
    temperature : T, temperature, 173.15 to 273.16 [K]

    Returns
    -------
    y_i, logarithm of the saturation pressure over ice [1]

    Source: Hyland and Wexler 1983; ASHRAE Fundamentals, psychrometrics, eq. 5, its powers nested.

    >>> round(exp(log_saturation_over_ice(263.15)), 2)
    259.9
    """
    T = temperature
    polynomial = -9.6778430e-3 + T * (6.2215701e-7 + T * (2.0747825e-9 + T * -9.4840240e-13))
    return -5.6745359e3 / T + 6.3925247 + T * polynomial + 4.1635019 * log(T)


@formula
def log_saturation_over_water(temperature: Number) -> Number:
    """Logarithm of the saturation pressure in pascals, over liquid water.

    y_w = -5800.22 / T + 1.3915 + T (-0.0486402 + T (4.17648e-05 + T (-1.44521e-08))) +
    6.54597 log(T)

    Parameters
    ----------
    temperature : T, temperature, 273.15 to 473.15 [K]

    Returns
    -------
    y_w, logarithm of the saturation pressure over water [1]

    Source: Hyland and Wexler 1983; ASHRAE Fundamentals, psychrometrics, eq. 6, its powers nested.

    >>> round(exp(log_saturation_over_water(293.15)), 1)
    2338.8
    """
    T = temperature
    polynomial = -4.8640239e-2 + T * (4.1764768e-5 + T * -1.4452093e-8)
    return -5.8002206e3 / T + 1.3914993 + T * polynomial + 6.5459673 * log(T)


@formula
def saturation_pressure(temperature: Number) -> Number:
    """Saturation pressure of water vapour, over ice below the triple point.

    p_ws = exp(y_i if T < 273.16 else y_w)

    Parameters
    ----------
    temperature : T, temperature, 173.15 to 473.15 [K]

    Returns
    -------
    p_ws, saturation pressure [Pa]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 5 and 6.

    >>> round(saturation_pressure(293.15), 1)
    2338.8
    """
    return exp(log_saturation(temperature))


def log_saturation(temperature: Number) -> Number:
    """Logarithm of the saturation pressure, over whichever there is of ice and water."""
    ice = log_saturation_over_ice(temperature)
    water = log_saturation_over_water(temperature)
    return where(temperature < TRIPLE_POINT, ice, water)


@formula
def dew_point(vapour_pressure: Number) -> Number:
    """Temperature at which water vapour of this pressure is saturated: frost point below freezing.

    p_w = p_ws(T_dp), solved for T_dp

    Parameters
    ----------
    vapour_pressure : p_w, partial pressure of the water vapour, 0.0015 to 110 000 [Pa]

    Returns
    -------
    T_dp, dew point or frost point [K]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 36, solved by Newton's method in 1/T.

    >>> round(dew_point(1000.0) - 273.15, 2)
    6.97
    """
    frost = vapour_pressure < TRIPLE_PRESSURE
    lower, upper = where(frost, LOWEST, TRIPLE_POINT), where(frost, TRIPLE_POINT, HIGHEST)
    y = log(vapour_pressure)
    above = y - log(TRIPLE_PRESSURE)
    inverse = 1 / TRIPLE_POINT - above / where(frost, 6140.0, 5420.0 - 41.0 * above)
    for _ in range(_STEPS):
        T = clip(1 / inverse, lower, upper)
        inverse = 1 / T - (y - log_saturation(T)) / steepness(T)
    return clip(1 / inverse, lower, upper)


def steepness(temperature: Number) -> Number:
    """About how fast ln p_ws falls with 1/T: the latent heat over the vapour's gas constant [K].

    Fitted to the saturation formulas, 1 % below 100 degC: it steers a solution, whose end does not
    depend on it.
    """
    return where(temperature < TRIPLE_POINT, 6140.0, 6600.0 - 4.4 * temperature)


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
