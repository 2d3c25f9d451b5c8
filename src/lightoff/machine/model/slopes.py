"""How every point of a run moves with every unknown.

The state of a run follows its unknowns: F(s, x) = 0 gives ds = -F_s^-1 (F + F_x dx). So the model
is asked once, with dual numbers, at a state that nearly balances: that gives every point where it
does balance, and its exact slopes, and nothing is solved again for either.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

from lightoff.formula import Number
from lightoff.formula.dual import Dual, slopes_of, still
from lightoff.machine.model.case import Case, level_of
from lightoff.machine.model.points import Topics, resting_points, running_points
from lightoff.machine.model.predict import NoBalanceError
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.running import Running, State, running, standing
from lightoff.machine.model.unknown import Unknown

AT_REST = ("air.", "power.", "gas.")  # unknowns that matter while the unit is off
NEAR = 0.005  # [1] of flow and load: one step from there misses by less than its square


class Moves(NamedTuple):
    """A value, and its slope by each unknown."""

    value: float
    slopes: list[float]


@dataclass(frozen=True)
class Moving:
    """A run asked with dual numbers, near its balance.

    `places` are the unknowns that can move it, `values` all of them as they were; `short` is how
    far flow and load stood from their balance, `flow` and `load` their slopes along it.
    """

    rated: Rated
    case: Case
    unknowns: Sequence[Unknown]
    places: Sequence[int]
    values: Mapping[str, Any]
    there: Running
    short: State
    flow: Sequence[float]
    load: Sequence[float]

    @property
    def state(self) -> State:
        """Where it balances."""
        at = self.there.state
        return State(at.flow.value + self.short.flow, at.load.value + self.short.load)

    def foretold(self, values: Mapping[str, Number]) -> State:
        """About where it would balance with other values."""
        here = self.state
        moved = [
            values[self.unknowns[i].id] - self.values[self.unknowns[i].id].value
            for i in self.places
        ]
        return State(
            here.flow + sum(s * m for s, m in zip(self.flow, moved, strict=True)),
            here.load + sum(s * m for s, m in zip(self.load, moved, strict=True)),
        )

    def shown(self, topics: Topics, points: Sequence[str] | None = None) -> dict[str, Moves]:
        """Everything of these topics where the run balances, or these points of it."""
        shown = running_points(self.rated, self.values, self.case, self.there, topics)
        return {point: self._moves(shown[point]) for point in (points or shown)}

    def _moves(self, value: Number) -> Moves:
        *own, by_flow, by_load = slopes_of(value, len(self.places) + 2)
        row = [0.0] * len(self.unknowns)
        for i, s, f, g in zip(self.places, own, self.flow, self.load, strict=True):
            row[i] = s + by_flow * f + by_load * g
        here = still(value) + by_flow * self.short.flow + by_load * self.short.load
        if isinstance(here, complex):
            raise NoBalanceError("no real number")
        return Moves(float(here), row)


def resting_moves(
    rated: Rated, values: Mapping[str, Number], unknowns: Sequence[Unknown]
) -> dict[str, Moves]:
    """Every point while the unit is off."""
    places = [i for i, each in enumerate(unknowns) if each.id.startswith(AT_REST)]
    n = len(places)
    shown = resting_points(rated, _moving(values, [unknowns[i] for i in places], n))
    found = {}
    for point, value in shown.items():
        row = [0.0] * len(unknowns)
        for i, slope in zip(places, slopes_of(value, n), strict=True):
            row[i] = slope
        found[point] = Moves(float(value), row)
    return found


def running_moves(
    rated: Rated,
    values: Mapping[str, Number],
    case: Case,
    state: State,
    unknowns: Sequence[Unknown],
) -> Moving:
    """A run while the fan runs, `state` being near its balance."""
    places = [i for i, each in enumerate(unknowns) if reaches(each, case)]
    n = len(places)
    moving = _moving(values, [unknowns[i] for i in places], n + 2)
    at = State(_one(state.flow, n, n + 2), _one(state.load, n + 1, n + 2))
    there = running(rated, moving, standing(rated, moving, case), at)
    p, q = there.imbalance
    (*p_own, a, b), (*q_own, c, d) = (slopes_of(each, n + 2) for each in (p, q))
    whole = a * d - b * c
    return Moving(
        rated, case, unknowns, places, moving, there,
        short=State((b * q.value - d * p.value) / whole, (c * p.value - a * q.value) / whole),
        flow=[(b * y - d * x) / whole for x, y in zip(p_own, q_own, strict=True)],
        load=[(c * x - a * y) / whole for x, y in zip(p_own, q_own, strict=True)],
    )  # fmt: skip


def nearly_balanced(
    rated: Rated,
    values: Mapping[str, Number],
    case: Case,
    state: State,
    unknowns: Sequence[Unknown],
) -> Moving | None:
    """The same where the state is so near its balance that one step leads there; else None."""
    try:
        found = running_moves(rated, values, case, state, unknowns)
    except (ArithmeticError, TypeError, ValueError):  # a root of less than nothing
        return None
    flow, load = found.short
    return found if abs(flow) < NEAR * state.flow and abs(load) < NEAR else None


def reaches(unknown: Unknown, case: Case) -> bool:
    """Whether an unknown can move anything of a run: what does not burn is of no matter."""
    kind, _, rest = unknown.id.partition(".")
    if kind in ("train", "furnace", "flue") and rest[0].isdigit():
        firing = case.firing.get(int(rest[0]))
        if firing is None:
            return False
        other = "low" if level_of(firing) == "high" else "high"
        return not unknown.id.endswith(f".{other}")
    return unknown.stage == "show" or kind != "gas" or bool(case.firing)


def _moving(values: Mapping[str, Any], unknowns: Sequence[Unknown], many: int) -> dict[str, Any]:
    """The values with the unknowns as dual numbers, each by itself."""
    own = {each.id: _one(values[each.id], i, many) for i, each in enumerate(unknowns)}
    return {**values, **own}


def _one(value: float, place: int, many: int) -> Dual:
    slopes = [0.0] * many
    slopes[place] = 1.0
    return Dual(value, slopes)
