"""Steps of the sequence under the stopwatch, against the plate's seconds."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from lightoff.inference.conformity import Decision, decide, decide_stop, probability_within
from lightoff.inference.estimate import Estimate, Part
from lightoff.judgement.answer import Judged, Row, with_estimate
from lightoff.judgement.limits import overridden
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


def step_rows(machine: Machine, visit: Visit) -> Iterator[Judged]:
    """One row a furnace for each timed target."""
    steps = {(step.id, step.furnace): step for step in sequence(machine)}
    for timed in _TARGETS:
        limit = next((x for x in reversed(visit.limits) if x.target == timed.target), None)
        for number, _ in machine.numbered():
            step = steps.get((timed.step, number))
            if step is None:
                continue
            found = _found(visit, timed, number)
            if timed.always or found or step.seconds is not None:
                hold = overridden(timed.severity, _usual(timed, step), limit)
                yield Judged(_row(timed, step, found, hold.bounds), hold.remark)


def _found(visit: Visit, timed: _Timed, furnace: int) -> list[Estimate]:
    """Each time measured of a step; a proven flame failure is timed as well."""
    measured = [s.seconds for s in visit.steps if (s.id, s.furnace) == (timed.step, furnace)]
    measured += [t.seconds for t in visit.trips if (t.id, t.furnace) == (timed.step, furnace)]
    hand = {Part("hand timing", timed.step): SUDDEN if timed.severity == "stop" else BY_HAND}
    return [Estimate(seconds, hand) for seconds in measured if seconds is not None]


def _row(timed: _Timed, step: Step, found: list[Estimate], bounds: Bounds | None) -> Row:
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
    row = with_estimate(row, found[-1] if found else None)
    if bounds is None:
        return replace(row, severity="correct", why=message("find-it"))
    row = replace(
        row,
        lower=bounds.lower,
        upper=bounds.upper,
        limit_from=bounds.limit_from,
        source=bounds.source,
    )
    return _decided(row, timed, found) if found else row


def _decided(row: Row, timed: _Timed, found: list[Estimate]) -> Row:
    """A stop limit is guarded, and a time past it stands until two later ones conform."""
    last, stood = found[-1], False
    if timed.severity == "stop":
        series = [(each.value, each.u) for each in found]
        decision, stood = decide_stop(series, row.lower, row.upper)
    else:
        decision = decide(last.value, last.u, row.lower, row.upper, "simple")
    unsure = "retaken" if stood else "straddles"
    whys: dict[Decision, str] = {"conforms": "within", "undecided": unsure}
    return replace(
        row,
        decision=decision,
        rule="guarded" if timed.severity == "stop" else "simple",
        probability=probability_within(last.value, last.u, row.lower, row.upper),
        why=message(whys.get(decision, f"{timed.wrong}-time"), expanded=last.expanded),
    )


def _usual(timed: _Timed, step: Step) -> Bounds | None:
    """The plate's seconds, with a timer's tolerance where nothing has to stop."""
    if timed.severity == "stop":
        if step.seconds is None:
            return Bounds(None, FLAME_FAILURE, "common practice", COMMON_PRACTICE)
        return Bounds(None, step.seconds, "plate", UNIT_PLATE)
    if step.seconds is None:
        return None
    if timed.wrong == "shorter":
        return Bounds(step.seconds * (1 - TIMER), None, "plate", UNIT_PLATE)
    return Bounds(None, step.seconds * (1 + TIMER), "plate", UNIT_PLATE)
