"""Which gauge is too coarse for which target, and the coarsest that would do."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from lightoff.inference.estimate import COVERAGE, RECTANGULAR, Estimate
from lightoff.judgement.limits import allowed
from lightoff.judgement.message import Message, message
from lightoff.judgement.plan.fitness import (
    Fitness,
    Shares,
    fitness_of,
    largest_else,
    scales,
    shares_of,
)
from lightoff.judgement.plan.rehearsal import Rehearsal
from lightoff.judgement.plan.requirement import most_expanded
from lightoff.judgement.rows import reckoned
from lightoff.judgement.target import Case, Instance, Target
from lightoff.judgement.targets import TARGETS
from lightoff.machine.visit import Severity


@dataclass(frozen=True)
class GaugeUse:
    """One gauge in one target, in one run.

    `expanded` is what the target would have with this gauge, its method and all else, `needed`
    what it may have [SI of the target's `kind`]; `claim` is what the gauge claims at the `value`
    it would show, as ±, `coarsest` the ± that would do there [SI of what is read], None where not
    even a perfect gauge would, and where it claims nothing.
    """

    target: str
    severity: Severity
    point: str
    run: str
    furnace: int | None
    kind: str
    expanded: float
    needed: float
    instrument: str | None
    quantity: str
    reads: str
    reads_kind: str
    value: float
    claim: float
    coarsest: float | None
    fitness: Fitness
    why: Message
    finest: bool = True

    @property
    def key(self) -> tuple[str | None, ...]:
        """What tells it from every other."""
        return self.target, self.point, self.run, self.instrument, self.quantity


def gauge_uses(told: Rehearsal) -> tuple[GaugeUse, ...]:
    """Every gauge of every target with limits, in the runs in which the work waits for it.

    First the finest for each reading, then the others carried, where they would serve as well.
    """
    others = (
        replace(use, finest=False)
        for instrument in told.evidence.visit.instruments
        if (other := told.taken_with(instrument.id)) is not None
        for use in _of_due(other)
        if use.instrument == instrument.id
    )
    finest = tuple(_of_due(told))
    known = {use.key for use in finest}
    return (*finest, *(use for use in others if use.key not in known))


def _of_due(told: Rehearsal) -> Iterator[GaugeUse]:
    for target in TARGETS:
        for instance in target.instances(told.evidence.machine):
            for run in instance.runs:
                if told.waits_for(instance, run):
                    yield from _uses(told, target, instance, run)


def _uses(told: Rehearsal, target: Target, instance: Instance, run: str) -> Iterator[GaugeUse]:
    case = Case(told.evidence.machine, instance, run, told.evidence)
    found, bounds = reckoned(target.estimate, case), allowed(target, case).bounds
    if not isinstance(found, Estimate) or bounds is None:
        return
    needed = most_expanded(target, bounds, found.value)
    if needed is None:
        return
    shares = shares_of(told, found, instance, run)
    for owner, factor in scales(found, shares, needed / COVERAGE).items():
        share = shares[owner]
        alone = share.read.gauge.uncertainty(share.read.value)
        fitness = fitness_of(found, needed, factor)
        yield GaugeUse(
            target=target.id,
            severity=target.severity,
            point=instance.point,
            run=run,
            furnace=instance.furnace,
            kind=target.kind,
            expanded=found.expanded,
            needed=needed,
            instrument=share.read.gauge.name,
            quantity=share.read.gauge.channel.quantity,
            reads=share.read.reading.point,
            reads_kind=share.read.kind,
            value=share.read.value,
            claim=alone / RECTANGULAR,
            coarsest=None if factor is None else factor * alone / RECTANGULAR,
            fitness=fitness,
            why=_why(fitness, found, shares),
        )


def _why(fitness: Fitness, found: Estimate, shares: Shares) -> Message:
    if fitness == "fine enough":
        return message("gauge-fine")
    if fitness == "too coarse":
        return message("gauge-coarse")
    return message("gauge-method", cause=largest_else(found, shares))
