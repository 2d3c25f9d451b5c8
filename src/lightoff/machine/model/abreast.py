"""Several runs asked at once, on arrays: what `slopes` does for one, for all of them in one go."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from lightoff.formula import Number
from lightoff.formula.duals import Duals
from lightoff.machine.model.case import Case, abreast
from lightoff.machine.model.points import Shown, Topics, running_points
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.running import Running, State, running, standing
from lightoff.machine.model.slopes import NEAR, Moves, reaches
from lightoff.machine.model.unknown import Unknown

Array = Any  # of numpy


@dataclass
class Abreast:
    """Runs asked together, near their balance: see `slopes.Moving`. Slopes are [unknowns, runs]."""

    rated: Rated
    case: Case
    values: Mapping[str, Any]
    places: Array
    width: int
    there: Running
    short: tuple[Array, Array]
    flow: Array
    load: Array
    known: dict[Topics, "Everything"] = field(default_factory=dict)

    def shown(self, topics: Topics) -> "Everything":
        """Everything of these topics."""
        if topics not in self.known:
            import numpy

            with numpy.errstate(all="ignore"):
                shown = running_points(self.rated, self.values, self.case, self.there, topics)
            self.known[topics] = Everything(self, shown)
        return self.known[topics]

    def moved(self, value: Number) -> tuple[Array, Array]:
        """A number where each run balances, and its slopes as the states follow."""
        flow, load = self.short
        if not isinstance(value, Duals):
            return value + 0.0 * flow, 0.0 * self.flow
        *_, by_flow, by_load = value.slopes
        return (
            value.value + by_flow * flow + by_load * load,
            value.slopes[:-2] + by_flow * self.flow + by_load * self.load,
        )


class Everything(dict[str, tuple[Array, Array]]):
    """Values and slopes by point, each worked out when it is asked for."""

    def __init__(self, whole: Abreast, shown: Shown) -> None:
        super().__init__()
        self.whole, self.shown = whole, shown

    def __missing__(self, point: str) -> tuple[Array, Array]:
        import numpy

        with numpy.errstate(all="ignore"):
            self[point] = self.whole.moved(self.shown[point])
        return self[point]


@dataclass(frozen=True)
class One:
    """One of the runs asked together: what `slopes.Moving` is for a run asked alone."""

    whole: Abreast
    place: int
    case: Case
    unknowns: Sequence[Unknown]

    @property
    def state(self) -> State:
        """Where it balances."""
        flow, load = self.whole.there.state
        more, other = self.whole.short
        k = self.place
        return State(float(flow.value[k] + more[k]), float(load.value[k] + other[k]))

    def foretold(self, values: Mapping[str, Number]) -> State:
        """About where it would balance with other values."""
        import numpy

        here, k, then = self.state, self.place, self.whole.values
        moved = numpy.array([
            values[self.unknowns[i].id] - then[self.unknowns[i].id].value[k]
            for i in self.whole.places
        ])  # fmt: skip
        flow, load = self.whole.flow[:, k] @ moved, self.whole.load[:, k] @ moved
        return State(here.flow + float(flow), here.load + float(load))

    def shown(self, topics: Topics, points: Sequence[str] | None = None) -> dict[str, Moves]:
        """Everything of these topics where the run balances, or these points of it."""
        import numpy

        everything, found = self.whole.shown(topics), {}
        for point in self._mine(everything.shown) if points is None else points:
            values, slopes = everything[point]
            row = numpy.zeros(self.whole.width)
            row[self.whole.places] = slopes[:, self.place]
            found[point] = Moves(float(values[self.place]), row.tolist())
        return found

    def _mine(self, points: Iterable[str]) -> Iterator[str]:
        """Without what burns in other runs only."""
        for point in points:
            number = _BURNING.match(point)
            if number is None or int(number[1]) in self.case.firing:
                yield point


_BURNING = re.compile(r"(?:flue|input|efficiency|output|excess_air|flue_dew_point)\.(\d)")


def moves_abreast(
    rated: Rated,
    values: Sequence[Mapping[str, Number]],
    cases: Sequence[Case],
    states: Sequence[State],
    unknowns: Sequence[Unknown],
) -> list[One] | None:
    """Each run near its balance; None where one is not so near that a step leads there."""
    import numpy

    places = [i for i, u in enumerate(unknowns) if any(reaches(u, case) for case in cases)]
    n, many, case = len(places), len(cases), abreast(cases)

    def one(value: Array, place: int) -> Duals:
        slopes = numpy.zeros((n + 2, many))
        slopes[place] = 1.0
        return Duals(value, slopes)

    moving = _stacked(values)
    for place, i in enumerate(places):
        moving[unknowns[i].id] = one(moving[unknowns[i].id], place)
    flow, load = (numpy.array(each) for each in zip(*states, strict=True))
    at = State(one(flow, n), one(load, n + 1))
    try:
        with numpy.errstate(all="ignore"):
            there = running(rated, moving, standing(rated, moving, case), at)
            whole = _turned(rated, case, moving, numpy.array(places), len(unknowns), there)
    except (ArithmeticError, TypeError, ValueError):
        return None
    more, other = whole.short
    if not ((abs(more) < NEAR * flow) & (abs(other) < NEAR)).all():
        return None
    return [One(whole, k, each, unknowns) for k, each in enumerate(cases)]


def _stacked(values: Sequence[Mapping[str, Number]]) -> dict[str, Any]:
    """Every value as an array over the runs."""
    import numpy

    return {name: numpy.array([each[name] for each in values], dtype=float) for name in values[0]}


def _turned(
    rated: Rated, case: Case, moving: Mapping[str, Any], places: Array, width: int, there: Running
) -> Abreast:
    """The runs with how their states follow the unknowns."""
    p, q = there.imbalance
    (a, b), (c, d) = p.slopes[-2:], q.slopes[-2:]
    whole = a * d - b * c
    return Abreast(
        rated, case, moving, places, width, there,
        short=((b * q.value - d * p.value) / whole, (c * p.value - a * q.value) / whole),
        flow=(b * q.slopes[:-2] - d * p.slopes[:-2]) / whole,
        load=(c * p.slopes[:-2] - a * q.slopes[:-2]) / whole,
    )  # fmt: skip
