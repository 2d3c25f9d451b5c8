"""One reading made wrong by as much as the visit says it would notice."""

from random import Random
from typing import NamedTuple

from lightoff.inference.arrays import Arrays
from lightoff.inference.estimate import Estimate
from lightoff.inference.reconcile import Reconciled, Taken, reconcile
from lightoff.inference.reliability import noncentrality
from lightoff.inference.suspects import level
from lightoff.judgement.pointed import UNCHECKED


class Gross(NamedTuple):
    """What became of one gross error: whether anything was suspected, and whether the right one.

    `first`: the right reading, or a group with it, was the worst; `named`: it was among them.
    """

    point: str
    run: str
    flagged: bool
    first: bool
    named: bool


def gross(found: Reconciled, rng: Random, times: float = 1.0) -> Gross | None:
    """An error `times` the detectable bias in a reading drawn from those that others check.

    None where nothing is checked, or where the visit raised an alarm without any error.
    """
    posterior, n = found.posterior, len(found.taken)
    checked = [i for i in range(n) if posterior.redundancy(i) >= UNCHECKED]
    if not checked or found.suspects:
        return None
    place = rng.choice(checked)
    bias = times * noncentrality(level(n)) / posterior.checked(place) ** 0.5
    wrong = list(found.taken)
    wrong[place] = _off(wrong[place], rng.choice((-bias, bias)))
    try:
        told = reconcile(found.model.rated, wrong, algebra=Arrays())
        groups = [[told.taken[i].place for i in each.readings] for each in told.suspects]
    except ArithmeticError:
        groups = []  # no machine reads like this: nothing is told, so nothing is flagged
    right = found.taken[place]
    hit = [right.place in group for group in groups]
    return Gross(right.point, right.run, bool(groups), hit[:1] == [True], any(hit))


def _off(taken: Taken, bias: float) -> Taken:
    """The other way where the error would leave a reading that nobody would write down."""
    value = taken.estimate.value
    there = value + bias
    if value * there < 0:
        there = value - bias
    return taken._replace(estimate=Estimate(there, taken.estimate.parts))
