"""Amps of an induction motor and the power behind them, from the plate alone.

Current has a part that works and a part that does not. The idle part magnetises, whatever the load,
and makes up for leakage, with the square of the amps.
"""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import maximum, minimum, where

# Share of the full-load reactive current that magnetises; the rest is leakage. Fitted to part-load
# amps of US DOE's motor tool (open source, MEASUR), 1.5 to 50 hp, 2 to 6 poles; see tests/grids.
MAGNETISING = 0.65  # [1] like motors 0.55 to 0.75
_STALLING = 0.01  # [1] of a square: from there on its root only fades, and keeps a slope


@formula
def plate_power_factor(
    *,
    rated_power: Number,
    efficiency: Number,
    rated_volts: Number,
    rated_amps: Number,
    phases: Number,
) -> Number:
    """Power factor at full load that the rest of the plate implies.

    pf = min(P_r / eta / (n^0.5 V_r I_r), 0.98)

    Parameters
    ----------
    rated_power : P_r, the plate's shaft power, 50 to 200 000 [W]
    efficiency : eta, the plate's, at full load, 0.3 to 0.98 [1]
    rated_volts : V_r, the plate's volts, 100 to 1000 [V]
    rated_amps : I_r, the plate's amps at full load, 0.1 to 500 [A]
    phases : n, number of phases, 1 to 3 [1]

    Returns
    -------
    pf, power factor at full load, at most 0.98: more is a plate that contradicts itself [1]

    Source: IEEE definitions of power.

    >>> round(plate_power_factor(rated_power=7457.0, efficiency=0.917, rated_volts=460.0,
    ...     rated_amps=12.4, phases=3.0), 3)
    0.823
    """
    implied = rated_power / efficiency / (phases**0.5 * rated_volts * rated_amps)
    return minimum(implied, 0.98)


@formula
def magnetising_current(
    *, volts: Number, rated_amps: Number, rated_volts: Number, power_factor: Number
) -> Number:
    """Reactive current that magnetises a motor, at any load.

    I_m = 0.65 I_r (1 - pf^2)^0.5 V / V_r

    Parameters
    ----------
    volts : V, at the terminals, line to line, 20 to 1000 [V]
    rated_amps : I_r, the plate's amps at full load, 0.1 to 500 [A]
    rated_volts : V_r, the plate's volts, on a drive in proportion to the hertz, 20 to 1000 [V]
    power_factor : pf, the plate's, at full load, 0.3 to 0.98 [1]

    Returns
    -------
    I_m, magnetising current [A]

    Source: shunt reactance of the induction motor's equivalent circuit; the share fitted to US
    DOE's motor tool.

    >>> round(magnetising_current(volts=460.0, rated_amps=10.0, rated_volts=460.0,
    ...     power_factor=0.8), 2)
    3.9
    """
    return MAGNETISING * rated_amps * (1 - power_factor**2) ** 0.5 * volts / rated_volts


@formula
def leakage_factor(
    *, volts: Number, rated_amps: Number, rated_volts: Number, power_factor: Number
) -> Number:
    """Reactive current a motor's leakage takes, over the square of its amps.

    b = 0.35 (1 - pf^2)^0.5 V_r / V / I_r

    Parameters
    ----------
    volts : V, at the terminals, line to line, 20 to 1000 [V]
    rated_amps : I_r, the plate's amps at full load, 0.1 to 500 [A]
    rated_volts : V_r, the plate's volts, on a drive in proportion to the hertz, 20 to 1000 [V]
    power_factor : pf, the plate's, at full load, 0.3 to 0.98 [1]

    Returns
    -------
    b, leakage current over the square of the amps [1/A]

    Source: series reactance of the induction motor's equivalent circuit; the share fitted to US
    DOE's motor tool.

    >>> round(leakage_factor(volts=460.0, rated_amps=10.0, rated_volts=460.0,
    ...     power_factor=0.8), 3)
    0.021
    """
    return (1 - MAGNETISING) * (1 - power_factor**2) ** 0.5 * rated_volts / volts / rated_amps


@formula
def reactive_current(amps: Number, *, magnetising: Number, leakage: Number) -> Number:
    """Part of a motor's amps that does no work.

    I_q = I_m + b I^2

    Parameters
    ----------
    amps : I, in each line, 0 to 500 [A]
    magnetising : I_m, magnetising current, 0 to 500 [A]
    leakage : b, leakage current over the square of the amps, 0 to 5 [1/A]

    Returns
    -------
    I_q, reactive current [A]

    Source: equivalent circuit of the induction motor, its shunt and series reactance apart.

    >>> reactive_current(10.0, magnetising=4.0, leakage=0.02)
    6.0
    """
    return magnetising + leakage * amps**2


