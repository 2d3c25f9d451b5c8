"""Unbalance, motor power from amps, and the derating of a motor on unbalanced volts."""

from lightoff.physics.elementary import Number, interpolate, maximum

# percent of voltage unbalance and the share of rated power left; NEMA MG 1, derating curve
# (from memory; a drawn curve, two digits; it ends at 5 %)
DERATING = ((0.01, 1.0), (0.02, 0.95), (0.03, 0.89), (0.04, 0.83), (0.05, 0.75))


def unbalance(a: Number, b: Number, c: Number) -> Number:
    """Largest deviation from the mean, over the mean.

    Parameters
    ----------
    a, b, c : the three volts or amps [V or A]

    Returns
    -------
    unbalance [1]

    Source: NEMA MG 1, 12.45 and 14.36.

    >>> round(unbalance(462.0, 463.0, 455.0) * 100, 2)
    1.09
    """
    mean = (a + b + c) / 3
    return maximum(abs(a - mean), maximum(abs(b - mean), abs(c - mean))) / mean


def unbalance_derating(voltage_unbalance: Number) -> Number:
    """Share of its rated power a motor may give on unbalanced volts.

    Parameters
    ----------
    voltage_unbalance : 0 to 0.05 [1]

    Returns
    -------
    derating factor [1]

    Source: NEMA MG 1, derating curve (from memory).

    >>> round(unbalance_derating(0.02), 2)
    0.95
    """
    return interpolate(voltage_unbalance, DERATING)


def motor_input(
    *,
    volts: Number,
    amps: Number,
    phases: int,
    rated_amps: Number,
    rated_volts: Number,
    power_factor: Number,
) -> Number:
    """Electric power of a motor from its amps, its reactive current taken as that at full load.

    P = n^0.5 V (I^2 - (I0 sin(phi) V/V0)^2)^0.5, n = 3 for three phases

    Parameters
    ----------
    volts, amps : at the terminals, line to line [V, A]
    phases : 1 or 3
    rated_amps, rated_volts, power_factor : the plate's, at full load [A, V, 1]

    Returns
    -------
    electric power [W]; zero where the amps are below the reactive current

    Source: phasor sum with a constant magnetising current, common practice, no source; within
    about 10 % from half load upwards.

    >>> round(motor_input(volts=460.0, amps=18.5, phases=3, rated_amps=18.5,
    ...     rated_volts=460.0, power_factor=0.83))
    12234
    """
    reactive = rated_amps * (1 - power_factor**2) ** 0.5 * volts / rated_volts
    active = maximum(amps**2 - reactive**2, 0.0) ** 0.5
    return phases**0.5 * volts * active
