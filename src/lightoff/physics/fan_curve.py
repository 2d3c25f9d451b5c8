"""A fan's curve: through its declared points, or a standard shape through its design point.

Up to the first point the pressure is held, so that no more is promised than was declared; beyond
the last it falls straight on, and is gone at twice that airflow at the latest. Power is held at
both ends unless it rises beyond the last: the motor must stand what is not known.
"""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import maximum, minimum
from lightoff.physics.curve import Curve, Points, curve_through, read, slopes_of
from lightoff.physics.fan import airflow_by_fan_law, power_by_fan_law, pressure_by_fan_law

# Airflow, fan static pressure and shaft power over those of the design point, taken for the point
# of best efficiency.
# Backward-inclined, as a plenum fan has it: the published fit of a backward-curved airfoil wheel,
# read at log Euler number ratios 2, 1, 0.5, 0.25, 0, -0.2, -0.4, -0.6, -1; EnergyPlus Engineering
# Reference, fan component model. Both ends are ours, engineering judgement.
BACKWARD_INCLINED = (
    (0.0, 1.04, 0.31), (0.105, 1.094, 0.360), (0.331, 1.095, 0.525), (0.581, 1.066, 0.700),
    (0.764, 1.039, 0.830), (1.0, 1.0, 1.0), (1.175, 0.872, 1.080), (1.329, 0.703, 1.099),
    (1.453, 0.531, 1.073), (1.618, 0.262, 0.981), (1.77, 0.0, 0.85),
)  # fmt: skip
# Forward-curved: dip, peak left of the design point, power that keeps rising; engineering judgement
FORWARD_CURVED = (
    (0.0, 0.95, 0.30), (0.2, 0.90, 0.37), (0.4, 0.88, 0.50), (0.6, 0.95, 0.66), (0.8, 1.03, 0.83),
    (1.0, 1.0, 1.0), (1.2, 0.92, 1.20), (1.4, 0.77, 1.42), (1.6, 0.56, 1.66), (1.8, 0.30, 1.90),
    (2.0, 0.0, 2.15),
)  # fmt: skip
SHAPE_SPREAD = 0.25  # [1] of the way from the design point, in shares; engineering judgement

Shape = tuple[tuple[float, float, float], ...]


def pressure_curve(points: Points) -> Curve:
    """The curve of pressure over airflow."""
    (airflow, pressure), slope = points[-1], slopes_of(points)[-1]
    return curve_through(points, minimum(slope, -pressure / airflow))


def power_curve(points: Points) -> Curve:
    """The curve of shaft power over airflow."""
    return curve_through(points, maximum(slopes_of(points)[-1], 0.0))


def standard_pressures(shape: Shape, *, airflow: Number, pressure: Number) -> Points:
    """Points of a standard shape through a design point: airflow and pressure."""
    return tuple((x * airflow, p * pressure) for x, p, _ in shape)


def standard_powers(shape: Shape, *, airflow: Number, power: Number) -> Points:
    """Points of a standard shape through a design point: airflow and shaft power."""
    return tuple((x * airflow, w * power) for x, _, w in shape)


def pressures_turning(points: Points, *, speed_ratio: Number, density_ratio: Number) -> Points:
    """The same points at another speed and density, moved by the fan laws."""
    n, r = speed_ratio, density_ratio
    return tuple(
        (
            airflow_by_fan_law(airflow, speed_ratio=n, size_ratio=1.0),
            pressure_by_fan_law(pressure, speed_ratio=n, size_ratio=1.0, density_ratio=r),
        )
        for airflow, pressure in points
    )


def powers_turning(points: Points, *, speed_ratio: Number, density_ratio: Number) -> Points:
    """The same points of power at another speed and density, moved by the fan laws."""
    n, r = speed_ratio, density_ratio
    return tuple(
        (
            airflow_by_fan_law(airflow, speed_ratio=n, size_ratio=1.0),
            power_by_fan_law(power, speed_ratio=n, size_ratio=1.0, density_ratio=r),
        )
        for airflow, power in points
    )


@formula
def fan_pressure(airflow: Number, points: Points) -> Number:
    """Pressure a fan gives at an airflow, by the curve through its declared points.

    p = table(V)

    Parameters
    ----------
    airflow : V, through the fan, 0 to 50 [m3/s]
    points : C, of each declared point its airflow and pressure [m3/s, Pa]

    Returns
    -------
    p, fan pressure [Pa]

    Source: monotone cubic of Fritsch and Butland 1984; beyond its ends engineering judgement.

    >>> fan_pressure(3.0, ((2.0, 800.0), (4.0, 600.0)))
    700.0
    """
    return read(pressure_curve(points), airflow)


@formula
def fan_power(airflow: Number, points: Points) -> Number:
    """Shaft power a fan takes at an airflow, by the curve through its declared points.

    P = table(V)

    Parameters
    ----------
    airflow : V, through the fan, 0 to 50 [m3/s]
    points : C, of each declared point its airflow and shaft power [m3/s, W]

    Returns
    -------
    P, shaft power [W]

    Source: monotone cubic of Fritsch and Butland 1984; beyond its ends engineering judgement.

    >>> fan_power(3.0, ((2.0, 4000.0), (4.0, 5000.0)))
    4500.0
    """
    return read(power_curve(points), airflow)


@formula
def shape_spread(airflow: Number, design_airflow: Number) -> Number:
    """How far a standard shape may be off, in shares of the design pressure or power.

    u = 0.25 abs(V / V_d - 1)

    Parameters
    ----------
    airflow : V, through the fan, 0 to 50 [m3/s]
    design_airflow : V_d, that of the point the shape was put through, 0.05 to 50 [m3/s]

    Returns
    -------
    u, standard uncertainty over the design value [1]

    Source: engineering judgement: nothing at the design point, 5 % a fifth away from it.

    >>> round(shape_spread(4.8, 4.0), 3)
    0.05
    """
    return SHAPE_SPREAD * abs(airflow / design_airflow - 1)
