"""All readings of a visit speak together: the state of the machine that explains them best."""

import re
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Any, NamedTuple

from lightoff.formula.dual import Dual, slopes_of
from lightoff.inference.algebra import Algebra, Lists
from lightoff.inference.estimate import Estimate, Part
from lightoff.inference.looks import Block, block
from lightoff.inference.posterior import Posterior, Quantity, combined
from lightoff.inference.reliability import chi_square_above
from lightoff.inference.solver import Readings, Solution, State, UndeterminedError, solve
from lightoff.inference.suspects import Suspect, suspects
from lightoff.inference.told import Told
from lightoff.inference.visit_model import VisitModel
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.slopes import Moves
from lightoff.machine.model.unknown import Unknown
from lightoff.machine.model.unknowns import unknowns
from lightoff.machine.points import of_any_lead

MOST_STEPS = 30
WARM_STEPS = 10  # from a fit of other readings, which is near or is not
DAMPING = 0.0  # [1] of the first step: what is known before holds it already
STILL = 1e-3  # of an unknown's spread: a step as short as this changes nothing anybody reads
GAIN = 1e-6  # of the sum of squares: a thousandth of a standard uncertainty moves it as little
HARDLY = 0.01  # [1] chance under which one machine hardly explains what was read
LEAST_OWN = 0.1  # [1] of a reading's uncertainty is no other's: nothing repeats for ever
MOST_ALIKE = 3  # readings that may be wrong together
TELLS = 0.5  # of a reading's own uncertainty: what moves it less it does not tell


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

    def u(self, quantity: Quantity) -> float:
        """Standard uncertainty of a quantity, wider where no machine explains all [its unit]."""
        return self.posterior.u(quantity) * self.widened

    def u_of_unknown(self, name: str) -> float:
        """Standard uncertainty of one of the model's unknowns [its unit]."""
        return self.u(self.model.as_quantity(name, self.solution.state))

    @cached_property
    def degrees_of_freedom(self) -> int:
        """How many readings are more than the unknowns that nothing was known of."""
        return len(self.taken) - len(self.model.free)

    @cached_property
    def chance(self) -> float:
        """That readings of one machine stand as far from it as these."""
        degrees = self.degrees_of_freedom
        return chi_square_above(self.solution.objective, degrees) if degrees > 0 else 1.0

    @cached_property
    def widened(self) -> float:
        """How many times larger every uncertainty is: where chance does not explain what is left,
        something has an error larger than it was said to have (Birge 1932, Phys. Rev. 40, 207).
        """
        if self.chance >= HARDLY:
            return 1.0
        return float((self.solution.objective / self.degrees_of_freedom) ** 0.5)

    @cached_property
    def suspects(self) -> tuple[Suspect, ...]:
        """The readings that do not fit, the worst first."""
        return suspects(self.posterior, tuple(_alike(self.taken)))

    @cached_property
    def runs(self) -> tuple[str, ...]:
        """The runs that were read."""
        return tuple(each.run for each in self.model.blocks)

    def names(self, run: str) -> tuple[str, ...]:
        """Every point and derived quantity that the model knows of a run; none where it was not
        read."""
        return tuple(self._moves(run)) if run in self.runs else ()

    def values(self, run: str | None = None) -> dict[str, float]:
        """Every unknown [SI]: as it was in a run that was read, else apart from what it wanders."""
        state = self.solution.state
        if run not in self.runs:
            return self.model.values(state)
        return self.model.values_in(state, self.runs.index(run))

    def _moves(self, run: str) -> dict[str, Moves]:
        if run not in self._moved:
            try:
                self._moved[run] = self.model.shown_in(self.solution.state, run)
            except (ArithmeticError, TypeError, ValueError):  # such as no wet bulb in such weather
                self._moved[run] = {}
        return self._moved[run]

    @cached_property
    def _moved(self) -> dict[str, dict[str, Moves]]:
        return {}

    def told(
        self, *names: tuple[str, str], by: Callable[..., Any] = lambda value: value
    ) -> Told | None:
        """Something of quantities, each named with its run; None where the model has none of them.

        `by` is a formula of as many numbers.
        """
        if not all(run in self.runs and name in self._moves(run) for name, run in names):
            return None
        found = (self.model.quantity(run, self._moves(run)[name]) for name, run in names)
        return self.of(*found, by=by)

    def elsewhere(self, run: str, known: Mapping[str, float]) -> dict[str, Quantity]:
        """Everything of a run on another day; `known` are unknowns that are given for it."""
        return self.model.elsewhere(self.solution.state, run, known)

    def of(self, *quantities: Quantity, by: Callable[..., Any] = lambda value: value) -> Told:
        """A formula of quantities, with its uncertainty."""
        values = [
            Dual(float(each.value), [float(i == j) for j in range(len(quantities))])
            for i, each in enumerate(quantities)
        ]
        found = by(*values)
        slopes = slopes_of(found, len(quantities))
        whole = combined(float(found), list(zip(slopes, quantities, strict=True)))
        plain = self.posterior.u(whole)
        return Told(whole.value, plain * self.widened, lambda: dict(self._parts(whole)), plain)

    def _parts(self, quantity: Quantity) -> Iterator[tuple[Part, float]]:
        errors = self.posterior.errors(quantity)
        for each, size in zip(self.taken, errors.readings, strict=True):
            yield Part("as read", each.place), size
        known = [Part("known before", each.id) for each in self.model.known]
        yield from zip((*known, *self.shared), errors.common, strict=True)
        for run, own in zip(self.runs, errors.own, strict=True):
            for unknown, size in zip(self.model.wandering, own, strict=True):
                yield Part("from run to run", f"{unknown.id} {run}"), size
        yield Part("another day", "unit"), quantity.alone
        more = (self.widened**2 - 1) ** 0.5
        yield Part("unexplained", "unit"), self.posterior.u(quantity) * more


