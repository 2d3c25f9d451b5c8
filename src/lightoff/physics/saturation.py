"""Water vapour at saturation, over ice below the triple point: its pressure and the dew point."""

from lightoff.formula import Number, formula
from lightoff.formula.dual import sloped
from lightoff.formula.elementary import clip, exp, log, where

FREEZING = 273.15  # [K] 0 degC
TRIPLE_POINT = 273.16  # [K]
TRIPLE_PRESSURE = 611.657  # [Pa] the saturation pressure there
LOWEST, HIGHEST = 173.15, 473.15  # [K] where the saturation pressure holds

_STEPS = 2  # they leave 3e-9 K at most


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
    return _over_ice(temperature)


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
    return _over_water(temperature)


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
    ice = log_saturation_over_ice(temperature)
    water = log_saturation_over_water(temperature)
    return exp(where(temperature < TRIPLE_POINT, ice, water))


def log_saturation(temperature: Number) -> Number:
    """Logarithm of the saturation pressure."""
    T = temperature
    return where(T < TRIPLE_POINT, _over_ice(T), _over_water(T))


def _ice_slope(T: Number) -> Number:
    polynomial = 2 * 6.2215701e-7 + T * (3 * 2.0747825e-9 + T * (4 * -9.4840240e-13))
    return (5.6745359e3 / T + 4.1635019) / T - 9.6778430e-3 + T * polynomial


@sloped(_ice_slope)
def _over_ice(T: Number) -> Number:
    polynomial = -9.6778430e-3 + T * (6.2215701e-7 + T * (2.0747825e-9 + T * -9.4840240e-13))
    return -5.6745359e3 / T + 6.3925247 + T * polynomial + 4.1635019 * log(T)


def _water_slope(T: Number) -> Number:
    polynomial = 2 * 4.1764768e-5 + T * (3 * -1.4452093e-8)
    return (5.8002206e3 / T + 6.5459673) / T - 4.8640239e-2 + T * polynomial


@sloped(_water_slope)
def _over_water(T: Number) -> Number:
    polynomial = -4.8640239e-2 + T * (4.1764768e-5 + T * -1.4452093e-8)
    return -5.8002206e3 / T + 1.3914993 + T * polynomial + 6.5459673 * log(T)


def _dew_slope(vapour_pressure: Number) -> Number:
    T = _dew_point(vapour_pressure)
    return 1 / (vapour_pressure * where(T < TRIPLE_POINT, _ice_slope(T), _water_slope(T)))


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
    return _dew_point(vapour_pressure)


@sloped(_dew_slope)
def _dew_point(vapour_pressure: Number) -> Number:
    frost = vapour_pressure < TRIPLE_PRESSURE
    lower, upper = where(frost, LOWEST, TRIPLE_POINT), where(frost, TRIPLE_POINT, HIGHEST)
    y = log(vapour_pressure)
    above = y - log(TRIPLE_PRESSURE)
    inverse = 1 / TRIPLE_POINT - above / where(frost, 6140.0, 5420.0 - 41.0 * above)
    for _ in range(_STEPS):
        T = clip(1 / inverse, lower, upper)
        inverse = 1 / T - (y - log_saturation(T)) / steepness(T)
    return clip(1 / inverse, lower, upper)


@sloped(lambda T: where(T < TRIPLE_POINT, 3.571 - 2 * 7.403e-3 * T, -7.836 + 2 * 5.1102e-3 * T))
def steepness(temperature: Number) -> Number:
    """About how fast ln p_ws falls with 1/T: the latent heat over the vapour's gas constant [K].

    Fitted to the saturation formulas, 0.03 % below 100 degC: it steers a solution, whose end does
    not depend on it.
    """
    T = temperature
    ice, water = 5720.6 + T * (3.571 - 7.403e-3 * T), 7180.8 + T * (-7.836 + 5.1102e-3 * T)
    return where(T < TRIPLE_POINT, ice, water)
