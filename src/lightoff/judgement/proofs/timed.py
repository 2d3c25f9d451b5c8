"""Steps of the sequence under the stopwatch, against the plate's seconds."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from lightoff.inference.conformity import Decision, decide, decide_stop, probability_within
from lightoff.inference.estimate import Estimate, Part
from lightoff.judgement.answer import Row, with_estimate
from lightoff.judgement.limits import said_by
from lightoff.judgement.message import message
from lightoff.judgement.target import COMMON_PRACTICE, UNIT_PLATE, Bounds
from lightoff.machine import Machine, Step, sequence
from lightoff.machine.visit import Severity, Visit

FLAME_FAILURE = 4.0  # [s] where the plate is silent; [cp]
SUDDEN = 0.25  # [s] timing a sudden event by hand; engineering judgement
BY_HAND = 0.15  # [s] timing an event that is foreseen by hand; engineering judgement
TIMER = 0.05  # [1] a timer shorter or longer than its plate; [cp]


@dataclass(frozen=True)
class _Timed:
    """A target of the sequence: its step, and on which side of the plate's seconds it is wrong."""

    target: str
    step: str
    severity: Severity
    wrong: Literal["longer", "shorter"]
    always: bool = True  # else asked for only where it is declared or was measured


_TARGETS = (
    _Timed("flame failure time", "flame failure", "stop", "longer"),
    _Timed("purge", "purge", "correct", "shorter"),
    _Timed("ignition trial", "ignition trial", "correct", "longer"),
    _Timed("post purge", "post purge", "correct", "shorter", always=False),
    _Timed("stage delay", "stage delay", "correct", "shorter", always=False),
)


def step_rows(machine: Machine, visit: Visit) -> Iterator[Row]:
    """One row a furnace for each timed target."""
    steps = {(step.id, step.furnace): step for step in sequence(machine)}
    for timed in _TARGETS:
        for number, _ in machine.numbered():
            step = steps.get((timed.step, number))
            if step is None:
                continue
            seconds = _seconds(visit, timed.step, number)
            if timed.always or seconds is not None or step.seconds is not None:
                yield _row(timed, step, seconds, _bounds(visit, timed, step))


def _seconds(visit: Visit, name: str, furnace: int) -> float | None:
    """Seconds measured of a step; a proven flame failure is timed as well."""
    timed = [s.seconds for s in visit.steps if (s.id, s.furnace) == (name, furnace)]
    timed += [t.seconds for t in visit.trips if (t.id, t.furnace) == (name, furnace)]
    return next((s for s in reversed(timed) if s is not None), None)


def _row(timed: _Timed, step: Step, seconds: float | None, bounds: Bounds | None) -> Row:
    row = Row(
        id=timed.target,
        point=step.id,
        decision="not measured",
        severity=timed.severity,
        why=message("not-timed"),
        furnace=step.furnace,
        kind="time",
        caution="caution-trip",
    )
    hand = SUDDEN if timed.severity == "stop" else BY_HAND
    found = None if seconds is None else Estimate(seconds, {Part("hand timing", step.id): hand})
    row = with_estimate(row, found)
    if bounds is None:
        return replace(row, severity="correct", why=message("find-it"))
    row = replace(
        row,
        lower=bounds.lower,
        upper=bounds.upper,
        limit_from=bounds.limit_from,
        source=bounds.source,
    )
    return row if found is None else _decided(row, timed, found)


def _decided(row: Row, timed: _Timed, found: Estimate) -> Row:
    """A stop limit is guarded, and a bare reading past it does not conform."""
    value, u, lower, upper = found.value, found.u, row.lower, row.upper
    if timed.severity == "stop":
        decision, _ = decide_stop([(value, u)], lower, upper)
    else:
        decision = decide(value, u, lower, upper, "simple")
    whys: dict[Decision, str] = {"conforms": "within", "undecided": "straddles"}
    return replace(
        row,
        decision=decision,
        rule="guarded" if timed.severity == "stop" else "simple",
        probability=probability_within(value, u, lower, upper),
        why=message(whys.get(decision, f"{timed.wrong}-time"), expanded=found.expanded),
    )


def _bounds(visit: Visit, timed: _Timed, step: Step) -> Bounds | None:
    """The job's own limit, else the plate's seconds with a timer's tolerance."""
    own = [limit for limit in visit.limits if limit.target == timed.target]
    if own:
        limit = own[-1]
        return Bounds(limit.lower, limit.upper, said_by(limit.source), limit.source)
    if timed.severity == "stop":
        if step.seconds is None:
            return Bounds(None, FLAME_FAILURE, "common practice", COMMON_PRACTICE)
        return Bounds(None, step.seconds, "plate", UNIT_PLATE)
    if step.seconds is None:
        return None
    if timed.wrong == "shorter":
        return Bounds(step.seconds * (1 - TIMER), None, "plate", UNIT_PLATE)
    return Bounds(None, step.seconds * (1 + TIMER), "plate", UNIT_PLATE)
