"""Unbalance, motor power from amps, and the derating of a motor on unbalanced volts."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import interpolate, maximum

# percent of voltage unbalance and the share of rated power left; NEMA MG 1, derating curve
# (from memory; a drawn curve, two digits; it ends at 5 %)
DERATING = ((0.01, 1.0), (0.02, 0.95), (0.03, 0.89), (0.04, 0.83), (0.05, 0.75))


@formula
def mean_of_three(a: Number, b: Number, c: Number) -> Number:
    """Mean of the three phases.

    x_m = (a + b + c) / 3

    Parameters
    ----------
    a : a, first of the three volts or amps, 0.1 to 1000 [V or A]
    b : b, second, 0.1 to 1000 [V or A]
    c : c, third, 0.1 to 1000 [V or A]

    Returns
    -------
    x_m, mean [V or A]

    Source: definition.

    >>> mean_of_three(462.0, 463.0, 455.0)
    460.0
    """
    return (a + b + c) / 3


@formula
def unbalance(a: Number, b: Number, c: Number) -> Number:
    """Unbalance of three phases: the largest deviation from the mean, over the mean.

    U = max(abs(a - x_m), max(abs(b - x_m), abs(c - x_m))) / x_m

    Parameters
    ----------
    a : a, first of the three volts or amps, 0.1 to 1000 [V or A]
    b : b, second, 0.1 to 1000 [V or A]
    c : c, third, 0.1 to 1000 [V or A]

    Returns
    -------
    U, unbalance [1]

    Source: NEMA MG 1, 12.45 and 14.36.

    >>> round(unbalance(462.0, 463.0, 455.0) * 100, 2)
    1.09
    """
    mean = mean_of_three(a, b, c)
    return maximum(abs(a - mean), maximum(abs(b - mean), abs(c - mean))) / mean


@formula
def unbalance_derating(voltage_unbalance: Number) -> Number:
    """Share of its rated power a motor may give on unbalanced volts.

    f = table(U)

    Parameters
    ----------
    voltage_unbalance : U, voltage unbalance, 0 to 0.05 [1]

    Returns
    -------
    f, derating factor [1]

    Source: NEMA MG 1, derating curve (from memory).

    >>> round(unbalance_derating(0.02), 2)
    0.95
    """
    return interpolate(voltage_unbalance, DERATING)


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
    """Electric power of a motor from its amps, its reactive current taken as that at full load.

    P = n^0.5 V max(I^2 - (I_r (1 - pf^2)^0.5 V / V_r)^2, 0)^0.5

    Parameters
    ----------
    volts : V, at the terminals, line to line, 100 to 1000 [V]
    amps : I, in each line, 0.1 to 500 [A]
    phases : n, number of phases, 1 to 3 [1]
    rated_amps : I_r, the plate's amps at full load, 0.1 to 500 [A]
    rated_volts : V_r, the plate's volts, 100 to 1000 [V]
    power_factor : pf, the plate's, at full load, 0.3 to 0.98 [1]

    Returns
    -------
    P, electric power, zero where the amps are below the reactive current [W]

    Source: phasor sum with a constant magnetising current, common practice, no source; within
    about 10 % from half load upwards.

    >>> round(motor_input(volts=460.0, amps=18.5, phases=3, rated_amps=18.5,
    ...     rated_volts=460.0, power_factor=0.83))
    12234
    """
    reactive = rated_amps * (1 - power_factor**2) ** 0.5 * volts / rated_volts
    active = maximum(amps**2 - reactive**2, 0.0) ** 0.5
    return phases**0.5 * volts * active
