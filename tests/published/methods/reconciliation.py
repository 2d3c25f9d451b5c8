"""Readings that check each other."""

import json
import math
from typing import Any

from lightoff.inference.least_squares import Fit, fit
from lightoff.inference.reliability import (
    chi_square_above,
    critical,
    detectable_bias,
    noncentrality,
)
from published.cases import Given, Method


def balances(given: Given, label: dict[str, str]) -> dict[str, Any]:
    """Streams in balance: the free ones are the unknowns, and every stream a reading of them."""
    matrix: list[list[float]] = json.loads(label["A"])
    sigma = given.get("sigma") or [v**0.5 for v in given["variance"]]
    rows = streams(matrix)

    def predicted(free: list[float]) -> list[float]:
        return [math.fsum(a * x for a, x in zip(row, free, strict=True)) for row in rows]

    def residuals(free: list[float]) -> list[float]:
        pairs = zip(given["x"], predicted(free), sigma, strict=True)
        return [(read - true) / u for read, true, u in pairs]

    found = fit(residuals, [0.0] * len(rows[0]))
    redundancy = [1 - each for each in found.leverages]
    return {
        "x_hat": predicted(list(found.values)),
        "residual": [math.fsum(a * x for a, x in zip(row, given["x"], strict=True))
                     for row in matrix],
        "gamma": found.sum_of_squares,
        "dof": found.degrees_of_freedom,
        "redundancy": redundancy,
        "w": [r / q**0.5 for r, q in zip(found.residuals, redundancy, strict=True)],
    }  # fmt: skip


def streams(matrix: list[list[float]]) -> list[list[float]]:
    """Every stream as a mixture of the free ones, by elimination."""
    rows = [list(map(float, row)) for row in matrix]
    bound: list[int] = []
    for row in rows:
        pivot = next(j for j, x in enumerate(row) if x and j not in bound)
        row[:] = [x / row[pivot] for x in row]
        for other in rows:
            if other is not row:
                other[:] = [o - other[pivot] * x for o, x in zip(other, row, strict=True)]
        bound.append(pivot)
    free = [j for j in range(len(matrix[0])) if j not in bound]
    return [
        [-rows[bound.index(j)][k] for k in free] if j in bound else [float(j == k) for k in free]
        for j in range(len(matrix[0]))
    ]


def weighted_mean(given: Given, _: dict[str, str]) -> dict[str, Any]:
    found: Fit = fit(
        lambda mean: [(x - mean[0]) / u for x, u in zip(given["x"], given["u"], strict=True)], [0.0]
    )
    return {"mean": found.values[0], "u": found.u(0), "chi2": found.sum_of_squares}


def baarda(given: Given, _: dict[str, str]) -> dict[str, Any]:
    found = noncentrality(given["alpha"], given["power"])
    return {"delta0": found, "lambda0": found**2}


def suspected(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"k": [critical(each) for each in given["alpha"]]}


def bias(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"MDB": detectable_bias(given["sigma"], given["r"], given["delta0"])}


def chi_square(given: Given, _: dict[str, str]) -> dict[str, Any]:
    degrees = [round(each) for each in given["nu"]]
    return {
        "chi2_95": [exceeded(0.05, each) for each in degrees],
        "chi2_99": [exceeded(0.01, each) for each in degrees],
    }


def exceeded(chance: float, degrees: int) -> float:
    """By halving: the value that is exceeded with this chance."""
    low, high = 0.0, 200.0
    for _step in range(60):
        middle = (low + high) / 2
        more = chi_square_above(middle, degrees) > chance
        low, high = (middle, high) if more else (low, middle)
    return high


METHODS: tuple[tuple[str, Method], ...] = (
    (r"re-(nj|dovi)-.*", balances),
    (r"re-weighted-mean", weighted_mean),
    (r"be-baarda-.*", baarda),
    (r"be-crit", suspected),
    (r"be-mdb", bias),
    (r"be-chi2", chi_square),
)
