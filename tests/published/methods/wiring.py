"""Conductors."""

from typing import Any

from lightoff.physics import electricity, wiring
from published.cases import Given, Method


def resistance(given: Given, lay: float) -> float:
    area = wiring.wire_area(wiring.awg_diameter(given["awg"]))
    return float(wiring.resistance_at(wiring.wire_resistance(area, lay=lay), given["t"]))


def solid(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"R": resistance(given, wiring.SOLID)}


def stranded(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"R": resistance(given, wiring.STRANDED)}


def definition(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"d": [wiring.awg_diameter(n) for n in given["awg"]]}


def gauge(given: Given, _: dict[str, str]) -> dict[str, Any]:
    diameter = wiring.awg_diameter(given["awg"])
    area = wiring.wire_area(diameter)
    return {"d": diameter, "area": area, "R": resistance(given, wiring.SOLID)}


def warmed(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"R75": wiring.resistance_at(given["R20"], 348.15)}


def drop(given: Given, _: dict[str, str]) -> dict[str, Any]:
    lost = wiring.two_wire_drop(given["L"], given["I"], resistance=given["R"])
    return {"drop": lost, "V_load": wiring.volts_left(given["V"], lost)}


def class_2(_: Given, __: dict[str, str]) -> dict[str, Any]:
    return {"S_max": wiring.CLASS_2_POWER}


def recommended(_: Given, __: dict[str, str]) -> dict[str, Any]:
    return {"branch": electricity.BRANCH_DROP, "total": electricity.TOTAL_DROP}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"wi-nec8-.*-solid", solid),
    (r"wi-nec8-.*-stranded", stranded),
    (r"wi-awg-def", definition),
    (r"wi-awg-.*", gauge),
    (r"wi-temp", warmed),
    (r"wi-drop-.*", drop),
    (r"wi-class2", class_2),
    (r"wi-rules", recommended),
)
