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


def needed_distance(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """How many standard uncertainties from a limit reach each probability."""
    return {"z": [distance(p) for p in given["pc"]]}


def distance(wanted: float) -> float:
    """By halving: the distance from a limit at which the probability of conformity is `wanted`."""
    low, high = 0.0, 10.0
    for _step in range(60):
        middle = (low + high) / 2
        enough = probability_within(middle, 1.0, 0.0, None) >= wanted
        low, high = (low, middle) if enough else (middle, high)
    return high


def worst_false_acceptance(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """A truth at the limit, accepted when the reading is inside by a guard band of w U, U = 2 u."""
    return {"PFA": [probability_within(0.0, 1.0, None, -2 * w) for w in given["w_over_U"]]}


def risks(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """Of a product that scatters by one: accepted though outside, refused though inside."""
    limit, guarded = given["SL"], given["SL"] * given.get("GB", 1.0)
    steps, reach = 4000, 8.0
    accepted_outside = refused_inside = 0.0
    for i in range(steps):
        low, high = (-reach + 2 * reach * k / steps for k in (i, i + 1))
        share = probability_within(0.0, 1.0, low, high)
        truth = (low + high) / 2
        accepted = probability_within(truth, given["sigma_test"], -guarded, guarded)
        if abs(truth) > limit:
            accepted_outside += share * accepted
        else:
            refused_inside += share * (1 - accepted)
    return {"PFA": accepted_outside, "PFR": refused_inside}


def guard_band(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """The guard band is where the probability of conformity reaches the confidence asked for."""
    low, high = 0.0, 5 * given["u"]
    for _step in range(60):
        middle = (low + high) / 2
        enough = probability_within(-middle, given["u"], None, 0.0) >= CONFIDENT
        low, high = (low, middle) if enough else (middle, high)
    return {"w": high}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"cf-106-z", needed_distance),
    (r"cf-106-.*", probability),
    (r"cf-ilac-guard", worst_false_acceptance),
    (r"cf-deaver-.*", risks),
    (r"cf-pc-.*", one_sided),
    (r"cf-two-sided-mid", two_sided),
    (r"cf-guard-95", guard_band),
)
