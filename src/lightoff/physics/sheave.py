"""Sheaves: the fan speed they give, and the ones that give the speed wanted.

Diameters are pitch diameters.
"""

from lightoff.formula import Number, formula


@formula
def belt_fan_speed(
    motor_speed: Number, *, motor_sheave: Number, fan_sheave: Number, slip: Number
) -> Number:
    """Fan speed by the sheaves.

    N_f = N_m d_m / d_f (1 - s)

    Parameters
    ----------
    motor_speed : N_m, of the motor under load, 0 to 4000 [rpm]
    motor_sheave : d_m, pitch diameter, 0.04 to 0.6 [m]
    fan_sheave : d_f, pitch diameter, 0.04 to 0.6 [m]
    slip : s, slip and creep of the belt, 0 to 0.1 [1]

    Returns
    -------
    N_f, fan speed [rpm]

    Source: kinematics; slip of a right belt about 0.01, common practice, no source.

    >>> belt_fan_speed(1750.0, motor_sheave=0.1, fan_sheave=0.2, slip=0.02)
    857.5
    """
    return motor_speed * motor_sheave / fan_sheave * (1 - slip)


@formula
def fan_speed_at_ratio(motor_speed: Number, *, ratio: Number, slip: Number) -> Number:
    """Fan speed by the ratio of the sheaves.

    N_f = N_m r (1 - s)

    Parameters
    ----------
    motor_speed : N_m, of the motor under load, 0 to 4000 [rpm]
    ratio : r, pitch diameter of the motor's sheave over the fan's, 0.1 to 4 [1]
    slip : s, slip and creep of the belt, 0 to 0.1 [1]

    Returns
    -------
    N_f, fan speed [rpm]

    Source: kinematics; slip of a right belt about 0.01, common practice, no source.

    >>> fan_speed_at_ratio(1750.0, ratio=0.5, slip=0.02)
    857.5
    """
    return motor_speed * ratio * (1 - slip)


@formula
def belt_slip(
    fan_speed: Number, *, motor_speed: Number, motor_sheave: Number, fan_sheave: Number
) -> Number:
    """Slip and creep of the belt by both measured speeds.

    s = 1 - N_f d_f / (N_m d_m)

    Parameters
    ----------
    fan_speed : N_f, measured, 0 to 4000 [rpm]
    motor_speed : N_m, measured, 100 to 4000 [rpm]
    motor_sheave : d_m, pitch diameter, 0.04 to 0.6 [m]
    fan_sheave : d_f, pitch diameter, 0.04 to 0.6 [m]

    Returns
    -------
    s, slip; negative where a diameter or speed is wrong [1]

    Source: kinematics.

    >>> round(belt_slip(857.5, motor_speed=1750.0, motor_sheave=0.1, fan_sheave=0.2), 6)
    0.02
    """
    return 1 - fan_speed * fan_sheave / (motor_speed * motor_sheave)


@formula
def motor_sheave_for_speed(sheave: Number, *, speed: Number, wanted: Number) -> Number:
    """Motor sheave that gives a wanted fan speed, the fan's sheave staying.

    d_2 = d_1 N_2 / N_1

    Parameters
    ----------
    sheave : d_1, pitch diameter of the motor's sheave now, 0.04 to 0.6 [m]
    speed : N_1, fan speed now, 100 to 4000 [rpm]
    wanted : N_2, fan speed wanted, 100 to 4000 [rpm]

    Returns
    -------
    d_2, pitch diameter of the motor's sheave [m]

    Source: kinematics.

    >>> round(motor_sheave_for_speed(0.1, speed=800.0, wanted=880.0), 6)
    0.11
    """
    return sheave * wanted / speed


@formula
def fan_sheave_for_speed(sheave: Number, *, speed: Number, wanted: Number) -> Number:
    """Fan sheave that gives a wanted fan speed, the motor's sheave staying.

    d_2 = d_1 N_1 / N_2

    Parameters
    ----------
    sheave : d_1, pitch diameter of the fan's sheave now, 0.04 to 0.6 [m]
    speed : N_1, fan speed now, 100 to 4000 [rpm]
    wanted : N_2, fan speed wanted, 100 to 4000 [rpm]

    Returns
    -------
    d_2, pitch diameter of the fan's sheave [m]

    Source: kinematics.

    >>> round(fan_sheave_for_speed(0.22, speed=800.0, wanted=880.0), 6)
    0.2
    """
    return sheave * speed / wanted


@formula
def diameter_per_turn(closed: Number, opened: Number, *, turns: Number) -> Number:
    """How much an adjustable sheave's pitch diameter falls with each turn it is opened.

    k = (d_0 - d_n) / n

    Parameters
    ----------
    closed : d_0, largest pitch diameter, closed, 0.04 to 0.6 [m]
    opened : d_n, smallest pitch diameter, open, 0.04 to 0.6 [m]
    turns : n, from closed to open, 1 to 10 [1]

    Returns
    -------
    k, fall of the pitch diameter per turn [m]

    Source: geometry of a straight-sided groove: the diameter goes evenly with the turns.

    >>> round(diameter_per_turn(0.12, 0.1, turns=5.0), 6)
    0.004
    """
    return (closed - opened) / turns


@formula
def turns_for_diameter(sheave: Number, *, closed: Number, per_turn: Number) -> Number:
    """Turns an adjustable sheave stands open from closed for a pitch diameter.

    n = (d_0 - d) / k

    Parameters
    ----------
    sheave : d, pitch diameter wanted, 0.04 to 0.6 [m]
    closed : d_0, largest pitch diameter, closed, 0.04 to 0.6 [m]
    per_turn : k, fall of the pitch diameter per turn, 0.001 to 0.02 [m]

    Returns
    -------
    n, turns open; negative or beyond its last turn where the sheave does not reach [1]

    Source: geometry.

    >>> round(turns_for_diameter(0.11, closed=0.12, per_turn=0.004), 6)
    2.5
    """
    return (closed - sheave) / per_turn
