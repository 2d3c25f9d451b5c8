"""V-belts: length, wrap, speed, and the force that shows the tension.

Diameters are pitch diameters. `motor` and `fan` name the two sheaves, whichever is larger.
"""

from math import pi

from lightoff.formula import Number, formula
from lightoff.formula.elementary import asin, clip, cos, maximum

DEFLECTION = 64  # of the span: 1/64 in. for each inch; common practice, no source
STEPS = 30  # at worst, a belt barely long enough, each step leaves a third of the error
_LEAST = 1e-9  # a distance and a slope that are as good as none, but may be divided by


@formula
def belt_speed(sheave: Number, speed: Number) -> Number:
    """Speed of the belt.

    v = 3.14159 d N / 60

    Parameters
    ----------
    sheave : d, pitch diameter of one sheave, 0.04 to 0.6 [m]
    speed : N, of that sheave, 0 to 4000 [rpm]

    Returns
    -------
    v, belt speed [m/s]

    Source: kinematics.

    >>> round(belt_speed(0.1, 1800.0), 3)
    9.425
    """
    return pi * sheave * speed / 60


@formula
def belt_lean(*, motor_sheave: Number, fan_sheave: Number, centres: Number) -> Number:
    """Angle of a free span to the line between the shafts.

    alpha = asin(min(max((d_f - d_m) / (2 C), -1), 1))

    Parameters
    ----------
    motor_sheave : d_m, pitch diameter, 0.04 to 0.6 [m]
    fan_sheave : d_f, pitch diameter, 0.04 to 0.6 [m]
    centres : C, distance of the shafts' centres, 0.1 to 3 [m]

    Returns
    -------
    alpha, angle, positive where the fan's sheave is the larger one [rad]

    Source: geometry.

    >>> round(belt_lean(motor_sheave=0.1, fan_sheave=0.2, centres=0.5), 4)
    0.1002
    """
    return asin(clip((fan_sheave - motor_sheave) / (2 * centres), -1.0, 1.0))


@formula
def belt_length(*, motor_sheave: Number, fan_sheave: Number, centres: Number) -> Number:
    """Pitch length of an open belt round two sheaves.

    L = 2 C cos(alpha) + 1.5708 (d_m + d_f) + alpha (d_f - d_m)

    Parameters
    ----------
    motor_sheave : d_m, pitch diameter, 0.04 to 0.6 [m]
    fan_sheave : d_f, pitch diameter, 0.04 to 0.6 [m]
    centres : C, distance of the shafts' centres, 0.1 to 3 [m]

    Returns
    -------
    L, pitch length; a belt's number is often its outside or inside length [m]

    Source: geometry; Machinery's Handbook, open belt.

    >>> round(belt_length(motor_sheave=0.1, fan_sheave=0.2, centres=0.5), 4)
    1.4762
    """
    lean = belt_lean(motor_sheave=motor_sheave, fan_sheave=fan_sheave, centres=centres)
    round_both = pi / 2 * (motor_sheave + fan_sheave)
    return 2 * centres * cos(lean) + round_both + lean * (fan_sheave - motor_sheave)


@formula
def belt_length_in_short(*, motor_sheave: Number, fan_sheave: Number, centres: Number) -> Number:
    """Pitch length of an open belt by the shop's short formula.

    L = 2 C + 1.5708 (d_m + d_f) + (d_f - d_m)^2 / (4 C)

    Parameters
    ----------
    motor_sheave : d_m, pitch diameter, 0.04 to 0.6 [m]
    fan_sheave : d_f, pitch diameter, 0.04 to 0.6 [m]
    centres : C, distance of the shafts' centres, 0.1 to 3 [m]

    Returns
    -------
    L, pitch length, right to 0.01 % where the sheaves stand well apart [m]

    Source: Machinery's Handbook, open belt: a series cut after one term.

    >>> round(belt_length_in_short(motor_sheave=0.1, fan_sheave=0.2, centres=0.5), 4)
    1.4762
    """
    round_both = pi / 2 * (motor_sheave + fan_sheave)
    return 2 * centres + round_both + (fan_sheave - motor_sheave) ** 2 / (4 * centres)


