"""Ducts and what stands in the airstream: their size, and the pressure they take."""

from collections.abc import Mapping
from math import pi

from lightoff.formula import Number, formula
from lightoff.formula.elementary import maximum
from lightoff.physics.constants import FOOT

SHORTEST_EFFECTIVE = 2.5  # [1] diameters; AMCA 201 (from memory)
EFFECTIVE_PER_SPEED = 60 / (1000 * FOOT)  # [s/m] one diameter per 1000 fpm; AMCA 201 (from memory)


@formula
def rectangular_area(width: Number, height: Number) -> Number:
    """Inside area of a rectangular duct.

    A = a b

    Parameters
    ----------
    width : a, inside, lining taken off, 0.05 to 5 [m]
    height : b, inside, lining taken off, 0.05 to 5 [m]

    Returns
    -------
    A, area [m2]

    Source: geometry.

    >>> rectangular_area(0.5, 0.4)
    0.2
    """
    return width * height


@formula
def round_area(diameter: Number) -> Number:
    """Inside area of a round duct.

    A = 0.785398 D^2

    Parameters
    ----------
    diameter : D, inside, lining taken off, 0.05 to 5 [m]

    Returns
    -------
    A, area [m2]

    Source: geometry.

    >>> round(round_area(0.5), 5)
    0.19635
    """
    return pi / 4 * diameter**2


@formula
def area_diameter(area: Number) -> Number:
    """Diameter of the circle of the same area: what distances along a duct are counted in.

    D = (1.27324 A)^0.5

    Parameters
    ----------
    area : A, inside area, 0.002 to 25 [m2]

    Returns
    -------
    D, diameter [m]

    Source: geometry; AMCA 203 counts so (from memory).

    >>> round(area_diameter(0.19635), 4)
    0.5
    """
    return (4 / pi * area) ** 0.5


@formula
def friction_diameter(width: Number, height: Number) -> Number:
    """Diameter of the round duct that takes the same pressure at the same airflow.

    D = 1.3 (a b)^0.625 / (a + b)^0.25

    Parameters
    ----------
    width : a, inside, 0.05 to 5 [m]
    height : b, inside, 0.05 to 5 [m]

    Returns
    -------
    D, diameter [m]

    Source: Huebscher 1948; ASHRAE Fundamentals, duct design (from memory).

    >>> round(friction_diameter(0.5, 0.5), 4)
    0.5466
    """
    return 1.3 * (width * height) ** 0.625 / (width + height) ** 0.25


@formula
def hydraulic_diameter(width: Number, height: Number) -> Number:
    """Four times the area over the perimeter of a rectangular duct.

    D = 2 a b / (a + b)

    Parameters
    ----------
    width : a, inside, 0.05 to 5 [m]
    height : b, inside, 0.05 to 5 [m]

    Returns
    -------
    D, diameter [m]

    Source: definition; US EPA Method 1 counts distances in it.

    >>> hydraulic_diameter(0.6, 0.3)
    0.4
    """
    return 2 * width * height / (width + height)


@formula
def velocity_pressure(velocity: Number, density: Number) -> Number:
    """Pressure that stopping the air would give.

    p_v = rho V^2 / 2

    Parameters
    ----------
    velocity : V, air velocity, 0 to 60 [m/s]
    density : rho, air density, 0.5 to 1.7 [kg/m3]

    Returns
    -------
    p_v, velocity pressure [Pa]

    Source: Bernoulli.

    >>> velocity_pressure(10.0, 1.2)
    60.0
    """
    return density * velocity**2 / 2


@formula
def component_drop(
    airflow: Number,
    *,
    rated_airflow: Number,
    rated_drop: Number,
    exponent: Number,
    density_ratio: Number,
) -> Number:
    """Pressure a part of the airstream takes, from what it takes at one airflow.

    Delta_p = Delta_p_r (V / V_r)^n r

    Parameters
    ----------
    airflow : V, through the part, as it flows there, 0 to 50 [m3/s]
    rated_airflow : V_r, that of the rated drop, 0.05 to 50 [m3/s]
    rated_drop : Delta_p_r, at the rated airflow and density, 0 to 5000 [Pa]
    exponent : n, 2 for fittings, about 1.9 for a duct, down to 1 for a fine filter, 1 to 2 [1]
    density_ratio : r, air density in the part over that of the rating, 0.4 to 2 [1]

    Returns
    -------
    Delta_p, pressure drop [Pa]

    Source: ASHRAE Fundamentals, duct design (from memory): square law, exponents as found.

    >>> round(component_drop(3.0, rated_airflow=2.0, rated_drop=100.0, exponent=2.0,
    ...     density_ratio=0.8), 6)
    180.0
    """
    return rated_drop * (airflow / rated_airflow) ** exponent * density_ratio


@formula
def chain_drop(drops: Mapping[str, Number]) -> Number:
    """Pressure that parts one after the other take together.

    Delta_p = the sum of Delta_p_i

    Parameters
    ----------
    drops : Delta_p, of each part by name [Pa]

    Returns
    -------
    Delta_p, pressure drop [Pa]

    Source: definition.

    >>> chain_drop({"filters": 60.0, "furnace": 75.0})
    135.0
    """
    return sum(drops.values())


@formula
def effective_duct_length(velocity: Number, diameter: Number) -> Number:
    """Straight duct at a fan's outlet after which the velocity is even.

    L = max(0.19685 V, 2.5) D

    Parameters
    ----------
    velocity : V, mean velocity in the duct, 0 to 60 [m/s]
    diameter : D, of the circle of the same area, 0.05 to 5 [m]

    Returns
    -------
    L, 100 % effective duct length [m]

    Source: AMCA 201: 2.5 diameters up to 2500 fpm, one more for each 1000 fpm (from memory).

    >>> round(effective_duct_length(17.78, 1.0), 6)
    3.5
    """
    return maximum(EFFECTIVE_PER_SPEED * velocity, SHORTEST_EFFECTIVE) * diameter
