"""The electric supply: unbalance and what a motor may give on it, power, sag."""

from typing import NamedTuple

from lightoff.formula import Number, formula
from lightoff.formula.elementary import interpolate, maximum

# what a motor must run on; NEMA MG 1, 12.44 (from memory)
VOLTS_VARIATION = 0.10  # [1] of the plate's volts
FREQUENCY_VARIATION = 0.05  # [1] of the plate's frequency
COMBINED_VARIATION = 0.10  # [1] the two together

# voltage drop a supply should be built for; NFPA 70 (2023), 210.19, informational note
BRANCH_DROP = 0.03  # [1] the branch circuit
TOTAL_DROP = 0.05  # [1] feeder and branch together

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


class CurrentUnbalance(NamedTuple):
    """Between what and what the unbalance of the amps lies."""

    low: Number
    high: Number


@formula
def current_unbalance(voltage_unbalance: Number) -> CurrentUnbalance:
    """Unbalance of a motor's amps that unbalanced volts explain.

    U_1 = 6 U; U_2 = 10 U

    Parameters
    ----------
    voltage_unbalance : U, voltage unbalance, 0 to 0.05 [1]

    Returns
    -------
    low : U_1, current unbalance, at least about [1]
    high : U_2, current unbalance, at most about [1]

    Source: NEMA MG 1, text to the derating figure (from memory): a rule of thumb, at full load.

    >>> current_unbalance(0.01)
    CurrentUnbalance(low=0.06, high=0.1)
    """
    return CurrentUnbalance(6 * voltage_unbalance, 10 * voltage_unbalance)


@formula
def apparent_power(volts: Number, amps: Number, *, phases: Number) -> Number:
    """Apparent power of a balanced load.

    S = n^0.5 V I

    Parameters
    ----------
    volts : V, line to line, 1 to 1000 [V]
    amps : I, in each line, 0 to 1000 [A]
    phases : n, number of phases, 1 to 3 [1]

    Returns
    -------
    S, apparent power [VA]

    Source: IEEE definitions of power.

    >>> round(apparent_power(460.0, 12.4, phases=3.0), 1)
    9879.6
    """
    return phases**0.5 * volts * amps


@formula
def electric_power(apparent: Number, power_factor: Number) -> Number:
    """Power that a load takes of its apparent power.

    P = S pf

    Parameters
    ----------
    apparent : S, apparent power, 0 to 1e6 [VA]
    power_factor : pf, power factor, 0 to 1 [1]

    Returns
    -------
    P, electric power [W]

    Source: IEEE definitions of power.

    >>> electric_power(1000.0, 0.8)
    800.0
    """
    return apparent * power_factor


@formula
def power_factor(power: Number, apparent: Number) -> Number:
    """Power factor of a load.

    pf = P / S

    Parameters
    ----------
    power : P, electric power, 0 to 1e6 [W]
    apparent : S, apparent power, 1 to 1e6 [VA]

    Returns
    -------
    pf, power factor [1]

    Source: IEEE definitions of power.

    >>> power_factor(800.0, 1000.0)
    0.8
    """
    return power / apparent


@formula
def sag(open_volts: Number, volts: Number) -> Number:
    """Share of its volts a supply loses under load.

    s = (V_0 - V) / V_0

    Parameters
    ----------
    open_volts : V_0, before the load is switched on, 1 to 1000 [V]
    volts : V, at the same place under load, 1 to 1000 [V]

    Returns
    -------
    s, sag [1]

    Source: definition.

    >>> sag(480.0, 468.0)
    0.025
    """
    return (open_volts - volts) / open_volts