@formula
def motor_input(
    *,
    volts: Number,
    amps: Number,
    phases: Number,
    rated_amps: Number,
    rated_volts: Number,
    power_factor: Number,
) -> Number:
    """Electric power of a motor from its volts and amps, the reactive part taken off.

    P = n^0.5 V max(I^2 - I_q^2, 0)^0.5

    Parameters
    ----------
    volts : V, at the terminals, line to line, 20 to 1000 [V]
    amps : I, in each line, 0.1 to 500 [A]
    phases : n, number of phases, 1 to 3 [1]
    rated_amps : I_r, the plate's amps at full load, 0.1 to 500 [A]
    rated_volts : V_r, the plate's volts, on a drive in proportion to the hertz, 20 to 1000 [V]
    power_factor : pf, the plate's, at full load, 0.3 to 0.98 [1]

    Returns
    -------
    P, electric power, zero where the amps are no more than the reactive ones [W]

    Source: phasor sum. From US DOE's motor tool, 5 to 40 hp, 1.3 % (rms) at three quarters load,
    4.4 % at half; one motor differs more than the mean of its like. Below half load amps say
    little.

    >>> round(motor_input(volts=460.0, amps=18.5, phases=3, rated_amps=18.5,
    ...     rated_volts=460.0, power_factor=0.83))
    12234
    """
    plate = {"rated_amps": rated_amps, "rated_volts": rated_volts, "power_factor": power_factor}
    reactive = reactive_current(
        amps,
        magnetising=magnetising_current(volts=volts, **plate),
        leakage=leakage_factor(volts=volts, **plate),
    )
    return phases**0.5 * volts * maximum(amps**2 - reactive**2, 0.0) ** 0.5


@formula
def motor_amps(
    power: Number,
    *,
    volts: Number,
    phases: Number,
    rated_amps: Number,
    rated_volts: Number,
    power_factor: Number,
) -> Number:
    """Amps of a motor that takes this electric power.

    P = n^0.5 V (I^2 - I_q^2)^0.5, solved for I

    Parameters
    ----------
    power : P, electric power, 0 to 400 000 [W]
    volts : V, at the terminals, line to line, 20 to 1000 [V]
    phases : n, number of phases, 1 to 3 [1]
    rated_amps : I_r, the plate's amps at full load, 0.1 to 500 [A]
    rated_volts : V_r, the plate's volts, on a drive in proportion to the hertz, 20 to 1000 [V]
    power_factor : pf, the plate's, at full load, 0.3 to 0.98 [1]

    Returns
    -------
    I, amps in each line; no true figure beyond what makes the motor stall [A]

    Source: phasor sum. From US DOE's motor tool, 5 to 40 hp, 1 % (rms) at three quarters load, 3 %
    at half, 7 % at a quarter.

    >>> round(motor_amps(12234.0, volts=460.0, phases=3, rated_amps=18.5,
    ...     rated_volts=460.0, power_factor=0.83), 2)
    18.5
    """
    plate = {"rated_amps": rated_amps, "rated_volts": rated_volts, "power_factor": power_factor}
    magnetising = magnetising_current(volts=volts, **plate)
    leakage = leakage_factor(volts=volts, **plate)
    # a quadratic in I^2: its smaller root, the larger one lies beyond stalling
    least = (power / (phases**0.5 * volts)) ** 2 + magnetising**2
    middle = 1 - 2 * magnetising * leakage
    square = middle**2 - 4 * leakage**2 * least
    fading = _STALLING**0.5 / (1.5 - minimum(square, _STALLING) / (2 * _STALLING))
    root = where(square > _STALLING, maximum(square, _STALLING) ** 0.5, fading)
    return (2 * least / (middle + root)) ** 0.5


@formula
def locked_rotor_amps(power: Number, *, code: Number, volts: Number, phases: Number) -> Number:
    """Amps of a motor at standstill, as it is switched on.

    I = k P_r / (n^0.5 V)

    Parameters
    ----------
    power : P_r, the plate's shaft power, 50 to 200 000 [W]
    code : k, apparent power at standstill over rated power, by the plate's code letter, 0 to 31
        [VA/W]
    volts : V, line to line, 100 to 1000 [V]
    phases : n, number of phases, 1 to 3 [1]

    Returns
    -------
    I, amps in each line [A]

    Source: NFPA 70 (2023), 430.7(B).

    >>> round(locked_rotor_amps(7457.0, code=7.5, volts=460.0, phases=3.0), 1)
    70.2
    """
    return code * power / (phases**0.5 * volts)
