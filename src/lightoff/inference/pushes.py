"""What speaks for a cause: readings that stand off the way it would push them.

A cause pushes readings in one direction, by a size nobody knows exactly: a few normal numbers, each
with its share. Everything is linear about a fit, so what readings say of that size is a normal
curve, and how much likelier they are with the cause than without a closed formula: the integral of
two normal curves.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple


class Size(NamedTuple):
    """How large a cause may be: one normal number, with its share of all cases."""

    share: float
    mean: float
    spread: float


class Told(NamedTuple):
    """What readings say of a size: their likelihood is exp(pull s - firm s^2 / 2) of no cause's."""

    pull: float = 0.0
    firm: float = 0.0


class Found(NamedTuple):
    """A size as readings leave it, with its standard uncertainty."""

    size: float
    u: float


def between(low: float, high: float, many: int = 3, share: float = 1.0) -> tuple[Size, ...]:
    """Sizes from `low` to `high`, none likelier than another."""
    step = (high - low) / many
    return tuple(Size(share / many, low + step * (i + 0.5), abs(step) / 2) for i in range(many))


def either_way(low: float, high: float, many: int = 2) -> tuple[Size, ...]:
    """The same, as likely less as more."""
    return (*between(low, high, many, 0.5), *between(-high, -low, many, 0.5))


def log_odds(told: Told, sizes: Sequence[Size]) -> float:
    """Logarithm of how much likelier the readings are with the cause than without."""
    return log_sum([_log_share(told, each) for each in sizes])


def found(told: Told, sizes: Sequence[Size]) -> Found:
    """The size, with what was known of it before."""
    logs = [_log_share(told, each) for each in sizes]
    shares = [math.exp(each - max(logs)) for each in logs]
    whole, parts = math.fsum(shares), [_one(told, each) for each in sizes]
    mean = math.fsum(w * p.size for w, p in zip(shares, parts, strict=True)) / whole
    squares = (w * (p.u**2 + (p.size - mean) ** 2) for w, p in zip(shares, parts, strict=True))
    return Found(mean, math.sqrt(math.fsum(squares) / whole))


def log_sum(logs: Sequence[float]) -> float:
    """Logarithm of the sum of numbers told by their logarithms."""
    top = max(logs)
    return top + math.log(math.fsum(math.exp(each - top) for each in logs))


def _log_share(told: Told, size: Size) -> float:
    p, q, m, v = *told, size.mean, size.spread**2
    wide = 1 + q * v
    return (
        math.log(size.share) - math.log(wide) / 2 + (2 * p * m - q * m * m + v * p * p) / (2 * wide)
    )


def _one(told: Told, size: Size) -> Found:
    v = size.spread**2
    wide = 1 + told.firm * v
    return Found((size.mean + told.pull * v) / wide, math.sqrt(v / wide))
