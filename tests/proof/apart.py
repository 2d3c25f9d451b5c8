"""The same question put to many seeds, on both cores; no answer hangs on which core gave it."""

import os
import warnings
from collections.abc import Callable, Iterable
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context
from typing import TypeVar

Asked = TypeVar("Asked")
Found = TypeVar("Found")
CORES = 2
AT_ONCE = 10  # questions handed over together


def each(question: Callable[[Asked], Found], of: Iterable[Asked]) -> list[Found]:
    """Every answer, in the order asked."""
    os.environ["OPENBLAS_NUM_THREADS"] = "1"  # or the cores fight over matrices of 30 rows
    context = get_context("spawn")
    with ProcessPoolExecutor(CORES, mp_context=context, initializer=_strict) as pool:
        return list(pool.map(question, of, chunksize=AT_ONCE))


def _strict() -> None:
    """A warning is a fault, here as in every test."""
    warnings.simplefilter("error")
