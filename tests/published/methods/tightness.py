"""Pressure decay."""

from typing import Any

from lightoff.physics.tightness import temperature_corrected_drop
from published.cases import Given, Method


def warmed_pipe(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """The end pressure at which nothing has leaked."""
    start, ratio = given["p1"] + given["p_atm"], given["t2"] / given["t1"]
    end = start * ratio - given["p_atm"]
    left = temperature_corrected_drop(
        start=given["p1"],
        end=end,
        start_temperature=given["t1"],
        end_temperature=given["t2"],
        barometer=given["p_atm"],
    )
    assert abs(left) < 1e-6
    return {"p2": end, "dp": end - given["p1"]}


METHODS: tuple[tuple[str, Method], ...] = ((r"ti-temp-.*", warmed_pipe),)
