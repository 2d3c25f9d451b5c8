"""Every formula, and numbers from the ranges its own docstring gives."""

from collections.abc import Callable
from typing import Any

import numpy as np

from lightoff.formula import Description, describe
from lightoff.physics.catalogue import TOPICS, formulas

Formula = Callable[..., Any]

FORMULAS: list[Formula] = [each for topic in TOPICS for each in formulas(topic)]
# those of numbers alone: a gas composition has no range to draw from
NUMERIC = [each for each in FORMULAS if all(q.range is not None for q in describe(each).inputs)]


def name_of(formula: Formula) -> str:
    """How a test is called after its formula."""
    return f"{formula.__module__.rpartition('.')[2]}.{formula.__name__}"


def drawn(told: Description, size: int, seed: int = 5) -> dict[str, np.ndarray]:
    """Inputs from inside the formula's ranges; numbers of things stay whole."""
    rng = np.random.default_rng(seed)
    return {q.name: rng.uniform(*q.range, size) for q in told.inputs if q.range}


def middle(told: Description) -> dict[str, float]:
    """The middle of every range."""
    return {q.name: sum(q.range) / 2 for q in told.inputs if q.range}


def parts(result: Any) -> tuple[Any, ...]:
    """One result or several."""
    return result if isinstance(result, tuple) else (result,)
