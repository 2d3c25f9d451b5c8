"""Fans: how airflow, pressure and power move with speed, density and size, and what it costs."""

from math import pi

from lightoff.formula import Number, formula


@formula
def airflow_by_fan_law(airflow: Number, *, speed_ratio: Number, size_ratio: Number) -> Number:
    """Airflow at the same point of rating, the fan turning at another speed or built larger.

    V_2 = V_1 n d^3

    Parameters
    ----------
    airflow : V_1, before, 0 to 50 [m3/s]
    speed_ratio : n, new speed over old speed, 0 to 3 [1]
    size_ratio : d, new wheel diameter over old, 0.3 to 3 [1]

    Returns
    -------
    V_2, airflow afterwards [m3/s]

    Source: AMCA 201 and ASHRAE HVAC Systems and Equipment, fan laws (from memory).

    >>> round(airflow_by_fan_law(4.0, speed_ratio=1.1, size_ratio=1.0), 6)
    4.4
    """
    return airflow * speed_ratio * size_ratio**3


@formula
def pressure_by_fan_law(
    pressure: Number, *, speed_ratio: Number, size_ratio: Number, density_ratio: Number
) -> Number:
    """Fan pressure at the same point of rating, with another speed, air density or size.

    p_2 = p_1 n^2 d^2 r

    Parameters
    ----------
    pressure : p_1, before, static or total, 0 to 5000 [Pa]
    speed_ratio : n, new speed over old speed, 0 to 3 [1]
    size_ratio : d, new wheel diameter over old, 0.3 to 3 [1]
    density_ratio : r, new air density at the fan over old, 0.4 to 2 [1]

    Returns
    -------
    p_2, fan pressure afterwards [Pa]

    Source: AMCA 201 and ASHRAE HVAC Systems and Equipment, fan laws (from memory).

    >>> round(pressure_by_fan_law(500.0, speed_ratio=1.1, size_ratio=1.0, density_ratio=1.0), 6)
    605.0
    """
    return pressure * speed_ratio**2 * size_ratio**2 * density_ratio


@formula
def power_by_fan_law(
    power: Number, *, speed_ratio: Number, size_ratio: Number, density_ratio: Number
) -> Number:
    """Shaft power at the same point of rating, with another speed, air density or size.

    P_2 = P_1 n^3 d^5 r

    Parameters
    ----------
    power : P_1, before, 0 to 200 000 [W]
    speed_ratio : n, new speed over old speed, 0 to 3 [1]
    size_ratio : d, new wheel diameter over old, 0.3 to 3 [1]
    density_ratio : r, new air density at the fan over old, 0.4 to 2 [1]

    Returns
    -------
    P_2, shaft power afterwards [W]

    Source: AMCA 201 and ASHRAE HVAC Systems and Equipment, fan laws (from memory).

    >>> round(power_by_fan_law(1000.0, speed_ratio=1.1, size_ratio=1.0, density_ratio=1.0), 6)
    1331.0
    """
    return power * speed_ratio**3 * size_ratio**5 * density_ratio


@formula
def speed_ratio(new: Number, old: Number) -> Number:
    """How much faster the fan turns, by speeds, frequencies, motor sheaves or airflows.

    n = N_2 / N_1

    Parameters
    ----------
    new : N_2, after the change, 0 to 6000 [rpm or Hz or m or m3/s]
    old : N_1, before the change, 0.01 to 6000 [rpm or Hz or m or m3/s]

    Returns
    -------
    n, new speed over old speed [1]

    Source: definition; airflow goes with speed in a fixed system.

    >>> speed_ratio(1100.0, 1000.0)
    1.1
    """
    return new / old


