"""A gas regulator, as seen from behind it: a little less under load, a little more without."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import where
from lightoff.physics.gas_pipe import FLOW_POWER, LOSS_POWER

# pressure lost from no flow to rated flow, over the set pressure: the capacity a regulator is sold
# with allows about so much (Southwestern Gas Measurement Short Course, 1966: to 10 % under)
DROOP = 0.10  # [1]
# rise over the set pressure once nothing flows; engineering judgement, 8 % either way. A sound one
# stays there: over 50 %, or still rising after a minute, it creeps
LOCK_UP = 0.15  # [1]
PIPE_POWER = FLOW_POWER / LOSS_POWER  # [1] drop of a pipe with its flow
STEPS = 60  # halvings: the answer is known to 1e-17 of the span
MOST = 10.0  # [1] no regulator carries more of its rated load


@formula
def regulated_pressure(set_pressure: Number, *, droop: Number, load: Number) -> Number:
    """Pressure behind a regulator under load: a straight line down to the rated flow.

    p = p_s (1 - k x)

    Parameters
    ----------
    set_pressure : p_s, gauge, as set at little flow, 100 to 100 000 [Pa]
    droop : k, pressure lost at rated flow over the set pressure, 0 to 0.5 [1]
    load : x, flow over the regulator's rated flow, 0 to 2 [1]

    Returns
    -------
    p, gauge pressure behind the regulator [Pa]

    Source: proportional droop of a spring and a diaphragm; engineering judgement.

    >>> regulated_pressure(2000.0, droop=0.1, load=0.5)
    1900.0
    """
    return set_pressure * (1 - droop * load)


@formula
def lock_up_pressure(set_pressure: Number, rise: Number) -> Number:
    """Pressure behind a regulator once nothing flows any more.

    p_l = p_s (1 + r)

    Parameters
    ----------
    set_pressure : p_s, gauge, as set at little flow, 100 to 100 000 [Pa]
    rise : r, what it takes to close the seat, over the set pressure, 0 to 1 [1]

    Returns
    -------
    p_l, gauge pressure behind the regulator [Pa]

    Source: ANSI Z21.80 names the lock-up; its size is engineering judgement.

    >>> lock_up_pressure(2000.0, 0.15)
    2300.0
    """
    return set_pressure * (1 + rise)


@formula
def unit_pressure(
    set_pressure: Number, *, droop: Number, load: Number, pipe_drop: Number
) -> Number:
    """Pressure that reaches the unit: behind the regulator, less what the pipe takes.

    p_u = p - dp_r x^1.84951

    Parameters
    ----------
    set_pressure : p_s, gauge, as set at little flow, 100 to 100 000 [Pa]
    droop : k, pressure lost at rated flow over the set pressure, 0 to 0.5 [1]
    load : x, flow over the regulator's rated flow, 0 to 2 [1]
    pipe_drop : dp_r, drop of the pipe at the regulator's rated flow, 0 to 100 000 [Pa]

    Returns
    -------
    p_u, gauge pressure at the unit [Pa]

    Source: the codes' low-pressure equation, in which drop goes with the flow to the 1.85.

    >>> unit_pressure(2000.0, droop=0.1, load=1.0, pipe_drop=150.0)
    1650.0
    """
    behind = regulated_pressure(set_pressure, droop=droop, load=load)
    return behind - pipe_drop * load**PIPE_POWER


@formula
def carried_load(
    set_pressure: Number, *, droop: Number, pipe_drop: Number, least: Number
) -> Number:
    """Load at which the pressure at the unit comes down to the least it may have.

    p_s (1 - k x) - dp_r x^1.84951 = p_m, solved for x

    Parameters
    ----------
    set_pressure : p_s, gauge, as set at little flow, 100 to 100 000 [Pa]
    droop : k, pressure lost at rated flow over the set pressure, 0 to 0.5 [1]
    pipe_drop : dp_r, drop of the pipe at the regulator's rated flow, 0 to 100 000 [Pa]
    least : p_m, gauge pressure the unit needs, 0 to 100 000 [Pa]

    Returns
    -------
    x, flow over the regulator's rated flow: 0 where it is too little even idle, at most 10 [1]

    Source: the regulator's line and the codes' low-pressure equation, solved by halving.

    >>> round(carried_load(2000.0, droop=0.1, pipe_drop=150.0, least=1650.0), 6)
    1.0
    """
    low = 0.0 * (set_pressure + droop + pipe_drop + least)
    high = low + MOST
    for _ in range(STEPS):
        middle = (low + high) / 2
        left = unit_pressure(set_pressure, droop=droop, load=middle, pipe_drop=pipe_drop)
        low, high = where(left > least, middle, low), where(left > least, high, middle)
    return low


@formula
def carried_heat(load: Number, capacity: Number) -> Number:
    """Heat flow of a load.

    Q = x Q_r

    Parameters
    ----------
    load : x, flow over the regulator's rated flow, 0 to 10 [1]
    capacity : Q_r, heat flow the regulator is rated for, 1000 to 1e7 [W]

    Returns
    -------
    Q, heat flow, gross [W]

    Source: definition.

    >>> carried_heat(0.5, 1000.0)
    500.0
    """
    return load * capacity
