"""Frequency drives: what a motor gets and may give away from its plate's frequency."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import minimum


@formula
def flux(
    volts: Number, frequency: Number, *, rated_volts: Number, rated_frequency: Number
) -> Number:
    """Magnetic flux over that of the plate: volts for each hertz.

    phi = V / V_r f_r / f

    Parameters
    ----------
    volts : V, at the motor's terminals, 20 to 1000 [V]
    frequency : f, at the motor's terminals, 5 to 120 [Hz]
    rated_volts : V_r, the plate's, 100 to 1000 [V]
    rated_frequency : f_r, the plate's, 50 to 60 [Hz]

    Returns
    -------
    phi, flux over that of the plate [1]

    Source: induced voltage of a coil, its resistance neglected.

    >>> flux(230.0, 30.0, rated_volts=460.0, rated_frequency=60.0)
    1.0
    """
    return volts / rated_volts * rated_frequency / frequency


@formula
def drive_volts(
    frequency: Number, *, base_frequency: Number, base_volts: Number, line_volts: Number
) -> Number:
    """Volts a frequency drive gives its motor: in step with the hertz, never above its own line.

    V = min(V_b f / f_b, V_l)

    Parameters
    ----------
    frequency : f, the drive's output, 0 to 120 [Hz]
    base_frequency : f_b, at which the motor gets its plate's volts, 50 to 60 [Hz]
    base_volts : V_b, the plate's volts, 100 to 1000 [V]
    line_volts : V_l, at the drive's input, 100 to 1000 [V]

    Returns
    -------
    V, fundamental volts at the motor [V]

    Source: constant flux up to base frequency; a diode bridge gives no more than its line.

    >>> drive_volts(45.0, base_frequency=60.0, base_volts=460.0, line_volts=480.0)
    345.0
    """
    return minimum(base_volts * frequency / base_frequency, line_volts)


@formula
def drive_power(frequency: Number, *, base_frequency: Number, rated_power: Number) -> Number:
    """Shaft power a motor may give at a frequency: constant torque up to base, then constant power.

    P_m = P_r min(f / f_b, 1)

    Parameters
    ----------
    frequency : f, the drive's output, 0 to 120 [Hz]
    base_frequency : f_b, at which the motor gets its plate's volts, 50 to 60 [Hz]
    rated_power : P_r, the plate's shaft power, 50 to 200 000 [W]

    Returns
    -------
    P_m, most shaft power [W]

    Source: torque goes with flux times current; cooling at low speed left aside.

    >>> drive_power(45.0, base_frequency=60.0, rated_power=1000.0)
    750.0
    """
    return rated_power * minimum(frequency / base_frequency, 1.0)
