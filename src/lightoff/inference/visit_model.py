"""A machine and its runs as a model for the solver: unknowns scaled, readings in their rows."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import NamedTuple

from lightoff.inference.algebra import Algebra, Matrix
from lightoff.inference.looks import Block, Look, Looks, Values, everything, wanted
from lightoff.inference.posterior import Quantity
from lightoff.inference.solver import Slopes, State
from lightoff.machine.model.predict import NoBalanceError
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.slopes import Moves
from lightoff.machine.model.unknown import Unknown
from lightoff.machine.model.unknowns import CORRELATED


class Seen(NamedTuple):
    """Every run as the fit saw it at a state, and the points it looks at."""

    state: State
    looks: list[Look]
    moves: list[Moves]


@dataclass
class VisitModel:
    """What the solver asks of a machine in a number of runs.

    Of the `free` unknowns nothing is known, of all others of the `table` something is; each may
    wander from run to run. `error_rows` are the readings' shared errors, one row a reading: their
    unknowns stand behind the known ones. `seen` keeps the last states asked for: the next is near;
    `at_start` each run where everything is as expected.
    """

    rated: Rated
    table: tuple[Unknown, ...]
    free: tuple[Unknown, ...]
    blocks: tuple[Block, ...]
    error_rows: Sequence[Sequence[float]]
    algebra: Algebra
    seen: list[Seen] = field(default_factory=list)
    at_start: dict[str, Look] = field(default_factory=dict)

    @cached_property
    def known(self) -> tuple[Unknown, ...]:
        free = {each.id for each in self.free}
        return tuple(each for each in self.table if each.id not in free)

    @cached_property
    def wandering(self) -> tuple[Unknown, ...]:
        """Those that move from run to run."""
        return tuple(each for each in self.table if each.wander)

    @cached_property
    def _looks(self) -> Looks:
        return Looks(self.rated, self.table, self.algebra.abreast)

    @cached_property
    def _errors(self) -> Matrix:
        return self.algebra.matrix(self.error_rows)

    @cached_property
    def _columns(self) -> Mapping[str, int]:
        return {each.id: column for column, each in enumerate(self.table)}

    def start(self) -> State:
        """Where everything is as expected."""
        none = (0.0,) * (len(self.known) + len(self.error_rows[0]))
        own = tuple((0.0,) * len(self.wandering) for _ in self.blocks)
        return State(tuple(each.mean for each in self.free), none, own)

    def look_at_start(self, other: "VisitModel | None" = None) -> None:
        """See where everything is as expected; what another model saw there is not asked again."""
        known = {} if other is None else dict(other.at_start)
        new = [each for each in self.blocks if each.run not in known]
        values = self.values(self.start())
        looks = self._looks.at(new, [values for _ in new], [None for _ in new])
        self.at_start = known | {each.run: look for each, look in zip(new, looks, strict=True)}
        self._see(self.start(), [self.at_start[each.run] for each in self.blocks])

    def take_over(self, state: State, other: "VisitModel", there: State) -> None:
        """See runs at a state as another model saw them there, where it saw them all."""
        runs = (each.run for each in other.blocks)
        known = dict(zip(runs, other._seen(there).looks, strict=True))
        if all(each.run in known for each in self.blocks):
            self._see(state, [known[each.run] for each in self.blocks])

    def freed(self, free: tuple[Unknown, ...]) -> "VisitModel":
        """The same with other unknowns free, already looked at where everything is as expected."""
        model = VisitModel(self.rated, self.table, free, self.blocks, self.error_rows, self.algebra)
        model.look_at_start(self)
        return model

    def values(self, state: State) -> Values:
        """Every unknown [SI], apart from what it wanders."""
        found = {each.id: value for each, value in zip(self.free, state.free, strict=True)}
        scaled = dict(zip((each.id for each in self.known), state.common, strict=False))
        for each in self.known:
            found[each.id] = each.mean + each.spread * _together(each.id, scaled)
        return found

    def values_in(self, state: State, place: int, values: Values | None = None) -> Values:
        """Every unknown [SI] as it was in one of the runs."""
        found = dict(self.values(state) if values is None else values)
        for each, own in zip(self.wandering, state.own[place], strict=True):
            found[each.id] += each.wander * own
        return found

    def shown(self, state: State) -> list[float]:
        """Each point of each run, with the readings' shared errors."""
        plain = [moves.value for moves in self._moves(state)]
        errors = self.algebra.times(self._errors, state.common[len(self.known) :])
        return [h + e for h, e in zip(plain, errors, strict=True)]

    def slopes(self, state: State) -> Slopes:
        """How each reading moves with each unknown, in the solver's scales."""
        use, rows, place = self.algebra, self.rows(state), self._columns
        free, known, wander = self.free, self.known, self.wandering
        common = use.columns(rows, [place[u.id] for u in known], [u.spread for u in known])
        order = {each.id: i for i, each in enumerate(known)}
        for each, (other, correlation) in CORRELATED.items():
            if each in order and other in order:
                common = use.mixed(common, order[each], order[other], correlation)
        return Slopes(
            use.columns(rows, [place[u.id] for u in free], [1.0] * len(free)),
            use.beside(common, self._errors),
            use.columns(rows, [place[u.id] for u in wander], [u.wander for u in wander]),
        )

    def rows(self, state: State) -> list[list[float]]:
        """How each reading moves with each unknown of the table [SI]."""
        return [moves.slopes for moves in self._moves(state)]

    def shown_in(self, state: State, run: str) -> dict[str, Moves]:
        """Every point and derived quantity of a run the fit looked at."""
        return everything(self._seen(state).looks[self._places[run]])

    def quantity(self, run: str, moves: Moves) -> Quantity:
        """One of them, with its slopes in the solver's scales."""
        return Quantity(
            moves.value,
            self._free(moves.slopes),
            self._common(moves.slopes),
            {self._places[run]: self._own(moves.slopes)},
        )

    @cached_property
    def _places(self) -> Mapping[str, int]:
        return {each.run: place for place, each in enumerate(self.blocks)}

    def elsewhere(self, state: State, run: str, known: Mapping[str, float]) -> dict[str, Quantity]:
        """Every point and derived quantity of any run on another day.

        `known` are unknowns that are given for it. What wanders from run to run has wandered once
        more. Raises `NoBalanceError` where the machine cannot work there.
        """
        values = {**self.values(state), **known}
        return {
            point: Quantity(
                moves.value, self._free(row), self._common(row), alone=math.hypot(*self._own(row))
            )
            for point, moves in self._looks.alone(run, values).items()
            for row in [self._but(moves.slopes, known)]
        }

    def _but(self, row: Sequence[float], known: Mapping[str, float]) -> list[float]:
        """A row without the slopes of what is known."""
        return [0.0 if u.id in known else s for s, u in zip(row, self.table, strict=True)]

    def as_quantity(self, name: str, state: State) -> Quantity:
        """One of the unknowns itself."""
        row = [float(each.id == name) for each in self.table]
        return Quantity(self.values(state)[name], self._free(row), self._common(row))

    def _moves(self, state: State) -> list[Moves]:
        """Each point the fit looks at, with its slopes."""
        return self._seen(state).moves

    def _seen(self, state: State) -> Seen:
        """Every run at a state; the last two states are remembered."""
        for each in self.seen:
            if each.state == state:
                return each
        values = self.values(state)
        here = [self.values_in(state, place, values) for place, _ in enumerate(self.blocks)]
        return self._see(state, self._looks.at(self.blocks, here, self.seen[-1].looks))

    def _see(self, state: State, looks: list[Look]) -> Seen:
        moves: list[Moves] = []
        topics = frozenset().union(*(each.topics for each in self.blocks))
        for each, look in zip(self.blocks, looks, strict=True):
            moves += wanted(look, topics, each.points)
        if not all(math.isfinite(each.value) for each in moves):
            raise NoBalanceError("no real number")
        self.seen = [*self.seen[-1:], Seen(state, looks, moves)]
        return self.seen[-1]

    def _free(self, row: Sequence[float]) -> list[float]:
        return [row[self._columns[each.id]] for each in self.free]

    def _common(self, row: Sequence[float]) -> list[float]:
        """Slopes by all that is common; a quantity has no error of a gauge."""
        return [*self._scaled(row), *[0.0] * len(self.error_rows[0])]

    def _own(self, row: Sequence[float]) -> list[float]:
        """Slopes by what each unknown wanders in a run."""
        return [s * u.wander for s, u in zip(row, self.table, strict=True) if u.wander]

    def _scaled(self, row: Sequence[float]) -> list[float]:
        """Slopes by the known unknowns, by their standard normal numbers instead."""
        by = {each.id: row[self._columns[each.id]] * each.spread for each in self.known}
        for each, (other, correlation) in CORRELATED.items():
            if each in by and other in by:
                by[other] += correlation * by[each]
                by[each] *= (1 - correlation**2) ** 0.5
        return list(by.values())


def _together(name: str, scaled: dict[str, float]) -> float:
    """An unknown's number, partly that of the one it is known together with."""
    if name not in CORRELATED:
        return scaled[name]
    other, correlation = CORRELATED[name]
    if other not in scaled:
        return scaled[name]
    return correlation * scaled[other] + float((1 - correlation**2) ** 0.5) * scaled[name]
