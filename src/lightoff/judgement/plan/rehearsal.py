"""The visit gone through beforehand: every reading as it should be, with the best gauge carried."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from lightoff.judgement.evidence import Evidence, evidence, owner_of
from lightoff.judgement.history import history
from lightoff.judgement.plan.carried import Gauge, gauges_for
from lightoff.judgement.plan.expectation import Expectation
from lightoff.judgement.plan.taking import gauged, nominal, point_limits
from lightoff.judgement.target import Instance
from lightoff.judgement.tasks import Record, Task
from lightoff.machine import Machine, Visit, kind_of
from lightoff.machine.visit import Reading

FIRST_RUN = "fan"  # for what may be read in any run


@dataclass(frozen=True)
class Rehearsed:
    """One reading as it should be, its gauge, and whether the model told its value."""

    reading: Reading
    gauge: Gauge
    known: bool

    @property
    def value(self) -> float:
        """What the gauge shows [SI]."""
        traverse = self.reading.traverse
        if traverse is not None:
            return (*traverse.pressures, *traverse.velocities)[0]
        return self.reading.value or 0.0

    @property
    def kind(self) -> str:
        """The kind of quantity that the gauge shows."""
        if self.reading.traverse is not None:
            return self.gauge.channel.quantity
        return kind_of(self.reading.point) or "number"

    @property
    def owner(self) -> str:
        """Whose gain and zero it shares."""
        return f"{owner_of(self.reading)} {self.gauge.channel.quantity}"

    def with_instrument(self, visit: Visit, instrument: str) -> "Rehearsed":
        """The same with another instrument, where that one feels the same and reaches so far."""
        for gauge in gauges_for(visit, self.reading.point):
            same = gauge.channel.quantity == self.gauge.channel.quantity
            if gauge.name == instrument and same and gauge.reaches(self.value):
                reading = replace(self.reading, instrument=instrument)
                return replace(self, gauge=gauge, reading=reading)
        return self


@dataclass(frozen=True)
class Rehearsal:
    """Every reading of a visit as it should be, and what they say together.

    `asked` are the points and runs that tasks ask for, `due` those they wait for.
    """

    readings: tuple[Rehearsed, ...]
    evidence: Evidence
    asked: frozenset[tuple[str, str]]
    due: frozenset[tuple[str, str]]

    def at(self, place: str) -> Rehearsed | None:
        return next((each for each in self.readings if each.reading.place == place), None)

    def asks_for(self, instance: Instance, run: str) -> bool:
        """Whether anything that makes a row is to be read in a run."""
        return any((need, run) in self.asked for need in instance.needs)

    def waits_for(self, instance: Instance, run: str) -> bool:
        """The same, and something waits for it."""
        return any((need, run) in self.due for need in instance.needs)

    def taken_with(self, instrument: str) -> "Rehearsal | None":
        """The same, as far as possible with this instrument; None where it changes nothing."""
        machine, visit = self.evidence.machine, self.evidence.visit
        taken = tuple(each.with_instrument(visit, instrument) for each in self.readings)
        if taken == self.readings:
            return None
        return replace(self, readings=taken, evidence=_evidence(machine, visit, taken))


def rehearsal(
    machine: Machine, visit: Visit, every: Sequence[Task], expected: Expectation
) -> Rehearsal:
    """The readings of these tasks."""
    records = [record for task in every for record in task.records if record.kind == "reading"]
    asked = dict.fromkeys(_first(visit, r) for r in records if r.due or _is_readable(visit, r))
    limits = point_limits(machine, visit)
    readings = []
    for line, (point, run) in enumerate(asked, start=1):
        found = expected.get(point, run)
        value = found.value if found is not None else nominal(machine, limits, point)
        if value is not None:
            reading = Reading(run, point, value, line, f"plan.reading.{line}")
            readings.append(Rehearsed(*gauged(machine, visit, reading), found is not None))
    return Rehearsal(
        readings=tuple(readings),
        evidence=_evidence(machine, visit, readings),
        asked=frozenset(asked),
        due=frozenset(_first(visit, record) for record in records if record.due),
    )


def _evidence(machine: Machine, visit: Visit, readings: Sequence[Rehearsed]) -> Evidence:
    gone = replace(visit, adjustments=(), readings=tuple(each.reading for each in readings))
    return evidence(machine, gone, history(machine, gone))


def _is_readable(visit: Visit, record: Record) -> bool:
    return any(gauges_for(visit, name) for name in record.names)


def _first(visit: Visit, record: Record) -> tuple[str, str]:
    """The point and run at which it is read: the first for which something is carried."""
    names = (name for name in record.names if gauges_for(visit, name))
    return next(names, record.names[0]), (*record.runs, FIRST_RUN)[0]
