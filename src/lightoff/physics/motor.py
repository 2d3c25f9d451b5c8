"""Induction motors: losses and efficiency at any load, from the plate alone.

The plate gives one point, full load. Part load follows from a simple picture of the losses: some
are there at any load, the rest grows with the square of it.
"""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import maximum

# Share of the full-load losses that is there at any load (iron, bearings, the motor's own fan).
# Efficiency is best near three quarters load (US DOE, Determining Electric Motor Load and
# Efficiency, fact sheet), and there these losses equal the others: 0.75^2 / (1 + 0.75^2).
FIXED_LOSS = 0.36  # [1] like motors 0.25 to 0.5; engineering judgement


@formula
def losses_at_load(load: Number, efficiency: Number) -> Number:
    """Losses of a motor over its rated power: some always, the rest with the square of the load.

    l = (1 / eta - 1) (0.36 + 0.64 x^2)

    Parameters
    ----------
    load : x, shaft power over rated power, 0 to 1.5 [1]
    efficiency : eta, the plate's, at full load, 0.3 to 0.98 [1]

    Returns
    -------
    l, losses over rated power [1]

    Source: loss segregation of IEEE 112 in two parts; best efficiency near three quarters load, US
    DOE, Determining Electric Motor Load and Efficiency. Losses within 20 % of nominal, NEMA MG 1
    (from memory).

    >>> round(losses_at_load(0.75, 0.9), 4)
    0.08
    """
    return (1 / efficiency - 1) * (FIXED_LOSS + (1 - FIXED_LOSS) * load**2)


@formula
def input_at_load(load: Number, *, rated_power: Number, efficiency: Number) -> Number:
    """Electric power of a motor at a load.

    P = P_r (x + l)

    Parameters
    ----------
    load : x, shaft power over rated power, 0 to 1.5 [1]
    rated_power : P_r, the plate's shaft power, 50 to 200 000 [W]
    efficiency : eta, the plate's, at full load, 0.3 to 0.98 [1]

    Returns
    -------
    P, electric power [W]

    Source: balance of energy.

    >>> round(input_at_load(1.0, rated_power=7457.0, efficiency=0.917))
    8132
    """
    return rated_power * (load + losses_at_load(load, efficiency))


@formula
def efficiency_at_load(load: Number, efficiency: Number) -> Number:
    """Efficiency of a motor at a load, through the plate's at full load.

    eta_x = x / (x + l)

    Parameters
    ----------
    load : x, shaft power over rated power, 0 to 1.5 [1]
    efficiency : eta, the plate's, at full load, 0.3 to 0.98 [1]

    Returns
    -------
    eta_x, efficiency at this load [1]

    Source: definition; 0.9 points (rms) from US DOE's motor tool at a quarter load, 0.3 from half.

    >>> round(efficiency_at_load(0.5, 0.917), 3)
    0.914
    """
    return load / (load + losses_at_load(load, efficiency))


@formula
def input_beyond_idle(power: Number, *, rated_power: Number, efficiency: Number) -> Number:
    """Electric power beyond what the motor takes idling, over rated power.

    c = max(P / P_r - 0.36 (1 / eta - 1), 0)

    Parameters
    ----------
    power : P, electric power, 0 to 400 000 [W]
    rated_power : P_r, the plate's shaft power, 50 to 200 000 [W]
    efficiency : eta, the plate's, at full load, 0.3 to 0.98 [1]

    Returns
    -------
    c, electric power beyond idling over rated power [1]

    Source: balance of energy.

    >>> round(input_beyond_idle(1000.0, rated_power=1000.0, efficiency=0.5), 2)
    0.64
    """
    return maximum(power / rated_power - FIXED_LOSS * (1 / efficiency - 1), 0.0)


@formula
def load_of_input(power: Number, *, rated_power: Number, efficiency: Number) -> Number:
    """Load of a motor by the electric power it takes: the losses turned round.

    x = 2 c / (1 + (1 + 2.56 (1 / eta - 1) c)^0.5)

    Parameters
    ----------
    power : P, electric power, 0 to 400 000 [W]
    rated_power : P_r, the plate's shaft power, 50 to 200 000 [W]
    efficiency : eta, the plate's, at full load, 0.3 to 0.98 [1]

    Returns
    -------
    x, shaft power over rated power [1]

    Source: balance of energy, solved for the load.

    >>> round(load_of_input(8132.0, rated_power=7457.0, efficiency=0.917), 3)
    1.0
    """
    lost = 1 / efficiency - 1
    beyond = input_beyond_idle(power, rated_power=rated_power, efficiency=efficiency)
    return 2 * beyond / (1 + (1 + 4 * (1 - FIXED_LOSS) * lost * beyond) ** 0.5)


@formula
def motor_output(power: Number, efficiency: Number) -> Number:
    """Shaft power a motor gives of its electric power.

    P_o = eta P

    Parameters
    ----------
    power : P, electric power, 0 to 400 000 [W]
    efficiency : eta, at this load, 0 to 1 [1]

    Returns
    -------
    P_o, shaft power [W]

    Source: definition.

    >>> motor_output(1000.0, 0.9)
    900.0
    """
    return efficiency * power


@formula
def service_factor_power(rated_power: Number, service_factor: Number) -> Number:
    """Shaft power a motor may give continuously under the plate's own conditions.

    P_m = P_r f_s

    Parameters
    ----------
    rated_power : P_r, the plate's shaft power, 50 to 200 000 [W]
    service_factor : f_s, the plate's, 1 to 1.5 [1]

    Returns
    -------
    P_m, most shaft power [W]

    Source: NEMA MG 1, service factor (from memory).

    >>> round(service_factor_power(7457.0, 1.15), 2)
    8575.55
    """
    return rated_power * service_factor


@formula
def derated_power(rated_power: Number, factor: Number) -> Number:
    """Shaft power a motor may still give where something takes away from it.

    P_m = f P_r

    Parameters
    ----------
    rated_power : P_r, the plate's shaft power, 50 to 200 000 [W]
    factor : f, derating factor, 0 to 1 [1]

    Returns
    -------
    P_m, most shaft power [W]

    Source: NEMA MG 1, derating.

    >>> derated_power(1000.0, 0.95)
    950.0
    """
    return factor * rated_power
