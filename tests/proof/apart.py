"""The same question put to many seeds, on both cores; no answer hangs on which core gave it."""

import os
import warnings
from collections.abc import Callable, Sequence
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from typing import TypeVar

Asked = TypeVar("Asked")
Found = TypeVar("Found")
CORES = 2


def each(question: Callable[[Asked], Found], of: Sequence[Asked], at_once: int) -> list[Found]:
    """Every answer, in the order asked; so many questions go to a core at a time."""
    os.environ["OPENBLAS_NUM_THREADS"] = "1"  # or the cores fight over matrices of 30 rows
    context = get_context("spawn")
    with ProcessPoolExecutor(CORES, mp_context=context, initializer=_strict) as pool:
        return list(pool.map(question, of, chunksize=at_once))


def _strict() -> None:
    """A warning is a fault, here as in every test."""
    warnings.simplefilter("error")