@formula
def centres_of_length(length: Number, *, motor_sheave: Number, fan_sheave: Number) -> Number:
    """Distance of the shafts at which a belt of this length is right.

    L = L(C), solved for C

    Parameters
    ----------
    length : L, pitch length of the belt, 0.3 to 10 [m]
    motor_sheave : d_m, pitch diameter, 0.04 to 0.6 [m]
    fan_sheave : d_f, pitch diameter, 0.04 to 0.6 [m]

    Returns
    -------
    C, distance; of a belt too short to go round both, half the difference of the sheaves [m]

    Source: geometry, by Newton's method.

    >>> round(centres_of_length(1.4762, motor_sheave=0.1, fan_sheave=0.2), 4)
    0.5
    """
    half = maximum(abs(fan_sheave - motor_sheave) / 2, _LEAST * motor_sheave)
    # too far apart to begin with; the length bends upwards, so every step stays on that side
    centres = maximum(length / 2, half)
    for _ in range(STEPS):
        sheaves = {"motor_sheave": motor_sheave, "fan_sheave": fan_sheave, "centres": centres}
        slope = 2 * cos(belt_lean(**sheaves))
        centres = maximum(
            centres - (belt_length(**sheaves) - length) / maximum(slope, _LEAST), half
        )
    return centres


@formula
def wrap_angle(lean: Number) -> Number:
    """Arc of the belt on the motor's sheave.

    beta = 3.14159 - 2 alpha

    Parameters
    ----------
    lean : alpha, angle of a span to the line between the shafts, -1.6 to 1.6 [rad]

    Returns
    -------
    beta, wrap on the motor's sheave [rad]

    Source: geometry.

    >>> round(wrap_angle(0.1), 4)
    2.9416
    """
    return pi - 2 * lean


@formula
def fan_wrap_angle(lean: Number) -> Number:
    """Arc of the belt on the fan's sheave.

    beta = 3.14159 + 2 alpha

    Parameters
    ----------
    lean : alpha, angle of a span to the line between the shafts, -1.6 to 1.6 [rad]

    Returns
    -------
    beta, wrap on the fan's sheave [rad]

    Source: geometry.

    >>> round(fan_wrap_angle(0.1), 4)
    3.3416
    """
    return pi + 2 * lean


@formula
def degrees(angle: Number) -> Number:
    """An angle as a protractor shows it.

    a = 57.2958 beta

    Parameters
    ----------
    angle : beta, in radians, -7 to 7 [rad]

    Returns
    -------
    a, in degrees [1]

    Source: definition.

    >>> round(degrees(pi), 6)
    180.0
    """
    return 180 / pi * angle


@formula
def belt_span(*, motor_sheave: Number, fan_sheave: Number, centres: Number) -> Number:
    """Free length of belt between the sheaves.

    s = C cos(alpha)

    Parameters
    ----------
    motor_sheave : d_m, pitch diameter, 0.04 to 0.6 [m]
    fan_sheave : d_f, pitch diameter, 0.04 to 0.6 [m]
    centres : C, distance of the shafts' centres, 0.1 to 3 [m]

    Returns
    -------
    s, span [m]

    Source: geometry.

    >>> round(belt_span(motor_sheave=0.1, fan_sheave=0.2, centres=0.5), 4)
    0.4975
    """
    return centres * cos(
        belt_lean(motor_sheave=motor_sheave, fan_sheave=fan_sheave, centres=centres)
    )


@formula
def belt_deflection(span: Number) -> Number:
    """How far a belt is pushed in at mid-span when its force is read.

    q = s / 64

    Parameters
    ----------
    span : s, free length of belt, 0.05 to 3 [m]

    Returns
    -------
    q, deflection [m]

    Source: common practice, no source: 1/64 in. for each inch of span.

    >>> belt_deflection(0.64)
    0.01
    """
    return span / DEFLECTION


@formula
def belt_tension(force: Number, *, deflection: Number, span: Number) -> Number:
    """Pull in a belt's span by the force that pushes it in at the middle.

    T = F s / (4 q)

    Parameters
    ----------
    force : F, across the belt at mid-span, 0 to 200 [N]
    deflection : q, how far it gives way, 0.001 to 0.05 [m]
    span : s, free length of belt, 0.05 to 3 [m]

    Returns
    -------
    T, static pull, the belt's own stiffness left aside [N]

    Source: statics of a string, for small deflections.

    >>> belt_tension(20.0, deflection=0.01, span=0.64)
    320.0
    """
    return force * span / (4 * deflection)
