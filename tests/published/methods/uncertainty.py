"""Uncertainty."""

import math
from typing import Any

from lightoff.inference.conformity import probability_within
from lightoff.inference.estimate import RECTANGULAR, Estimate, Part, combine
from published.cases import Given, Method, cases
from published.methods import regression
from published.methods.conformity import distance


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


def shapes(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"u_rect": given["a"] * RECTANGULAR}


def coverage(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"p": [probability_within(0.0, 1.0, -k, k) for k in given["k"]]}


def certificate(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """The standard uncertainty whose interval holds the truth with the probability stated."""
    return {"u": given["U"] / distance((1 + given["p"]) / 2)}


def impedance(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """GUM H.2: three quantities read together five times, so that their means move together."""
    volts, amps, phase = (mean_with_parts(given[name]) for name in ("V", "I", "phi"))
    R = combine(lambda v, i, phi: v / i * math.cos(phi), volts, amps, phase)
    X = combine(lambda v, i, phi: v / i * math.sin(phi), volts, amps, phase)
    Z = combine(lambda v, i: v / i, volts, amps)
    values = {"R": R.value, "X": X.value, "Z": Z.value, "u_R": R.u, "u_X": X.u, "u_Z": Z.u}
    together = {"r_RX": moves_with(R, X), "r_RZ": moves_with(R, Z), "r_XZ": moves_with(X, Z)}
    return {**values, **together}


def mean_with_parts(readings: list[float]) -> Estimate:
    """The mean of readings; each of them is a part that others taken with it share."""
    n = len(readings)
    mean = sum(readings) / n
    scale = (n * (n - 1)) ** 0.5
    return Estimate(mean, {Part("reading", str(k)): (x - mean) / scale
                           for k, x in enumerate(readings)})  # fmt: skip


def moves_with(one: Estimate, other: Estimate) -> float:
    """Correlation of two estimates, from the parts they share."""
    shared = sum(size * other.parts.get(part, 0.0) for part, size in one.parts.items())
    return shared / (one.u * other.u)


def correlations(_: Given, __: dict[str, str]) -> dict[str, Any]:
    case = next(each for each in cases() if each.id == "un-gum-h2")
    return impedance(case.in_si(), {})


METHODS: tuple[tuple[str, Method], ...] = (
    (r"un-type-b-rect", rectangle),
    (r"un-resolution", resolution),
    (r"un-sqrt", roots),
    (r"un-gum-h1", end_gauge),
    (r"un-shapes", shapes),
    (r"un-coverage", coverage),
    (r"un-type-b-normal", certificate),
    (r"un-gum-h2", impedance),
    (r"un-gum-h2-corr", correlations),
    *regression.METHODS,
)
