"""Pressures along a gas line: gauge and absolute, lost and left."""

from lightoff.formula import Number, formula


@formula
def gauge_pressure(pressure: Number, barometer: Number) -> Number:
    """What a gauge shows against the air.

    p_g = p - p_b

    Parameters
    ----------
    pressure : p, absolute pressure, 0 to 900 000 [Pa]
    barometer : p_b, absolute air pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    p_g, gauge pressure [Pa]

    Source: definition.

    >>> gauge_pressure(101000.0, 100000.0)
    1000.0
    """
    return pressure - barometer


@formula
def pressure_left(inlet: Number, drop: Number) -> Number:
    """Pressure at the end of a pipe.

    p_2 = p_1 - dp

    Parameters
    ----------
    inlet : p_1, absolute pressure, 60 000 to 900 000 [Pa]
    drop : dp, pressure drop, 0 to 700 000 [Pa]

    Returns
    -------
    p_2, absolute pressure at the outlet [Pa]

    Source: definition.

    >>> pressure_left(101000.0, 500.0)
    100500.0
    """
    return inlet - drop


@formula
def pressure_lost(inlet: Number, outlet: Number) -> Number:
    """Pressure a pipe takes.

    dp = p_1 - p_2

    Parameters
    ----------
    inlet : p_1, absolute pressure, 60 000 to 900 000 [Pa]
    outlet : p_2, absolute pressure, 0 to 900 000 [Pa]

    Returns
    -------
    dp, pressure drop [Pa]

    Source: definition.

    >>> pressure_lost(101000.0, 100500.0)
    500.0
    """
    return inlet - outlet


@formula
def pressure_along(inlet: Number, outlet: Number, *, share: Number) -> Number:
    """Pressure on the way along a pipe: its square falls evenly.

    p = (p_1^2 - (p_1^2 - p_2^2) x)^0.5

    Parameters
    ----------
    inlet : p_1, absolute pressure, 60 000 to 800 000 [Pa]
    outlet : p_2, absolute pressure, 60 000 to 800 000 [Pa]
    share : x, share of the length behind, 0 to 1 [1]

    Returns
    -------
    p, absolute pressure there [Pa]

    Source: isothermal flow of an ideal gas, as in the high-pressure equation.

    >>> pressure_along(200000.0, 100000.0, share=1.0)
    100000.0
    """
    return (inlet**2 - (inlet**2 - outlet**2) * share) ** 0.5
