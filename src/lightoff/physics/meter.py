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
def metered_input(
    *, volume: Number, seconds: Number, heating_value: Number, factor: Number
) -> Number:
    """Heat flow clocked at a meter.

    Q = H V f / t

    Parameters
    ----------
    volume : V, turned by the dial, as metered, 0.01 to 10 [m3]
    seconds : t, time for that volume, 1 to 3600 [s]
    heating_value : H, gross, at base conditions, 3e7 to 1.1e8 [J/m3]
    factor : f, volume at base conditions over volume as metered, 0.5 to 5 [1]

    Returns
    -------
    Q, heat flow, gross [W]

    Source: definition; clocking after NFPA 54 annex.

    >>> round(metered_input(volume=0.0566, seconds=30.0, heating_value=38.4e6, factor=1.0))
    72448
    """
    return heating_value * volume * factor / seconds


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
