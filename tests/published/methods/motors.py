"""Motors."""

from typing import Any

from lightoff.physics import electricity
from published.cases import Given, Method


def unbalance(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {
        "unbalance": electricity.unbalance(*given["V"]),
        "mean": sum(given["V"]) / len(given["V"]),
    }


def derating(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"factor": [electricity.unbalance_derating(u) for u in given["unbalance"]]}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"mo-unbalance-.*", unbalance),
    (r"mo-derating", derating),
)
