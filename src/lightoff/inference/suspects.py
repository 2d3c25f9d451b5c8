"""Readings that do not fit: which one, and which others it can't be told apart from.

Leave-one-out statistics at a level shared by all readings of a visit. The reading that stands off
most is taken out first, with those whose errors look just alike, and the rest is looked at again: a
gross error makes good readings stand off too. Readings of one make, as the three leads of a motor,
may be wrong together, and then speak for each other: they are looked at as one too.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lightoff.inference.posterior import Posterior
from lightoff.inference.reliability import chi_square_above, critical

LEVEL = 0.02  # [1] chance that any good reading of a visit is suspected
ALIKE = 0.90  # [1] correlation from which on nothing tells whose error it is
GROUP = 3  # readings named together at most
NOTHING = 1e-6  # [1] of a reading's own weight: what is left of it tells nothing of its own
MOST = 4  # groups; a visit with more is wrong as a whole


@dataclass(frozen=True)
class Suspect:
    """One reading, or a few of which one is wrong, by their places among the readings.

    `off` is how far the first stands from what all others foretell [its unit], `statistic` the same
    in standard uncertainties. Where `every`, it is not one of the few: all of them are wrong.
    """

    readings: tuple[int, ...]
    off: float
    statistic: float
    every: bool = False


def level(readings: int) -> float:
    """Chance that one good reading of so many is suspected [1]."""
    return LEVEL / max(readings, 1)


def suspects(posterior: Posterior, alike: Sequence[tuple[int, ...]] = ()) -> tuple[Suspect, ...]:
    """The suspects of a fit, the worst first; `alike` are readings that may be wrong together."""
    n = len(posterior.readings.values)
    weights = [[posterior.weight(i, j) for j in range(n)] for i in range(n)]
    pull = list(posterior.solution.pull)
    checked = {i for i in range(n) if posterior.checked(i) > 0}
    found: list[Suspect] = []
    while checked and len(found) < MOST:
        size = {i: abs(pull[i]) / weights[i][i] ** 0.5 for i in checked if weights[i][i] > 0}
        there = [each for each in alike if all(i in size for i in each)]
        standing_off = [
            *_alone(size, weights, pull, level(n)),
            *_together(there, size, weights, pull, level(n)),
        ]
        if not standing_off:
            break
        found.append(max(standing_off, key=lambda each: each.statistic))
        checked -= set(found[-1].readings)
        for each in found[-1].readings:
            _leave_out(each, weights, pull)
    return tuple(found)


def _alone(
    size: dict[int, float], weights: list[list[float]], pull: list[float], chance: float
) -> Iterator[Suspect]:
    """What stands off most, if by more than chance, with those it can't be told from."""
    worst, limit = max(size, key=lambda i: size[i], default=None), critical(chance)
    if worst is not None and size[worst] > limit:
        group = _group(worst, size, weights, limit)
        yield Suspect(group, pull[worst] / weights[worst][worst], size[worst])


def _together(
    alike: Sequence[tuple[int, ...]],
    size: dict[int, float],
    weights: list[list[float]],
    pull: list[float],
    chance: float,
) -> Iterator[Suspect]:
    """Those that stand off together by more than the worst of them does alone.

    With Baarda's generalised statistic: the sum of squares that leaving all of them out takes away.
    """
    for group in alike:
        order = tuple(sorted(group, key=lambda i: -size[i]))
        first, *more = _squares(order, weights, pull)
        beyond = math.fsum(more)
        if more and chi_square_above(first + beyond - size[order[0]] ** 2, len(more)) < chance:
            off = pull[order[0]] / weights[order[0]][order[0]]
            yield Suspect(order, off, math.sqrt(first + beyond), every=True)


def _squares(
    order: Sequence[int], weights: list[list[float]], pull: list[float]
) -> Iterator[float]:
    """What leaving out each after the others takes away; of those that still say anything."""
    inside = [[weights[i][j] for j in order] for i in order]
    left = [pull[i] for i in order]
    for k, i in enumerate(order):
        if inside[k][k] > NOTHING * weights[i][i]:
            yield left[k] ** 2 / inside[k][k]
            _leave_out(k, inside, left)


def _group(
    worst: int, size: dict[int, float], weights: list[list[float]], limit: float
) -> tuple[int, ...]:
    """The worst reading and those that stand off with it and can't be told from it."""
    alike = []
    for i in size:
        whole = (weights[i][i] * weights[worst][worst]) ** 0.5
        if i != worst and abs(weights[i][worst]) > ALIKE * whole and size[i] > limit:
            alike.append(i)
    alike.sort(key=lambda i: -size[i])
    return (worst, *alike[: GROUP - 1])


def _leave_out(reading: int, weights: list[list[float]], pull: list[float]) -> None:
    """Everything as if this reading had not been taken."""
    row = list(weights[reading])
    own = row[reading]
    if own <= 0:
        return
    share = pull[reading] / own
    for i, weight in enumerate(row):
        pull[i] -= weight * share
        weights[i] = [w - weight * r / own for w, r in zip(weights[i], row, strict=True)]
    weights[reading] = [0.0] * len(row)
