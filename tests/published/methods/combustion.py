"""Combustion."""

from typing import Any

from lightoff.physics import combustion
from published.cases import Given, Method


def air_free(given: Given, _: dict[str, str]) -> dict[str, Any]:
    if "CO2" in given:
        return {
            "CO_af": combustion.air_free_from_co2(given["CO"], given["CO2"], given["CO2_ultimate"])
        }
    return {"CO_af": combustion.air_free_from_o2(given["CO"], given["O2"])}


METHODS: tuple[tuple[str, Method], ...] = ((r"co-airfree-.*", air_free),)
