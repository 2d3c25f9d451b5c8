"""How well each cause explains all readings of a visit, against a machine that is as usual."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import islice
from typing import NamedTuple

from lightoff.inference.causes.effect import Cause, Effect
from lightoff.inference.orthogonal import dot
from lightoff.inference.pushes import Size, Told, found, log_odds, log_sum
from lightoff.inference.reconcile import Reconciled, as_usual
from lightoff.machine.model.predict import Condition, predict
from lightoff.machine.runs import fan_runs

# a reading that is simply wrong, in its own standard uncertainties; engineering judgement
SLIPS = (Size(0.4, 0.0, 5.0), Size(0.3, 0.0, 15.0), Size(0.3, 0.0, 60.0))


class Aside(NamedTuple):
    """A reading the model does not know: where, what is usual there, and how far it stands off.

    `off` is its distance from the usual, `u` the standard uncertainty of that [SI].
    """

    point: str
    run: str
    off: float
    u: float


class Weighed(NamedTuple):
    """One way in which a cause may show: how far it moves each reading, and what they say of it."""

    effect: Effect
    moved: Sequence[float]
    told: Told


class Spoken(NamedTuple):
    """What all readings say of a cause: the logarithm of how much likelier they are with it, the
    effect that explains them best with its size, and by how much each reading took part in that,
    in the order of the fit; those beside the model in theirs."""

    cause: Cause
    log_odds: float
    effect: Effect | None
    size: float
    shares: tuple[float, ...]
    aside: tuple[float, ...]


@dataclass(frozen=True)
class Diagnosis:
    """The readings of a fit set against what is usual, and what is said of causes by them."""

    fit: Reconciled
    asides: tuple[Aside, ...]

    @cached_property
    def usual(self) -> Reconciled:
        """The same readings, every unknown held to be about as usual."""
        return as_usual(self.fit)

    def spoken(self, causes: Sequence[Cause]) -> list[Spoken]:
        """What is said of each."""
        effects = [effect for cause in causes for effect in cause.effects]
        moved = [self._moved(effect) for effect in effects]
        weighed = iter([*map(Weighed, effects, moved, self._told(moved))])
        return [self._of(cause, [*islice(weighed, len(cause.effects))]) for cause in causes]

    @cached_property
    def slip(self) -> float:
        """Logarithm of the odds that one reading is simply wrong, whichever it is."""
        readings, pull = self.usual.taken, self.usual.solution.pull
        logs = []
        for i, each in enumerate(readings):
            u = each.estimate.u
            firm = self.usual.posterior.checked(i) * u * u
            logs.append(log_odds(Told(pull[i] * u, firm), SLIPS))
        return log_sum(logs) - log_sum([0.0] * len(logs))

    def _of(self, cause: Cause, weighed: Sequence[Weighed]) -> Spoken:
        asides = tuple(self._aside(cause, each) for each in self.asides)
        if not weighed:
            return Spoken(cause, sum(asides), None, 0.0, (), asides)
        logs = [log_odds(each.told, each.effect.sizes) for each in weighed]
        best = weighed[logs.index(max(logs))]
        size = found(best.told, best.effect.sizes).size
        shares = tuple(self._shares(best.moved, size))
        return Spoken(cause, log_sum(logs) + sum(asides), best.effect, size, shares, asides)

    def _told(self, moved: Sequence[list[float]]) -> Iterator[Told]:
        solution, use = self.usual.solution, self.usual.model.algebra
        measured = use.forward(solution.ground.triangle, moved) if moved else []
        for plain, each in zip(moved, measured, strict=True):
            yield Told(dot(plain, solution.pull), dot(each, each))

    def _shares(self, moved: Sequence[float], size: float) -> Iterator[float]:
        """By how much each reading is likelier with the cause: they add up to the whole."""
        solution, use = self.usual.solution, self.usual.model.algebra
        (measured,) = use.forward(solution.ground.triangle, [moved])
        firm = use.backward(solution.ground.triangle, measured)
        for d, pull, weight in zip(moved, solution.pull, firm, strict=True):
            yield size * d * pull - size * size * d * weight / 2

    def _aside(self, cause: Cause, each: Aside) -> float:
        sizes = cause.aside.get(each.point)
        if sizes is None:
            return 0.0
        return log_odds(Told(each.off / each.u**2, each.u**-2), sizes)

    def _moved(self, effect: Effect) -> list[float]:
        """How far each reading moves for one of an effect's size."""
        if effect.far:
            return self._far(effect)
        rows, table = self._rows, self.usual.model.table
        off = [effect.off.get(each.id, 0.0) for each in table]
        resting = effect.off if effect.at_rest is None else effect.at_rest
        at_rest = [resting.get(each.id, 0.0) for each in table]
        moved = []
        for taken, row, shown in zip(self.usual.taken, rows, self._shown, strict=True):
            by = 0.0
            if effect.off and effect.run in (None, taken.run):
                by = dot(row, off if fan_runs(taken.run) else at_rest)
            if effect.read and re.fullmatch(effect.read, taken.point):
                gauges = {part.of for part in taken.estimate.parts if part.cause == "zero"}
                if effect.gauge is None or effect.gauge in gauges:
                    by += effect.adds + effect.scale * shown
            moved.append(by)
        return moved

    def _far(self, effect: Effect) -> list[float]:
        """The same foretold anew; nothing moves where the machine could not work."""
        model, state = self.usual.model, self.usual.solution.state
        values = model.values(state)
        there = {**values, **{name: values[name] + by for name, by in effect.off.items()}}
        shown = {
            run: (predict(model.rated, values, Condition(run)).shown,
                  predict(model.rated, there, Condition(run)).shown)
            for run in self.usual.runs
        }  # fmt: skip
        moved = []
        for taken in self.usual.taken:
            before, after = shown[taken.run]
            known = taken.point in before and taken.point in after
            moved.append(float(after[taken.point] - before[taken.point]) if known else 0.0)
        return moved

    @cached_property
    def _rows(self) -> list[list[float]]:
        return self.usual.model.rows(self.usual.solution.state)

    @cached_property
    def _shown(self) -> list[float]:
        """What each reading would be on the usual machine."""
        usual = self.usual
        solution, use, slopes = usual.solution, usual.model.algebra, usual.solution.ground.slopes
        pull = solution.pull
        off = use.times(slopes.common, use.across(slopes.common, pull))
        for rows in usual.readings.groups:
            own = use.times(slopes.own[rows], use.across(slopes.own[rows], pull[rows]))
            off[rows] = [o + w for o, w in zip(off[rows], own, strict=True)]
        return [
            y - o - p * u * u
            for y, o, p, u in zip(usual.readings.values, off, pull, usual.readings.u, strict=True)
        ]
