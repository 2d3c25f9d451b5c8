"""Straight lines whose fit is certified; curves are in published/nist."""

import math
from typing import Any

from lightoff.inference.least_squares import Fit, fit
from published.cases import Given, Method


def line(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """Through the origin, or with an intercept and several slopes."""
    several = [given[name] for name in sorted(given) if name != "y"]
    columns = several if len(several) == 1 else [[1.0] * len(given["y"]), *several]
    rows = list(zip(*columns, strict=True))
    found = told(
        fit(
            lambda b: [y - math.fsum(map(math.prod, zip(b, row, strict=True)))
                       for y, row in zip(given["y"], rows, strict=True)],
            [0.0] * len(columns),
            slopes=lambda _b: [[-x for x in row] for row in rows],
        )
    )  # fmt: skip
    return {**found, "b": found["b"] if len(columns) > 1 else found["b"][0],
            "sd_b": found["sd_b"] if len(columns) > 1 else found["sd_b"][0]}  # fmt: skip


def told(found: Fit) -> dict[str, Any]:
    spread = math.sqrt(found.sum_of_squares / found.degrees_of_freedom)
    return {
        "b": list(found.values),
        "sd_b": [found.u(i) * spread for i in range(len(found.values))],
        "rss": found.sum_of_squares,
        "rsd": spread,
    }


def thermometer(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """GUM H.3: a calibration line about 20 degC, and the correction it gives at 30 degC."""
    above = [t - given["t0"] for t in given["t"]]
    b = [each - 273.15 for each in given["b"]]
    found = fit(
        lambda y: [y[0] + y[1] * t - each for t, each in zip(above, b, strict=True)], [0.0, 0.0]
    )
    s2 = found.sum_of_squares / found.degrees_of_freedom
    (y1, y2), u1, u2 = found.values, found.u(0), found.u(1)
    shared = found.covariance(0, 1)
    at = 303.15 - given["t0"]
    variance = found.covariance(0, 0) + 2 * at * shared + at**2 * found.covariance(1, 1)
    return {
        "y1": y1 + 273.15,
        "u_y1": u1 * s2**0.5 + 273.15,
        "y2": y2,
        "u_y2": u2 * s2**0.5,
        "r": shared / (u1 * u2),
        "b30": y1 + y2 * at + 273.15,
        "u_b30": (variance * s2) ** 0.5 + 273.15,
        "ssr": found.sum_of_squares,
    }


METHODS: tuple[tuple[str, Method], ...] = (
    (r"un-strd-(noint1|noint2|longley)", line),
    (r"un-gum-h3", thermometer),
)