def reconcile(
    rated: Rated,
    taken: Iterable[Taken],
    *,
    algebra: Algebra | None = None,
    near: Reconciled | None = None,
    still: float = STILL,
) -> Reconciled:
    """The most probable unknowns, from readings in any order; `UndeterminedError` without any.

    `near` is a fit of other readings of the same machine: a start that is likely to be near. Where
    no end is found from there, or none that explains the readings, it begins where everything is as
    usual as well: a machine bent to a reading that is not there any more is no good start. `still`,
    of an unknown's spread, is the step that ends the fit.
    """
    order = sorted(taken, key=lambda each: each.run)
    if not order:
        raise UndeterminedError("nothing was read")
    use = algebra or Lists()
    blocks = tuple(_blocks(rated, order))
    shared, errors, u = _errors(order)
    readings = Readings([each.estimate.value for each in order], u, tuple(_groups(blocks)))
    table = unknowns(rated)
    first = VisitModel(rated, table, (), blocks, errors, use)
    first.look_at_start(near.model if near else None)
    model = first.freed(_free(first, u))

    def fitted(model: VisitModel, start: State, most_steps: int) -> Reconciled:
        solution = solve(
            model,
            readings,
            start,
            apart=lambda before, after: _apart(model, before, after) / still,
            algebra=use,
            damping=DAMPING,
            most_steps=most_steps,
            gain=GAIN if still == STILL else 0.0,
        )
        return Reconciled(tuple(order), shared, model, readings, solution)

    if near and near.solution.converged:
        start = _start(model, shared, near)
        model.take_over(start, near.model, near.solution.state)
        found = fitted(model, start, WARM_STEPS)
        if found.solution.converged and found.chance >= HARDLY:
            return found
        usual = first.freed(model.free)
        ends = found, fitted(usual, usual.start(), MOST_STEPS)
        return min(ends, key=lambda end: (not end.solution.converged, end.solution.objective))
    return fitted(model, model.start(), MOST_STEPS)


def as_usual(fit: Reconciled) -> Reconciled:
    """The same readings where nothing is left to them alone: what is inspected, too, is held to be
    about as usual. Linear about where the fit ended, so its `due` is how far the readings lie from
    the usual machine, in their own measure.
    """
    then = fit.model
    model = VisitModel(then.rated, then.table, (), then.blocks, then.error_rows, then.algebra)
    state = _start(model, fit.shared, fit)
    model.take_over(state, then, fit.solution.state)
    solution = solve(
        model, fit.readings, state, apart=lambda *_: 0.0, algebra=then.algebra, most_steps=0
    )
    return Reconciled(fit.taken, fit.shared, model, fit.readings, solution)


def _start(model: VisitModel, shared: Sequence[Part], near: Reconciled) -> State:
    """What another fit found, for all that it knows of."""
    then, at = near.model, near.solution.state
    values = then.values(at)
    numbers = dict(zip((each.id for each in then.known), at.common, strict=False))
    errors = dict(zip(near.shared, at.common[len(then.known) :], strict=True))
    own = dict(zip(near.runs, at.own, strict=True))
    still = (0.0,) * len(model.wandering)
    return State(
        free=tuple(values[each.id] for each in model.free),
        common=(
            *(
                numbers.get(each.id, (values[each.id] - each.mean) / each.spread)
                for each in model.known
            ),
            *(errors.get(part, 0.0) for part in shared),
        ),
        own=tuple(own.get(each.run, still) for each in model.blocks),
    )


def _apart(model: VisitModel, before: State, after: State) -> float:
    """How far two states are apart, in spreads."""
    free = zip(model.free, before.free, after.free, strict=True)
    known = zip(before.common, after.common, strict=True)
    moved = [abs(a - b) / each.spread for each, b, a in free]
    return max([*moved, *(abs(a - b) for b, a in known)], default=0.0)


def _alike(taken: Sequence[Taken]) -> Iterator[tuple[int, ...]]:
    """Readings of one make in one run: the leads of a motor or a supply, a point read again."""
    places: dict[tuple[str, str], list[int]] = {}
    for place, each in enumerate(taken):
        places.setdefault((each.run, of_any_lead(each.point)), []).append(place)
    return (tuple(each) for each in places.values() if 1 < len(each) <= MOST_ALIKE)


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


def _free(model: VisitModel, u: Sequence[float]) -> tuple[Unknown, ...]:
    """The inspected unknowns that the readings can tell, one after the other as they are listed.

    A reading tells of an unknown whose spread moves it by no less than half its own uncertainty;
    so must all of them together beyond what the unknowns before it do to them.
    """
    slopes = model.rows(model.start())
    points = [point for each in model.blocks for point in each.points]
    told: list[tuple[Unknown, list[float]]] = []
    for column, each in enumerate(model.table):
        moved = [row[column] * each.spread / own for row, own in zip(slopes, u, strict=True)]
        beside = not each.beside or any(re.fullmatch(each.beside, point) for point in points)
        if (
            each.inspected
            and beside
            and any(
                abs(size) > TELLS and re.fullmatch(each.inspected, point)
                for size, point in zip(moved, points, strict=True)
            )
        ):
            told.append((each, moved))
    if not told:
        return ()
    none = [0.0] * max(len(told) - len(u), 0)  # a triangle has no fewer rows than columns
    columns = [moved + none for _, moved in told]
    beyond = model.algebra.tall(list(zip(*columns, strict=True))).diagonal
    return tuple(each for (each, _), left in zip(told, beyond, strict=True) if abs(left) > TELLS)
