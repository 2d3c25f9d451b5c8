"""Pressure decay in a closed pipe."""

from lightoff.physics.elementary import Number


def temperature_corrected_drop(
    *,
    start: Number,
    end: Number,
    start_temperature: Number,
    end_temperature: Number,
    barometer: Number,
) -> Number:
    """Drop of pressure that temperature does not explain: p1 - p2 T1 / T2, absolute.

    Parameters
    ----------
    start, end : gauge pressures [Pa]
    start_temperature, end_temperature : of the gas in the pipe [K]
    barometer : absolute air pressure [Pa]

    Returns
    -------
    drop of pressure at the starting temperature [Pa]

    Source: ideal gas law at constant volume.

    >>> round(temperature_corrected_drop(start=1000.0, end=1000.0, start_temperature=290.0,
    ...     end_temperature=290.0, barometer=101325.0), 6)
    0.0
    """
    return start + barometer - (end + barometer) * start_temperature / end_temperature
