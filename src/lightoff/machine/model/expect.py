"""What every point of a run should show before anything is read, and how far off it may lie."""

from collections.abc import Mapping
from typing import NamedTuple

from lightoff.machine.machine import Machine
from lightoff.machine.model.case import case_of
from lightoff.machine.model.points import TOPICS
from lightoff.machine.model.predict import balanced
from lightoff.machine.model.rated import Rated, rate
from lightoff.machine.model.slopes import resting_moves, running_moves
from lightoff.machine.model.unknowns import CORRELATED, unknowns
from lightoff.machine.runs import fan_runs


class Expected(NamedTuple):
    """A value and its standard uncertainty [SI]."""

    value: float
    u: float


def expect(
    machine: Machine | Rated, run: str, known: Mapping[str, float] | None = None
) -> dict[str, Expected]:
    """Every point and derived quantity of a run, every unknown being as usual.

    `known` are unknowns of which the value is given, such as the weather.

    Raises `NoBalanceError` where the machine cannot work.
    """
    rated = machine if isinstance(machine, Rated) else rate(machine)
    given = known or {}
    table = tuple(each for each in unknowns(rated) if each.id not in given)
    values = {**{each.id: each.mean for each in table}, **given}
    if fan_runs(run):
        case = case_of(rated.machine, run)
        state = balanced(rated, values, case).state
        shown = running_moves(rated, values, case, state, table).shown(TOPICS)
    else:
        shown = resting_moves(rated, values, table)
    ids = [each.id for each in table]
    spreads = [each.spread for each in table]
    wanders = [each.wander for each in table]
    return {
        point: Expected(moves.value, _spread(moves.slopes, ids, spreads, wanders))
        for point, moves in shown.items()
    }


def _spread(row: list[float], ids: list[str], spreads: list[float], wanders: list[float]) -> float:
    """Of a point, from the slopes of its unknowns."""
    moved = {name: s * u for name, s, u in zip(ids, row, spreads, strict=True)}
    variance = sum(each**2 for each in moved.values())
    variance += sum((s * w) ** 2 for s, w in zip(row, wanders, strict=True))
    for name, (other, together) in CORRELATED.items():
        variance += 2 * together * moved.get(name, 0.0) * moved.get(other, 0.0)
    return float(max(variance, 0.0) ** 0.5)
