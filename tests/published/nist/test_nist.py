"""The solver against certified answers: all 27 nonlinear regression problems of NIST.

Each file holds one problem of the Statistical Reference Datasets, figures as in NIST's own file (as
the lmfit 1.3.4 source distribution ships it; six were compared with another stored copy). NIST
certifies 11 digits; the start is the second, nearer one. Slopes are exact: nothing is differenced.
"""

import math
import tomllib
from collections.abc import Iterable, Sequence
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest

from lightoff.formula.dual import Dual, slopes_of
from lightoff.inference.least_squares import Fit, fit
from published.nist.models import MODELS

DIGITS = 6  # of the 11 certified
# Lanczos1 is made to 14 digits: what is left of its readings, 8e-14, stands against readings of up
# to 2.5, where floats lie 4e-16 apart. Two digits are all that such residuals have, and their sum
# of squares, and the standard deviations that are measured by it.
DIGITS_OF_RESIDUALS = {"Lanczos1": 2}

Problem = dict[str, Any]
PROBLEMS: list[Problem] = [
    tomllib.loads(path.read_text("utf-8")) for path in sorted(Path(__file__).parent.glob("*.toml"))
]
each_problem = pytest.mark.parametrize(
    "problem", [pytest.param(each, id=f"{each['name']}-{each['level']}") for each in PROBLEMS]
)


def observed(problem: Problem) -> tuple[list[float], list[Any]]:
    """What the model is of, and the predictor, or several side by side."""
    y, *predictors = problem["observations"].values()
    if problem["model"].startswith("log[y]"):
        y = [math.log(each) for each in y]
    return y, predictors[0] if len(predictors) == 1 else list(zip(*predictors, strict=True))


@lru_cache
def fitted(name: str) -> Fit:
    """The project's own answer."""
    problem, model = next(each for each in PROBLEMS if each["name"] == name), MODELS[name]
    y, x = observed(problem)

    def residuals(b: list[float]) -> list[float]:
        return [model(b, at) - read for at, read in zip(x, y, strict=True)]

    def slopes(b: list[float]) -> list[list[float]]:
        n = len(b)
        moving = [Dual(value, [float(i == j) for j in range(n)]) for i, value in enumerate(b)]
        return [list(slopes_of(model(moving, at), n)) for at in x]

    return fit(residuals, problem["start_2"], slopes=slopes)


def digits(found: Iterable[float], certified: Sequence[float]) -> float:
    """How many digits agree where fewest do: the log relative error, by its usual name."""
    off = max(abs(a - c) / abs(c) for a, c in zip(found, certified, strict=True))
    return -math.log10(off) if off else math.inf


@each_problem
def test_every_parameter_is_the_certified_one(problem: Problem) -> None:
    found = fitted(problem["name"])
    assert found.converged
    assert digits(found.values, problem["certified"]["parameters"]) >= DIGITS


@each_problem
def test_every_standard_deviation_is_the_certified_one(problem: Problem) -> None:
    found = fitted(problem["name"])
    spread = math.sqrt(found.sum_of_squares / found.degrees_of_freedom)
    deviations = [found.u(i) * spread for i in range(len(found.values))]
    wanted = DIGITS_OF_RESIDUALS.get(problem["name"], DIGITS)
    assert digits(deviations, problem["certified"]["standard_deviations"]) >= wanted


@each_problem
def test_the_residual_sum_of_squares_is_the_certified_one(problem: Problem) -> None:
    found = fitted(problem["name"])
    wanted = DIGITS_OF_RESIDUALS.get(problem["name"], DIGITS)
    certified = problem["certified"]["residual_sum_of_squares"]
    assert digits([found.sum_of_squares], [certified]) >= wanted


@each_problem
def test_the_file_agrees_with_itself(problem: Problem) -> None:
    certified = problem["certified"]
    columns = problem["observations"].values()
    (rows,) = {len(column) for column in columns}
    freedom = rows - len(certified["parameters"])
    spread = certified["residual_standard_deviation"]
    assert digits([spread**2 * freedom], [certified["residual_sum_of_squares"]]) >= 9


def test_no_problem_is_left_out() -> None:
    assert sorted(each["name"] for each in PROBLEMS) == sorted(MODELS)
    assert len(PROBLEMS) == 27
