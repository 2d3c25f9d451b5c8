"""The heat in the gas a meter counts, and the flow an input needs."""

from lightoff.formula import Number, formula


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
def flow_input(flow: Number, *, heating_value: Number, factor: Number) -> Number:
    """Heat flow of a gas flow.

    Q = H f q

    Parameters
    ----------
    flow : q, gas flow at any pressure and temperature, 0 to 10 [m3/s]
    heating_value : H, gross, at base conditions, 3e7 to 1.1e8 [J/m3]
    factor : f, volume at base conditions over volume as it flows, 0.5 to 5 [1]

    Returns
    -------
    Q, heat flow, gross [W]

    Source: definition.

    >>> flow_input(0.001, heating_value=38e6, factor=1.0)
    38000.0
    """
    return heating_value * factor * flow


@formula
def base_flow(heat: Number, heating_value: Number) -> Number:
    """Gas flow of a heat flow, at base conditions.

    q_b = Q / H

    Parameters
    ----------
    heat : Q, heat flow, gross, 0 to 1e7 [W]
    heating_value : H, gross, at base conditions, 3e7 to 1.1e8 [J/m3]

    Returns
    -------
    q_b, gas flow at base conditions [m3/s]

    Source: definition.

    >>> base_flow(38000.0, 38e6)
    0.001
    """
    return heat / heating_value


@formula
def flow_for_input(heat: Number, *, heating_value: Number, factor: Number) -> Number:
    """Gas flow of a heat flow, as it flows.

    q = q_b / f

    Parameters
    ----------
    heat : Q, heat flow, gross, 0 to 1e7 [W]
    heating_value : H, gross, at base conditions, 3e7 to 1.1e8 [J/m3]
    factor : f, volume at base conditions over volume as it flows, 0.5 to 5 [1]

    Returns
    -------
    q, gas flow [m3/s]

    Source: definition.

    >>> flow_for_input(38000.0, heating_value=38e6, factor=0.5)
    0.002
    """
    return base_flow(heat, heating_value) / factor


@formula
def input_share(burnt: Number, rated: Number) -> Number:
    """Input over what it should be.

    f = Q / Q_r

    Parameters
    ----------
    burnt : Q, heat flow, gross, 0 to 1e7 [W]
    rated : Q_r, rated for this altitude, gross, 1000 to 1e7 [W]

    Returns
    -------
    f, input over rated input [1]

    Source: definition.

    >>> input_share(98.0, 100.0)
    0.98
    """
    return burnt / rated
