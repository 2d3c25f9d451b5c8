"""Pressure decay and the rules of a test."""

from typing import Any

from lightoff.physics.meter import absolute_pressure
from lightoff.physics.tightness import (
    LEAST_TEST_PRESSURE,
    code_test_pressure,
    code_test_time,
    largest_gauge_range,
    leak_rate,
    pressure_per_degree,
    temperature_corrected_drop,
    tight_end_pressure,
)
from published.cases import Given, Method
from published.units import CODE_INCH, INCH_60F, PSI

SEVENTY_F = 529.67 * 5 / 9
BASE_PRESSURE, BASE_TEMPERATURE = 14.73 * PSI, 519.67 * 5 / 9


def warmed_pipe(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """The end pressure at which nothing has leaked."""
    air = {"barometer": given["p_atm"]}
    test = {"start_temperature": given["t1"], "end_temperature": given["t2"]}
    end = tight_end_pressure(given["p1"], **test, **air, end_barometer=given["p_atm"])
    left = temperature_corrected_drop(start=given["p1"], end=end, **test, **air)
    assert abs(left) < 1e-6
    return {"p2": end, "dp": end - given["p1"]}


def per_degree(given: Given, _: dict[str, str]) -> dict[str, Any]:
    absolute = [absolute_pressure(gauge, given["p_atm"]) for gauge in given["p"]]
    return {"dp": [pressure_per_degree(each, SEVENTY_F) for each in absolute]}


def leak(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """The case counts 27.7 in. w.c. to the psi."""
    start, end = (given[name] / INCH_60F * CODE_INCH for name in ("p1", "p2"))
    drop = temperature_corrected_drop(
        start=start,
        end=end,
        start_temperature=given["t1"],
        end_temperature=given["t2"],
        barometer=given["p_atm"],
    )
    rate = leak_rate(
        drop,
        given["V"],
        seconds=given["duration"],
        temperature=given["t1"],
        base_pressure=BASE_PRESSURE,
        base_temperature=BASE_TEMPERATURE,
    )
    return {"Q": rate}


def rule_pressure(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"p_test": [code_test_pressure(each, LEAST_TEST_PRESSURE) for each in given["p_work"]]}


def rule_time(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"minutes": [code_test_time(each) for each in given["V"]]}


def rule_gauge(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"range_max": largest_gauge_range(given["p_test"])}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"ti-temp-.*", warmed_pipe),
    (r"ti-per-degree", per_degree),
    (r"ti-leak-.*", leak),
    (r"ti-ifgc-pressure", rule_pressure),
    (r"ti-ifgc-duration", rule_time),
    (r"ti-manometer-range", rule_gauge),
)
