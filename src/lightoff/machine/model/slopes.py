"""How every point of a run moves with every unknown.

Where all balances the state follows the unknowns: F(s, x) = 0 gives ds = -F_s^-1 F_x dx, so nothing
is solved again for a slope. The slopes themselves are exact: the model is asked with dual numbers.
"""

from collections.abc import Mapping, Sequence
from typing import Any

from lightoff.formula import Number
from lightoff.formula.dual import Dual, slopes_of
from lightoff.machine.model.case import Case
from lightoff.machine.model.points import Topics, resting_points, running_points
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.running import Running, State, running, standing
from lightoff.machine.model.unknown import Unknown

Rows = list[list[float]]  # one row a point, one column an unknown


def resting_slopes(
    rated: Rated, values: Mapping[str, Number], unknowns: Sequence[Unknown], points: Sequence[str]
) -> Rows:
    """The slopes of points while the unit is off."""
    moving = _moving(values, unknowns, len(unknowns))
    shown = resting_points(rated, moving)
    return [list(slopes_of(shown[point], len(unknowns))) for point in points]


def running_slopes(
    rated: Rated,
    values: Mapping[str, Number],
    case: Case,
    found: Running,
    unknowns: Sequence[Unknown],
    points: Sequence[str],
    topics: Topics,
) -> Rows:
    """The slopes of points while the fan runs, `found` being balanced."""
    places = [i for i, each in enumerate(unknowns) if reaches(each, case, topics)]
    n = len(places)
    moving = _moving(values, [unknowns[i] for i in places], n + 2)
    state = State(_one(found.state.flow, n, n + 2), _one(found.state.load, n + 1, n + 2))
    there = running(rated, moving, standing(rated, moving, case), state)
    shown = running_points(rated, moving, case, there, topics)
    p, q = (slopes_of(each, n + 2) for each in there.imbalance)
    (a, b), (c, d) = p[n:], q[n:]
    whole = a * d - b * c
    flow = [(b * y - d * x) / whole for x, y in zip(p[:n], q[:n], strict=True)]
    load = [(c * x - a * y) / whole for x, y in zip(p[:n], q[:n], strict=True)]
    rows = []
    for point in points:
        *own, by_flow, by_load = slopes_of(shown[point], n + 2)
        row = [0.0] * len(unknowns)
        for i, s, f, g in zip(places, own, flow, load, strict=True):
            row[i] = s + by_flow * f + by_load * g
        rows.append(row)
    return rows


def reaches(unknown: Unknown, case: Case, topics: Topics) -> bool:
    """Whether an unknown can move anything of a run: what does not burn is of no matter."""
    if unknown.stage == "show":
        return unknown.topic in topics
    kind, _, rest = unknown.id.partition(".")
    if kind in ("train", "furnace", "flue") and rest[0].isdigit():
        level = case.levels.get(int(rest[0]))
        other = "low" if level == "high" else "high"
        return level is not None and not unknown.id.endswith(f".{other}")
    return kind != "gas" or bool(case.levels)


def _moving(values: Mapping[str, Any], unknowns: Sequence[Unknown], many: int) -> dict[str, Any]:
    """The values with the unknowns as dual numbers, each by itself."""
    own = {each.id: _one(values[each.id], i, many) for i, each in enumerate(unknowns)}
    return {**values, **own}


def _one(value: float, place: int, many: int) -> Dual:
    slopes = [0.0] * many
    slopes[place] = 1.0
    return Dual(value, slopes)
