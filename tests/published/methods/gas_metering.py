"""Clocking a meter."""

from typing import Any

from lightoff.physics import (
    gas_input,
    meter,
)
from lightoff.physics.constants import GAS_BASE_PRESSURE
from lightoff.quantity import si
from published.cases import Given, Method


def clocking(given: Given, _: dict[str, str]) -> dict[str, Any]:
    factor = 1.0
    if "p_meter" in given:
        # the case's own base pressure instead of 30 inHg
        absolute = meter.absolute_pressure(given["p_meter"], given["p_atm"])
        base = GAS_BASE_PRESSURE
        factor = meter.base_volume_factor(absolute * base / given["p_base"], given["t_gas"])
    flow = meter.metered_flow(given["V"], given["t"])
    out: dict[str, Any] = {"Q": flow, "Q_ft3": flow, "factor": factor}
    if "Hg" in given:
        out["input"] = gas_input.flow_input(flow, heating_value=given["Hg"], factor=factor)
    return out


def inches_of_water(_: Given, __: dict[str, str]) -> dict[str, Any]:
    return {"n_4C": si(1, "psi") / si(1, "inwc")}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"me-inwc", inches_of_water),
    (r"me-.*", clocking),
)
