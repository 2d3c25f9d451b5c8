"""Airflow from a traverse of a duct: what its readings say."""

from collections.abc import Mapping

from lightoff.formula import Number, formula
from lightoff.formula.elementary import maximum, where


@formula
def pitot_velocity(velocity_pressure: Number, density: Number) -> Number:
    """Air velocity from velocity pressure; a reading below zero, air turning back, counts as none.

    V = (2 max(p_v, 0) / rho)^0.5

    Parameters
    ----------
    velocity_pressure : p_v, total minus static pressure, -500 to 2500 [Pa]
    density : rho, density of the air at the plane, 0.6 to 1.6 [kg/m3]

    Returns
    -------
    V, velocity [m/s]

    Source: Bernoulli; ASHRAE Standard 111, zero for a negative reading common practice, no source.

    >>> round(pitot_velocity(60.2, 1.204), 6)
    10.0
    """
    return (2 * maximum(velocity_pressure, 0.0) / density) ** 0.5


@formula
def mean_velocity(velocities: Mapping[str, Number]) -> Number:
    """Mean of the velocities: never the velocity of the mean pressure, which is too high.

    V_m = the sum of V_i / n

    Parameters
    ----------
    velocities : V, at the points of a traverse, by point [m/s]

    Returns
    -------
    V_m, mean velocity [m/s]

    Source: ISO 3966; ASHRAE Standard 111.

    >>> mean_velocity({"1": 4.0, "2": 6.0})
    5.0
    """
    return sum(velocities.values()) / len(velocities)


@formula
def duct_airflow(velocity: Number, area: Number) -> Number:
    """Airflow through a plane.

    V = v A

    Parameters
    ----------
    velocity : v, mean velocity, 0 to 60 [m/s]
    area : A, inside area at the plane, 0.002 to 25 [m2]

    Returns
    -------
    V, airflow as it flows [m3/s]

    Source: definition.

    >>> duct_airflow(5.0, 0.4)
    2.0
    """
    return velocity * area


@formula
def velocity_spread(velocities: Mapping[str, Number]) -> Number:
    """How uneven the air is: standard deviation of the velocities over their mean.

    s = (the sum of (V_i - V_m)^2 / (n - 1))^0.5 / V_m

    Parameters
    ----------
    velocities : V, at the points of a traverse, by point, two or more [m/s]

    Returns
    -------
    s, relative standard deviation [1]

    Source: JCGM 100:2008, 4.2.2.

    >>> round(velocity_spread({"1": 4.0, "2": 6.0}), 4)
    0.2828
    """
    mean = mean_velocity(velocities)
    squares = sum((each - mean) ** 2 for each in velocities.values())
    return (squares / (len(velocities) - 1)) ** 0.5 / mean


@formula
def spread_of_mean(spread: Number, points: Number) -> Number:
    """Relative standard uncertainty of a traverse's mean from the scatter of its points alone.

    u = s / n^0.5

    Parameters
    ----------
    spread : s, relative standard deviation of the velocities, 0 to 3 [1]
    points : n, how many, 2 to 200 [1]

    Returns
    -------
    u, relative standard uncertainty [1]

    Source: JCGM 100:2008, 4.2.3; points laid out by a rule are better than so many at random.

    >>> spread_of_mean(0.2, 25.0)
    0.04
    """
    return spread / points**0.5


@formula
def share_above_tenth(pressures: Mapping[str, Number]) -> Number:
    """Share of velocity pressures above a tenth of the largest: how good the plane is.

    s = the number of p_i above max(p_1, p_2, ...) / 10, over n

    Parameters
    ----------
    pressures : p, velocity pressures, by point [Pa]

    Returns
    -------
    s, share of the points [1]

    Source: AMCA 203 and ASHRAE Standard 111: three quarters or more (from memory).

    >>> share_above_tenth({"1": 100.0, "2": 50.0, "3": 12.0, "4": 9.0})
    0.75
    """
    largest: Number = 0.0
    for each in pressures.values():
        largest = maximum(largest, each)
    above = sum(where(each > 0.1 * largest, 1.0, 0.0) for each in pressures.values())
    return above / len(pressures)


@formula
def diameters_along(length: Number, diameter: Number) -> Number:
    """Length of straight duct in diameters.

    n = L / D

    Parameters
    ----------
    length : L, straight duct from the plane to the next disturbance, 0 to 100 [m]
    diameter : D, of the circle of the duct's area, 0.05 to 5 [m]

    Returns
    -------
    n, diameters [1]

    Source: definition.

    >>> diameters_along(3.0, 0.5)
    6.0
    """
    return length / diameter
