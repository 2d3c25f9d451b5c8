"""Conformity under uncertainty."""

from typing import Any

from lightoff.inference.conformity import CONFIDENT, probability_within
from published.cases import Given, Method


def probability(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"pc": probability_within(given["y"], given["u"], given.get("TL"), given.get("TU"))}


def one_sided(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"pc": probability_within(0.0, 1.0, None, given["z"])}


def two_sided(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"pc": [probability_within(0.0, 1.0, -t, t) for t in given["T_over_u"]]}


def guard_band(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """The guard band is where the probability of conformity reaches the confidence asked for."""
    low, high = 0.0, 5 * given["u"]
    for _step in range(60):
        middle = (low + high) / 2
        enough = probability_within(-middle, given["u"], None, 0.0) >= CONFIDENT
        low, high = (low, middle) if enough else (middle, high)
    return {"w": high}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"cf-106-.*", probability),
    (r"cf-pc-.*", one_sided),
    (r"cf-two-sided-mid", two_sided),
    (r"cf-guard-95", guard_band),
)
