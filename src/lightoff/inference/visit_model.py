"""A machine and its runs as a model for the solver: unknowns scaled, readings in their rows."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property

from lightoff.inference.algebra import Algebra, Matrix
from lightoff.inference.posterior import Quantity
from lightoff.inference.solver import Slopes, State
from lightoff.machine.model.case import Case, case_of
from lightoff.machine.model.points import TOPICS, Topics, resting_points, running_points, topic_of
from lightoff.machine.model.predict import balanced
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.running import Running
from lightoff.machine.model.slopes import resting_slopes, running_slopes
from lightoff.machine.model.unknown import Unknown
from lightoff.machine.model.unknowns import CORRELATED
from lightoff.machine.runs import fan_runs

Values = dict[str, float]


@dataclass(frozen=True)
class Block:
    """The points of one run that the fit looks at."""

    run: str
    points: tuple[str, ...]
    case: Case | None
    topics: Topics


def block(rated: Rated, run: str, points: Sequence[str]) -> Block:
    """A run with its points."""
    case = case_of(rated.machine, run) if fan_runs(run) else None
    return Block(run, tuple(points), case, frozenset(t for t in map(topic_of, points) if t))


@dataclass
class VisitModel:
    """What the solver asks of a machine in a number of runs.

    `free` are the unknowns of which nothing is known, `known` the others; each of both may wander
    from run to run. `error_rows` are the readings' shared errors, one row a reading: their unknowns
    stand behind the known ones. `found` keeps each run's balance, as a start for the next.
    """

    rated: Rated
    free: tuple[Unknown, ...]
    known: tuple[Unknown, ...]
    blocks: tuple[Block, ...]
    error_rows: Sequence[Sequence[float]]
    algebra: Algebra
    found: dict[str, Running] = field(default_factory=dict)

    @cached_property
    def _errors(self) -> Matrix:
        return self.algebra.matrix(self.error_rows)

    @property
    def unknowns(self) -> tuple[Unknown, ...]:
        return self.free + self.known

    @property
    def wandering(self) -> tuple[Unknown, ...]:
        """Those of them that move from run to run."""
        return tuple(each for each in self.unknowns if each.wander)

    def start(self) -> State:
        """Where everything is as expected."""
        none = (0.0,) * (len(self.known) + len(self.error_rows[0]))
        own = tuple((0.0,) * len(self.wandering) for _ in self.blocks)
        return State(tuple(each.mean for each in self.free), none, own)

    def values(self, state: State) -> Values:
        """Every unknown [SI], apart from what it wanders."""
        found = {each.id: value for each, value in zip(self.free, state.free, strict=True)}
        scaled = dict(zip((each.id for each in self.known), state.common, strict=False))
        for each in self.known:
            found[each.id] = each.mean + each.spread * _together(each.id, scaled)
        return found

    def values_in(self, state: State, place: int) -> Values:
        """Every unknown [SI] as it was in one of the runs."""
        found = self.values(state)
        for each, own in zip(self.wandering, state.own[place], strict=True):
            found[each.id] += each.wander * own
        return found

    def shown(self, state: State) -> list[float]:
        """Each point of each run, with the readings' shared errors."""
        plain = [
            value
            for place, each in enumerate(self.blocks)
            for value in self._shown(each, self.values_in(state, place))
        ]
        errors = self.algebra.times(self._errors, state.common[len(self.known) :])
        return [h + e for h, e in zip(plain, errors, strict=True)]

    def _shown(self, of: Block, values: Values) -> list[float]:
        if of.case is None:
            points = resting_points(self.rated, values)
        else:
            before = self.found.get(of.run)
            found = balanced(self.rated, values, of.case, before.state if before else None)
            self.found[of.run] = found
            points = running_points(self.rated, values, of.case, found, of.topics)
        return [points[point] for point in of.points]

    def slopes(self, state: State) -> Slopes:
        """How each reading moves with each unknown, in the solver's scales."""
        free, common, own = [], [], []
        for place, each in enumerate(self.blocks):
            for row in self.slopes_of(each, self.values_in(state, place)):
                of_free, of_known = row[: len(self.free)], row[len(self.free) :]
                free.append(of_free)
                common.append(self.scaled(of_known))
                own.append(self._own(row))
        whole = [[*a, *b] for a, b in zip(common, self.error_rows, strict=True)]
        use = self.algebra
        return Slopes(use.matrix(free), use.matrix(whole), use.matrix(own))

    def slopes_at_start(self) -> list[list[float]]:
        """How each reading moves with each unknown [SI] where everything is as expected."""
        state = self.start()
        self.shown(state)
        return [
            row
            for place, each in enumerate(self.blocks)
            for row in self.slopes_of(each, self.values_in(state, place))
        ]

    def slopes_of(self, of: Block, values: Values) -> list[list[float]]:
        """How each point of a run moves with each unknown [SI]."""
        if of.case is None:
            return resting_slopes(self.rated, values, self.unknowns, of.points)
        found = self.found[of.run]
        return running_slopes(
            self.rated, values, of.case, found, self.unknowns, of.points, of.topics
        )

    def quantities(self, state: State, run: str) -> dict[str, Quantity]:
        """Every point and derived quantity of a run the fit looked at."""
        place = next(i for i, each in enumerate(self.blocks) if each.run == run)
        values = self.values_in(state, place)
        case = self.blocks[place].case
        if case is None:
            shown = resting_points(self.rated, values)
        else:
            shown = running_points(self.rated, values, case, self.found[run])
        of = Block(run, tuple(shown), case, TOPICS)
        none = [0.0] * len(self.error_rows[0])
        return {
            point: Quantity(
                value=shown[point],
                free=row[: len(self.free)],
                common=[*self.scaled(row[len(self.free) :]), *none],
                own={place: self._own(row)},
            )
            for point, row in zip(of.points, self.slopes_of(of, values), strict=True)
        }

    def _own(self, row: Sequence[float]) -> list[float]:
        """Slopes by what each unknown wanders in a run."""
        return [s * u.wander for s, u in zip(row, self.unknowns, strict=True) if u.wander]

    def scaled(self, slopes: Sequence[float]) -> list[float]:
        """Slopes by the known unknowns, by their standard normal numbers instead."""
        by = {u.id: s * u.spread for s, u in zip(slopes, self.known, strict=True)}
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