@formula
def speed_after(speed: Number, ratio: Number) -> Number:
    """Fan speed after a change of sheave or frequency.

    N_2 = n N_1

    Parameters
    ----------
    speed : N_1, before, 0 to 6000 [rpm]
    ratio : n, new speed over old speed, 0 to 3 [1]

    Returns
    -------
    N_2, afterwards [rpm]

    Source: definition.

    >>> speed_after(1000.0, 1.1)
    1100.0
    """
    return ratio * speed


@formula
def density_ratio(density: Number, reference: Number) -> Number:
    """Air density over that of the curve or the catalogue.

    r = rho / rho_r

    Parameters
    ----------
    density : rho, of the air at the fan, 0.5 to 1.7 [kg/m3]
    reference : rho_r, what the curve or catalogue was stated for, 0.5 to 1.7 [kg/m3]

    Returns
    -------
    r, density ratio [1]

    Source: definition.

    >>> density_ratio(0.9, 1.2)
    0.75
    """
    return density / reference


@formula
def catalogue_pressure(pressure: Number, density_ratio: Number) -> Number:
    """Pressure to look up in a catalogue of standard air for one that is wanted in thinner air.

    p_c = p / r

    Parameters
    ----------
    pressure : p, wanted at the actual density, 0 to 5000 [Pa]
    density_ratio : r, actual air density over the catalogue's, 0.4 to 2 [1]

    Returns
    -------
    p_c, pressure at the catalogue's density [Pa]

    Source: the fan law for density turned round.

    >>> catalogue_pressure(300.0, 0.75)
    400.0
    """
    return pressure / density_ratio


@formula
def air_power(airflow: Number, pressure: Number) -> Number:
    """Power given to the air, taken as incompressible: right to 0.5 % up to 2.5 kPa.

    P_a = V p

    Parameters
    ----------
    airflow : V, through the fan, 0 to 50 [m3/s]
    pressure : p, fan pressure: total for total efficiency, static for static, 0 to 5000 [Pa]

    Returns
    -------
    P_a, air power [W]

    Source: AMCA 210 and ISO 5801, without the compressibility factor.

    >>> air_power(4.0, 500.0)
    2000.0
    """
    return airflow * pressure


@formula
def shaft_power(airflow: Number, pressure: Number, *, efficiency: Number) -> Number:
    """Power at the fan's shaft; the motor gives the belt's loss on top of it.

    P = P_a / eta

    Parameters
    ----------
    airflow : V, through the fan, 0 to 50 [m3/s]
    pressure : p, fan pressure: total for total efficiency, static for static, 0 to 5000 [Pa]
    efficiency : eta, fan efficiency, 0.05 to 0.95 [1]

    Returns
    -------
    P, shaft power [W]

    Source: AMCA 210 and ISO 5801.

    >>> shaft_power(4.0, 500.0, efficiency=0.625)
    3200.0
    """
    return air_power(airflow, pressure) / efficiency


@formula
def fan_efficiency(airflow: Number, pressure: Number, *, power: Number) -> Number:
    """Air power over shaft power.

    eta = P_a / P

    Parameters
    ----------
    airflow : V, through the fan, 0 to 50 [m3/s]
    pressure : p, fan pressure: total for total efficiency, static for static, 0 to 5000 [Pa]
    power : P, at the fan's shaft, 10 to 200 000 [W]

    Returns
    -------
    eta, fan efficiency [1]

    Source: AMCA 210 and ISO 5801.

    >>> fan_efficiency(4.0, 500.0, power=3200.0)
    0.625
    """
    return air_power(airflow, pressure) / power


@formula
def tip_speed(wheel: Number, speed: Number) -> Number:
    """Speed of the wheel's rim.

    v = 3.14159 D N / 60

    Parameters
    ----------
    wheel : D, wheel diameter, 0.1 to 2 [m]
    speed : N, fan speed, 0 to 6000 [rpm]

    Returns
    -------
    v, tip speed [m/s]

    Source: kinematics.

    >>> round(tip_speed(0.5, 1200.0), 3)
    31.416
    """
    return pi * wheel * speed / 60
