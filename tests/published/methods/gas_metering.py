"""Clocking a meter."""

from typing import Any

from lightoff.physics.constants import GAS_BASE_PRESSURE
from lightoff.physics.meter import base_volume_factor, metered_input
from published.cases import Given, Method


def clocking(given: Given, _: dict[str, str]) -> dict[str, Any]:
    factor = 1.0
    if "p_meter" in given:
        # the case's own base pressure instead of 30 inHg
        absolute = given["p_meter"] + given["p_atm"]
        base = GAS_BASE_PRESSURE
        factor = base_volume_factor(absolute * base / given["p_base"], given["t_gas"])
    flow = given["V"] / given["t"]
    out: dict[str, Any] = {"Q": flow, "Q_ft3": flow, "factor": factor}
    if "Hg" in given:
        out["input"] = metered_input(
            volume=given["V"], seconds=given["t"], heating_value=given["Hg"], factor=factor
        )
    return out


METHODS: tuple[tuple[str, Method], ...] = ((r"me-.*", clocking),)
