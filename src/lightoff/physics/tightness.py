"""Pressure decay in a closed pipe."""

from lightoff.formula import Number, formula


@formula
def temperature_corrected_drop(
    *,
    start: Number,
    end: Number,
    start_temperature: Number,
    end_temperature: Number,
    barometer: Number,
) -> Number:
    """Drop of pressure in a closed pipe that temperature does not explain.

    dp = p_1 + p_b - (p_2 + p_b) T_1 / T_2

    Parameters
    ----------
    start : p_1, gauge pressure at the start, 0 to 700 000 [Pa]
    end : p_2, gauge pressure at the end, 0 to 700 000 [Pa]
    start_temperature : T_1, of the gas in the pipe at the start, 230 to 330 [K]
    end_temperature : T_2, of the gas in the pipe at the end, 230 to 330 [K]
    barometer : p_b, absolute air pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    dp, drop of pressure at the starting temperature [Pa]

    Source: ideal gas law at constant volume.

    >>> round(temperature_corrected_drop(start=1000.0, end=1000.0, start_temperature=290.0,
    ...     end_temperature=290.0, barometer=101325.0), 6)
    0.0
    """
    return start + barometer - (end + barometer) * start_temperature / end_temperature
