"""The runs of a visit as the fit looks at them: each point with its slopes by every unknown."""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass

from lightoff.machine.model.abreast import One, moves_abreast
from lightoff.machine.model.case import Case, case_of
from lightoff.machine.model.points import TOPICS, Topics, topic_of
from lightoff.machine.model.predict import NoBalanceError, about_balanced, balanced
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.running import State
from lightoff.machine.model.slopes import (
    Moves,
    Moving,
    nearly_balanced,
    resting_moves,
    running_moves,
)
from lightoff.machine.model.unknown import Unknown
from lightoff.machine.runs import fan_runs

Values = dict[str, float]
Look = Moving | One | dict[str, Moves]  # a run as the fit sees it: with the fan on, or off


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


def everything(look: Look) -> dict[str, Moves]:
    """Every point and derived quantity of a look."""
    return look if isinstance(look, dict) else look.shown(TOPICS)


def wanted(look: Look, topics: Topics, points: Sequence[str]) -> list[Moves]:
    """Some points of a look, and no more of their `topics` than it takes.

    Raises `NoBalanceError` where one of them is no number.
    """
    with _described():
        shown = look if isinstance(look, dict) else look.shown(topics, points)
    return [shown[point] for point in points]


@contextmanager
def _described() -> Iterator[None]:
    """Numbers of which a root or a logarithm has no answer describe no machine."""
    try:
        yield
    except (TypeError, ValueError) as error:
        raise NoBalanceError("the numbers describe no machine") from error


@dataclass(frozen=True)
class Looks:
    """How runs of a machine are looked at; `abreast` on arrays, all of them in one go."""

    rated: Rated
    table: tuple[Unknown, ...]
    abreast: bool

    def at(
        self, blocks: Sequence[Block], values: Sequence[Values], near: Sequence[Look | None]
    ) -> list[Look]:
        """Runs, each with its values; `near` is each as it was last looked at, where it was.

        Raises `NoBalanceError` where the values describe no machine.
        """
        turning = [
            (each.case, here, look)
            for each, here, look in zip(blocks, values, near, strict=True)
            if each.case is not None
        ]
        with _described():
            found = iter(self._turning(turning))
            return [
                resting_moves(self.rated, here, self.table) if each.case is None else next(found)
                for each, here in zip(blocks, values, strict=True)
            ]

    def alone(self, run: str, values: Values) -> dict[str, Moves]:
        """Everything of one run; `NoBalanceError` where the machine cannot work there."""
        if not fan_runs(run):
            return resting_moves(self.rated, values, self.table)
        case = case_of(self.rated.machine, run)
        state = balanced(self.rated, values, case).state
        return everything(running_moves(self.rated, values, case, state, self.table))

    def _turning(self, runs: Sequence[tuple[Case, Values, Look | None]]) -> Sequence[Look]:
        """The runs with the fan on, from about where they balance; else from where they do."""
        if not runs:
            return []
        cases, values = [case for case, _, _ in runs], [here for _, here, _ in runs]
        about = [
            look.foretold(here)
            for case, here, look in runs
            if look is not None and not isinstance(look, dict) and look.case == case
        ]
        if len(about) == len(runs):
            found = self._moves_of(cases, values, about)
            if found is not None:
                return found
        found = self._moves_of(cases, values, self._balanced(cases, values))
        if found is None:
            raise NoBalanceError("the numbers describe no running machine")
        return found

    def _balanced(self, cases: Sequence[Case], values: Sequence[Values]) -> Sequence[State]:
        """About where each run balances; few steps each, which arrays would not make fewer."""
        states: list[State] = []
        for case, here in zip(cases, values, strict=True):
            start = states[-1] if states else None
            states.append(about_balanced(self.rated, here, case, start).state)
        return states

    def _moves_of(
        self, cases: Sequence[Case], values: Sequence[Values], states: Sequence[State]
    ) -> Sequence[Look] | None:
        """All of them; None where one is not near its balance."""
        if self.abreast and len(cases) > 1:
            return moves_abreast(self.rated, values, cases, states, self.table)
        found = []
        for case, here, state in zip(cases, values, states, strict=True):
            moving = nearly_balanced(self.rated, here, case, state, self.table)
            if moving is None:
                return None
            found.append(moving)
        return found
