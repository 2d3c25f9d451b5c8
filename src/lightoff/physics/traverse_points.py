"""Where the points of a duct traverse lie, as shares of the inside width or diameter."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import ceil, clip, where
from lightoff.physics.constants import FOOT

# ISO 3966 and ASHRAE Standard 111 (from memory; a 1/7 power law comes out right to 0.4 %)
LOG_TCHEBYCHEFF = {
    5: (0.074, 0.288, 0.5, 0.712, 0.926),
    6: (0.061, 0.235, 0.437, 0.563, 0.765, 0.939),
    7: (0.053, 0.203, 0.366, 0.5, 0.634, 0.797, 0.947),
}
LOG_LINEAR = {
    4: (0.043, 0.290, 0.710, 0.957),
    6: (0.032, 0.135, 0.321, 0.679, 0.865, 0.968),
    8: (0.021, 0.117, 0.184, 0.345, 0.655, 0.816, 0.883, 0.979),
    10: (0.019, 0.077, 0.153, 0.217, 0.361, 0.639, 0.783, 0.847, 0.923, 0.981),
}
FEWEST_RECTANGULAR = 25  # points; ISO 3966 and ASHRAE Standard 111 (from memory)

# lengths of the rules, with a micrometre's slack, so that 30 in. typed is not below 30 in.
_SLACK = 1e-6  # [m]
THIRTY_INCHES = 2.5 * FOOT - _SLACK
THIRTY_SIX_INCHES = 3 * FOOT + _SLACK
SMALL_ROUND = FOOT - _SLACK
LARGEST_SQUARE = FOOT / 2 + _SLACK


@formula
def log_tchebycheff_points(side: Number) -> Number:
    """Points along a side of a rectangular duct, by the log-Tchebycheff rule.

    n = 5 if a < 0.761999 else 7 if a > 0.914401 else 6

    Parameters
    ----------
    side : a, inside, 0.05 to 5 [m]

    Returns
    -------
    n, points along that side [1]

    Source: ISO 3966 and ASHRAE Standard 111: under 30 in. 5, to 36 in. 6, above 7 (from memory).

    >>> log_tchebycheff_points(0.6)
    5.0
    """
    return where(side < THIRTY_INCHES, 5.0, where(side > THIRTY_SIX_INCHES, 7.0, 6.0))


@formula
def diameter_points(diameter: Number) -> Number:
    """Points along each diameter of a round duct.

    n = 6 if D < 0.304799 else 10

    Parameters
    ----------
    diameter : D, inside, 0.05 to 5 [m]

    Returns
    -------
    n, points along each diameter [1]

    Source: common practice, no source: under 12 in. 6, else 10.

    >>> diameter_points(0.5)
    10.0
    """
    return where(diameter < SMALL_ROUND, 6.0, 10.0)


@formula
def equal_area_points(side: Number) -> Number:
    """Points along a side of a rectangular duct cut into equal rectangles.

    n = min(max(ceil(a / 0.152401), 4), 8)

    Parameters
    ----------
    side : a, inside, 0.05 to 5 [m]

    Returns
    -------
    n, points along that side [1]

    Source: common practice, no source: none wider than 6 in., 16 points at least, 64 at most.

    >>> equal_area_points(0.9)
    6.0
    """
    return clip(ceil(side / LARGEST_SQUARE), 4.0, 8.0)


@formula
def strip_position(number: Number, points: Number) -> Number:
    """Where a point stands in the middle of one of as many equal strips.

    x = (2 i - 1) / (2 n)

    Parameters
    ----------
    number : i, of the point, counted from one wall, 1 to 20 [1]
    points : n, along that side, 2 to 20 [1]

    Returns
    -------
    x, distance from the wall over the side [1]

    Source: geometry; US EPA Method 1 for rectangular ducts.

    >>> strip_position(1.0, 4.0)
    0.125
    """
    return (2 * number - 1) / (2 * points)


@formula
def area_beyond(number: Number, points: Number) -> Number:
    """Share of a round duct's area that is nearer to the middle than a point of equal areas.

    u = 1 - (2 i - 1) / n

    Parameters
    ----------
    number : i, of the point, counted from one wall, 1 to 20 [1]
    points : n, along the diameter, 2 to 20 [1]

    Returns
    -------
    u, share of the area, negative beyond the middle [1]

    Source: geometry.

    >>> area_beyond(1.0, 4.0)
    0.75
    """
    return 1 - (2 * number - 1) / points


@formula
def ring_position(number: Number, points: Number) -> Number:
    """Where along a diameter a point stands in the middle, by area, of a ring of equal area.

    x = (1 - abs(u)^0.5) / 2 if u > 0 else (1 + abs(u)^0.5) / 2

    Parameters
    ----------
    number : i, of the point, counted from one wall, 1 to 20 [1]
    points : n, along the diameter, 2 to 20 [1]

    Returns
    -------
    x, distance from the wall over the diameter [1]

    Source: geometry; US EPA Method 1, table 1-2.

    >>> round(ring_position(1.0, 4.0), 3), round(ring_position(4.0, 4.0), 3)
    (0.067, 0.933)
    """
    inner = area_beyond(number, points)
    radius = abs(inner) ** 0.5
    return where(inner > 0, (1 - radius) / 2, (1 + radius) / 2)


@formula
def probe_depth(position: Number, size: Number) -> Number:
    """How far from the wall a point lies.

    y = x a

    Parameters
    ----------
    position : x, distance from the wall over width, height or diameter, 0 to 1 [1]
    size : a, inside width, height or diameter, 0.05 to 5 [m]

    Returns
    -------
    y, distance from the inside of the wall [m]

    Source: definition.

    >>> probe_depth(0.25, 0.8)
    0.2
    """
    return position * size


@formula
def points_in_all(across: Number, lines: Number) -> Number:
    """Points of a traverse.

    N = n m

    Parameters
    ----------
    across : n, points along each line, 2 to 20 [1]
    lines : m, how many lines: those down a rectangle, diameters of a circle, 1 to 20 [1]

    Returns
    -------
    N, points in all [1]

    Source: definition.

    >>> points_in_all(6.0, 5.0)
    30.0
    """
    return across * lines
