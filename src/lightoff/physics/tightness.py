"""Pressure decay in a closed pipe, and what the codes ask of a test."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import ceil, maximum, minimum, where
from lightoff.quantity import si

ISOLATE_ABOVE = 3500.0  # [Pa] 1/2 psi as the code rounds it; IFGC, 406.3.3 (from memory)
LEAST_TEST_PRESSURE = si(3, "psi")  # [Pa] gauge; IFGC 2015, 406.4.1
SMALL_PIPE = si(10, "ft3")  # [m3] tested for 10 minutes; IFGC, 406.4.2 (from memory)
PIPE_STEP = si(500, "ft3")  # [m3] each, and each part of one, takes half an hour; the same


@formula
def tight_end_pressure(
    start: Number,
    *,
    start_temperature: Number,
    end_temperature: Number,
    barometer: Number,
    end_barometer: Number,
) -> Number:
    """Pressure a gauge shows at the end of a test on a pipe that has lost nothing.

    p_2 = (p_1 + p_b) T_2 / T_1 - p_e

    Parameters
    ----------
    start : p_1, gauge pressure at the start, 0 to 700 000 [Pa]
    start_temperature : T_1, of the gas in the pipe at the start, 230 to 330 [K]
    end_temperature : T_2, of the gas in the pipe at the end, 230 to 330 [K]
    barometer : p_b, absolute air pressure at the start, 60 000 to 110 000 [Pa]
    end_barometer : p_e, absolute air pressure at the end, 60 000 to 110 000 [Pa]

    Returns
    -------
    p_2, gauge pressure at the end if nothing leaked [Pa]

    Source: ideal gas law at constant volume.

    >>> p = tight_end_pressure(20e3, start_temperature=300.0, end_temperature=297.0,
    ...     barometer=100e3, end_barometer=100e3)
    >>> round(p)
    18800
    """
    return (start + barometer) * end_temperature / start_temperature - end_barometer


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

    Delta_p = p_1 + p_b - (p_2 + p_b) T_1 / T_2

    Parameters
    ----------
    start : p_1, gauge pressure at the start, 0 to 700 000 [Pa]
    end : p_2, gauge pressure at the end, 0 to 700 000 [Pa]
    start_temperature : T_1, of the gas in the pipe at the start, 230 to 330 [K]
    end_temperature : T_2, of the gas in the pipe at the end, 230 to 330 [K]
    barometer : p_b, absolute air pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    Delta_p, drop of pressure at the starting temperature [Pa]

    Source: ideal gas law at constant volume.

    >>> round(temperature_corrected_drop(start=1000.0, end=1000.0, start_temperature=290.0,
    ...     end_temperature=290.0, barometer=101325.0), 6)
    0.0
    """
    return start + barometer - (end + barometer) * start_temperature / end_temperature


@formula
def end_at_first_barometer(end: Number, *, barometer: Number, end_barometer: Number) -> Number:
    """What the gauge would show at the end had the weather not changed: it reads against the air.

    p = p_2 + p_e - p_b

    Parameters
    ----------
    end : p_2, gauge pressure at the end, 0 to 700 000 [Pa]
    barometer : p_b, absolute air pressure at the start, 60 000 to 110 000 [Pa]
    end_barometer : p_e, absolute air pressure at the end, 60 000 to 110 000 [Pa]

    Returns
    -------
    p, gauge pressure against the air of the start [Pa]

    Source: definition.

    >>> end_at_first_barometer(20e3, barometer=100e3, end_barometer=99e3)
    19000.0
    """
    return end + end_barometer - barometer


@formula
def pressure_per_degree(pressure: Number, temperature: Number) -> Number:
    """Change of pressure in a closed pipe for each kelvin its gas gets warmer.

    k = p / T

    Parameters
    ----------
    pressure : p, absolute pressure in the pipe, 60 000 to 800 000 [Pa]
    temperature : T, of the gas in the pipe, 230 to 330 [K]

    Returns
    -------
    k, pressure for each kelvin [Pa/K]

    Source: ideal gas law at constant volume.

    >>> round(pressure_per_degree(122e3, 294.0))
    415
    """
    return pressure / temperature


@formula
def leak_rate(
    drop: Number,
    volume: Number,
    *,
    seconds: Number,
    temperature: Number,
    base_pressure: Number,
    base_temperature: Number,
) -> Number:
    """Gas lost from a closed pipe, at base conditions.

    Q = V Delta_p / t T_b / (p_b T)

    Parameters
    ----------
    drop : Delta_p, drop of pressure at the starting temperature, -100 000 to 700 000 [Pa]
    volume : V, of the pipe, 0.0001 to 100 [m3]
    seconds : t, from start to end, 60 to 200 000 [s]
    temperature : T, of the gas at the start, 230 to 330 [K]
    base_pressure : p_b, absolute pressure of the base state, 90 000 to 110 000 [Pa]
    base_temperature : T_b, temperature of the base state, 270 to 300 [K]

    Returns
    -------
    Q, leak at base conditions [m3/s]

    Source: ideal gas law at constant volume.

    >>> leak_rate(1000.0, 0.1, seconds=1000.0, temperature=300.0, base_pressure=100e3,
    ...     base_temperature=300.0)
    1e-06
    """
    return volume * drop / seconds * base_temperature / (base_pressure * temperature)


@formula
def code_test_pressure(working_pressure: Number, least: Number) -> Number:
    """Least gauge pressure of a test on new piping: one and a half times the working pressure.

    p = max(1.5 p_w, p_l)

    Parameters
    ----------
    working_pressure : p_w, largest gauge pressure the piping will work at, 0 to 500 000 [Pa]
    least : p_l, gauge pressure below which no test counts, 0 to 100 000 [Pa]

    Returns
    -------
    p, least test pressure, gauge [Pa]

    Source: International Fuel Gas Code 2015, 406.4.1, where no test counts below 3 psi; NFPA 54.

    >>> code_test_pressure(50e3, 20e3)
    75000.0
    """
    return maximum(1.5 * working_pressure, least)


@formula
def code_test_time(volume: Number) -> Number:
    """Least time of a test on new piping: half an hour for each 500 cubic feet, or part of them.

    t = 600 if V < 0.283168 else min(1800 ceil(V / 14.1584), 86400)

    Parameters
    ----------
    volume : V, of the pipe, 0.0001 to 1000 [m3]

    Returns
    -------
    t, least time, 10 minutes below 10 cubic feet, never above 24 hours [s]

    Source: International Fuel Gas Code, 406.4.2; NFPA 54, 8.1.4.3 (from memory).

    >>> code_test_time(0.1), code_test_time(20.0)
    (600.0, 3600.0)
    """
    return where(volume < SMALL_PIPE, 600.0, minimum(1800.0 * ceil(volume / PIPE_STEP), 86400.0))


@formula
def largest_gauge_range(test_pressure: Number) -> Number:
    """Largest range of a dial gauge that is fine enough to read a test.

    p_g = 5 p

    Parameters
    ----------
    test_pressure : p, gauge pressure of the test, 0 to 700 000 [Pa]

    Returns
    -------
    p_g, largest end of the gauge's scale [Pa]

    Source: International Fuel Gas Code, 406.4; NFPA 54 (from memory).

    >>> largest_gauge_range(20e3)
    100000.0
    """
    return 5 * test_pressure
