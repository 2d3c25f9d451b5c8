"""What every point of a run should show before anything is read, and how far off it may lie."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from lightoff.machine.machine import Machine
from lightoff.machine.model.case import case_of
from lightoff.machine.model.points import TOPICS
from lightoff.machine.model.predict import balanced
from lightoff.machine.model.rated import Rated, rate
from lightoff.machine.model.slopes import Moves, resting_moves, running_moves
from lightoff.machine.model.unknown import Unknown
from lightoff.machine.model.unknowns import CORRELATED, unknowns
from lightoff.machine.runs import fan_runs


@dataclass(frozen=True)
class Expected:
    """A value and what makes it uncertain [SI], by the unknown it comes from.

    `usual` is how far each unknown may lie from what is usual, `wander` how far it moves from run
    to run.
    """

    value: float
    usual: Mapping[str, float]
    wander: Mapping[str, float]

    @cached_property
    def u(self) -> float:
        """Standard uncertainty [SI]."""
        return math.hypot(*self.usual.values(), *self.wander.values())


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
    return {point: _expected(moves, table) for point, moves in shown.items()}


def _expected(moves: Moves, table: Sequence[Unknown]) -> Expected:
    """A point from the slopes of its unknowns, those known together told apart."""
    told = list(zip(table, moves.slopes, strict=True))
    usual = {each.id: slope * each.spread for each, slope in told}
    for name, (other, together) in CORRELATED.items():
        if name in usual and other in usual:
            usual[other] += together * usual[name]
            usual[name] *= (1 - together**2) ** 0.5
    return Expected(moves.value, usual, {u.id: slope * u.wander for u, slope in told if u.wander})
