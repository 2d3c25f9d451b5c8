"""Gas through a meter: what is clocked at its dial."""

from lightoff.formula import Number, formula
from lightoff.physics.constants import GAS_BASE_PRESSURE, GAS_BASE_TEMPERATURE


@formula
def base_volume_factor(pressure: Number, temperature: Number) -> Number:
    """Volume of a gas at base conditions, 60 degF and 30 inHg, over its volume as metered.

    f = p / 101592 × 288.706 / T

    Parameters
    ----------
    pressure : p, absolute pressure of the gas in the meter, 60 000 to 500 000 [Pa]
    temperature : T, temperature of the gas in the meter, 230 to 330 [K]

    Returns
    -------
    f, factor to base conditions [1]

    Source: ideal gas law; base state of the US gas trade.

    >>> round(base_volume_factor(101325.0, 288.706), 4)
    0.9974
    """
    return pressure / GAS_BASE_PRESSURE * GAS_BASE_TEMPERATURE / temperature


@formula
def compensated_volume_factor(pressure: Number) -> Number:
    """The same of a meter that brings its volume to 60 degF by itself: pressure alone is left.

    f = p / 101592

    Parameters
    ----------
    pressure : p, absolute pressure of the gas in the meter, 60 000 to 500 000 [Pa]

    Returns
    -------
    f, factor to base conditions [1]

    Source: ideal gas law; base state of the US gas trade.

    >>> round(compensated_volume_factor(101325.0), 4)
    0.9974
    """
    return pressure / GAS_BASE_PRESSURE


@formula
def clocked_volume(dial: Number, turns: Number) -> Number:
    """Volume turned by a dial.

    V = n V_d

    Parameters
    ----------
    dial : V_d, volume of one turn, 0.001 to 10 [m3]
    turns : n, whole turns, 1 to 1000 [1]

    Returns
    -------
    V, volume as metered [m3]

    Source: definition.

    >>> clocked_volume(0.5, 3.0)
    1.5
    """
    return turns * dial


@formula
def metered_flow(volume: Number, seconds: Number) -> Number:
    """Flow of gas as metered, before it is brought to base conditions.

    q = V / t

    Parameters
    ----------
    volume : V, turned by the dial, as metered, 0.01 to 10 [m3]
    seconds : t, time for that volume, 1 to 3600 [s]

    Returns
    -------
    q, gas flow as metered [m3/s]

    Source: definition.

    >>> metered_flow(1.5, 30.0)
    0.05
    """
    return volume / seconds


@formula
def absolute_pressure(gauge: Number, barometer: Number) -> Number:
    """Absolute pressure of what a gauge shows against the air.

    p = p_g + p_b

    Parameters
    ----------
    gauge : p_g, gauge pressure, -5000 to 700 000 [Pa]
    barometer : p_b, absolute air pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    p, absolute pressure [Pa]

    Source: definition.

    >>> absolute_pressure(1000.0, 100000.0)
    101000.0
    """
    return gauge + barometer


@formula
def flow_less_others(flow: Number, other_flow: Number) -> Number:
    """What is left of a metered flow for the burners in question.

    q = q_m - q_o

    Parameters
    ----------
    flow : q_m, gas flow as metered, 0 to 10 [m3/s]
    other_flow : q_o, of other appliances on the meter, as metered, 0 to 10 [m3/s]

    Returns
    -------
    q, gas flow of the burners, as metered [m3/s]

    Source: definition.

    >>> flow_less_others(1.0, 0.25)
    0.75
    """
    return flow - other_flow


@formula
def expected_time(volume: Number, *, flow: Number, other_flow: Number) -> Number:
    """Time in which a dial should turn so much.

    t = V / (q + q_o)

    Parameters
    ----------
    volume : V, turned by the dial, as metered, 0.01 to 10 [m3]
    flow : q, gas flow of the burners, as metered, 0.0001 to 10 [m3/s]
    other_flow : q_o, of other appliances on the meter, as metered, 0 to 10 [m3/s]

    Returns
    -------
    t, time [s]

    Source: definition.

    >>> expected_time(1.5, flow=0.04, other_flow=0.01)
    30.0
    """
    return volume / (flow + other_flow)


@formula
def flow_resolution(flow: Number, *, seconds: Number, step: Number) -> Number:
    """Flow that one step of the stopwatch stands for.

    e = q Delta_t / t

    Parameters
    ----------
    flow : q, gas flow as metered, 0 to 10 [m3/s]
    seconds : t, time it was clocked for, 1 to 3600 [s]
    step : Delta_t, the least time that can be told, 0.01 to 10 [s]

    Returns
    -------
    e, step of the flow [m3/s]

    Source: slope of V / t.

    >>> flow_resolution(0.03, seconds=60.0, step=1.0)
    0.0005
    """
    return flow * step / seconds
