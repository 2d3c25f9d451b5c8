"""Uncertainty."""

from typing import Any

from lightoff.inference.estimate import RECTANGULAR, Estimate, Part, combine
from published.cases import Given, Method


def rectangle(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"u": given["a"] * RECTANGULAR}


def resolution(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"u": given["step"] / 2 * RECTANGULAR}


def roots(given: Given, _: dict[str, str]) -> dict[str, Any]:
    speed = combine(lambda p: p**0.5, Estimate(1.0, {Part("pv", "x"): given["u_pv"]}))
    power = combine(lambda n: n**3, Estimate(1.0, {Part("N", "x"): given["u_N"]}))
    return {"u_V": round(speed.u, 4), "u_P": round(power.u, 4)}


def end_gauge(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """GUM H.1: l = ls + d - ls (d_alpha theta + alpha_s d_theta), first order as printed."""
    difference = {
        Part("d0", "d"): given["u_d0"], Part("d1", "d"): given["u_d1"],
        Part("d2", "d"): given["u_d2"],
    }  # fmt: skip
    length = combine(
        lambda ls, d, da, dt: ls + d - ls * (da * given["theta"] + given["alpha_s"] * dt),
        Estimate(given["l_s"], {Part("calibration", "ls"): given["u_ls"]}),
        Estimate(given["d"], difference),
        Estimate(0.0, {Part("expansion", "d_alpha"): given["a_d_alpha"] * RECTANGULAR}),
        Estimate(0.0, {Part("temperature", "d_theta"): given["a_d_theta"] * RECTANGULAR}),
    )
    return {"l": length.value, "u_l": length.u}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"un-type-b-rect", rectangle),
    (r"un-resolution", resolution),
    (r"un-sqrt", roots),
    (r"un-gum-h1", end_gauge),
)
