"""All readings of a visit speak together: the state of the machine that explains them best."""

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from lightoff.inference.algebra import Algebra, Lists
from lightoff.inference.estimate import Estimate, Part
from lightoff.inference.posterior import Posterior, Quantity
from lightoff.inference.solver import Readings, Solution, State, solve
from lightoff.inference.visit_model import Block, VisitModel, block
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.unknown import Unknown
from lightoff.machine.model.unknowns import unknowns

MOST_STEPS = 30
DAMPING = 1e-9  # [1] of the first step: what is known before holds it already
STILL = 1e-3  # of an unknown's spread: a step as short as this changes nothing anybody reads
LEAST_OWN = 0.1  # [1] of a reading's uncertainty is no other's: nothing repeats for ever
SEEN = 1e-4  # [1] of a column that must stand out of the others for its unknown to be free


class Taken(NamedTuple):
    """One reading the model knows: where and in what run, its estimate with its parts."""

    run: str
    point: str
    estimate: Estimate
    place: str


@dataclass(frozen=True)
class Reconciled:
    """The model as all readings leave it."""

    taken: tuple[Taken, ...]
    shared: tuple[Part, ...]
    model: VisitModel
    readings: Readings
    solution: Solution

    @cached_property
    def posterior(self) -> Posterior:
        """How far the readings leave everything open."""
        return Posterior(self.solution, self.readings, self.model.error_rows, self.model.algebra)

    @cached_property
    def runs(self) -> tuple[str, ...]:
        """The runs that were read."""
        return tuple(each.run for each in self.model.blocks)

    def quantities(self, run: str) -> dict[str, Quantity]:
        """Every point and derived quantity of a run that was read."""
        if run not in self._quantities:
            self._quantities[run] = self.model.quantities(self.solution.state, run)
        return self._quantities[run]

    @cached_property
    def _quantities(self) -> dict[str, dict[str, Quantity]]:
        return {}

    def estimate(self, name: str, run: str) -> Estimate | None:
        """A quantity with what its uncertainty is made of; None where the model has none."""
        if run not in self.runs or name not in self.quantities(run):
            return None
        quantity = self.quantities(run)[name]
        return Estimate(float(quantity.value), dict(self._parts(quantity)))

    def _parts(self, quantity: Quantity) -> Iterator[tuple[Part, float]]:
        errors = self.posterior.errors(quantity)
        for each, size in zip(self.taken, errors.readings, strict=True):
            yield Part("reading", each.place), size
        known = [Part("known before", each.id) for each in self.model.known]
        yield from zip((*known, *self.shared), errors.common, strict=True)
        for run, own in zip(self.runs, errors.own, strict=True):
            for unknown, size in zip(self.model.wandering, own, strict=True):
                yield Part("from run to run", f"{unknown.id} {run}"), size


def reconcile(
    rated: Rated,
    taken: Iterable[Taken],
    *,
    algebra: Algebra | None = None,
    start: State | None = None,
) -> Reconciled:
    """The most probable unknowns, from readings in any order."""
    order = sorted(taken, key=lambda each: each.run)
    use = algebra or Lists()
    blocks = tuple(_blocks(rated, order))
    shared, errors, u = _errors(order)
    readings = Readings([each.estimate.value for each in order], u, tuple(_groups(blocks)))
    table = unknowns(rated)
    first = VisitModel(rated, (), table, blocks, errors, use)
    free = _free(first)
    known = tuple(each for each in table if each not in free)
    model = VisitModel(rated, free, known, blocks, errors, use, first.found)
    solution = solve(
        model,
        readings,
        start or model.start(),
        apart=lambda before, after: _apart(model, before, after),
        algebra=use,
        damping=DAMPING,
        most_steps=MOST_STEPS,
    )
    return Reconciled(tuple(order), shared, model, readings, solution)


def _apart(model: VisitModel, before: State, after: State) -> float:
    """How far two states are apart, in the step that ends a fit."""
    free = zip(model.free, before.free, after.free, strict=True)
    known = zip(before.common, after.common, strict=True)
    moved = [abs(a - b) / each.spread for each, b, a in free]
    return max([*moved, *(abs(a - b) for b, a in known)], default=0.0) / STILL


def _groups(blocks: Sequence[Block]) -> Iterator[slice]:
    at = 0
    for each in blocks:
        yield slice(at, at + len(each.points))
        at += len(each.points)


def _blocks(rated: Rated, order: Sequence[Taken]) -> Iterator[Block]:
    runs: dict[str, list[str]] = {}
    for each in order:
        runs.setdefault(each.run, []).append(each.point)
    for run, points in runs.items():
        yield block(rated, run, points)


def _errors(
    order: Sequence[Taken],
) -> tuple[tuple[Part, ...], list[list[float]], list[float]]:
    """The errors that readings share, one row of them a reading; and what is each one's own."""
    count = Counter(part for each in order for part in each.estimate.parts)
    shared = tuple(part for part, many in count.items() if many > 1)
    rows, own = [], []
    for each in order:
        parts = each.estimate.parts
        rows.append([parts.get(part, 0.0) for part in shared])
        alone = sum(size**2 for part, size in parts.items() if count[part] == 1) ** 0.5
        least = LEAST_OWN * (each.estimate.u or abs(each.estimate.value) or 1.0)
        own.append(max(alone, least))
    return shared, rows, own


def _free(model: VisitModel) -> tuple[Unknown, ...]:
    """The inspected unknowns that the readings can tell, one after the other as they are listed."""
    slopes = model.slopes_at_start()
    points = [point for each in model.blocks for point in each.points]
    kept: list[Unknown] = []
    basis: list[list[float]] = []
    for column, each in enumerate(model.known):
        if not each.inspected:
            continue
        vector = [row[column] * each.spread for row in slopes]
        whole = sum(x * x for x in vector) ** 0.5
        told = (re.fullmatch(each.inspected, point) for point in points)
        if not any(t and x for t, x in zip(told, vector, strict=True)):
            continue
        for other in basis:
            share = sum(x * y for x, y in zip(vector, other, strict=True))
            vector = [x - share * y for x, y in zip(vector, other, strict=True)]
        left = sum(x * x for x in vector) ** 0.5
        if left > SEEN * whole:
            kept.append(each)
            basis.append([x / left for x in vector])
    return tuple(kept)
