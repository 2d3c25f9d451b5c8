"""Frequency drives: what a motor gets and may give away from its plate's frequency."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import minimum


@formula
def volts_in_step(frequency: Number, *, rated_volts: Number, rated_frequency: Number) -> Number:
    """Volts that give a motor the magnetic flux of its plate at another frequency.

    V_f = V_r f / f_r

    Parameters
    ----------
    frequency : f, at the motor's terminals, 0 to 120 [Hz]
    rated_volts : V_r, the plate's, 100 to 1000 [V]
    rated_frequency : f_r, the plate's, 50 to 60 [Hz]

    Returns
    -------
    V_f, volts at the motor's terminals [V]

    Source: induced voltage of a coil, its resistance neglected.

    >>> volts_in_step(45.0, rated_volts=460.0, rated_frequency=60.0)
    345.0
    """
    return rated_volts * frequency / rated_frequency


@formula
def flux(
    volts: Number, frequency: Number, *, rated_volts: Number, rated_frequency: Number
) -> Number:
    """Magnetic flux over that of the plate.

    phi = V / V_f

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
    return volts / volts_in_step(
        frequency, rated_volts=rated_volts, rated_frequency=rated_frequency
    )


@formula
def drive_volts(
    frequency: Number, *, rated_volts: Number, rated_frequency: Number, line_volts: Number
) -> Number:
    """Volts a frequency drive gives its motor: in step with the hertz, never above its own line.

    V = min(V_f, V_l)

    Parameters
    ----------
    frequency : f, the drive's output, 0 to 120 [Hz]
    rated_volts : V_r, the plate's, 100 to 1000 [V]
    rated_frequency : f_r, the plate's, 50 to 60 [Hz]
    line_volts : V_l, at the drive's input, 100 to 1000 [V]

    Returns
    -------
    V, fundamental volts at the motor [V]

    Source: constant flux up to base frequency; a diode bridge gives no more than its line.

    >>> drive_volts(75.0, rated_volts=460.0, rated_frequency=60.0, line_volts=480.0)
    480.0
    """
    in_step = volts_in_step(frequency, rated_volts=rated_volts, rated_frequency=rated_frequency)
    return minimum(in_step, line_volts)


@formula
def drive_power(frequency: Number, *, rated_frequency: Number, rated_power: Number) -> Number:
    """Shaft power a motor may give at a frequency: constant torque up to base, then constant power.

    P_m = P_r min(f / f_r, 1)

    Parameters
    ----------
    frequency : f, the drive's output, 0 to 120 [Hz]
    rated_frequency : f_r, the plate's, 50 to 60 [Hz]
    rated_power : P_r, the plate's shaft power, 50 to 200 000 [W]

    Returns
    -------
    P_m, most shaft power [W]

    Source: torque goes with flux times current; cooling at low speed left aside.

    >>> drive_power(45.0, rated_frequency=60.0, rated_power=1000.0)
    750.0
    """
    return rated_power * minimum(frequency / rated_frequency, 1.0)
