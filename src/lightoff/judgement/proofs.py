"""What is proven rather than read: checks, trips, timed steps, joints and pressure decay."""

from collections.abc import Iterator
from dataclasses import replace

from lightoff.inference.conformity import Decision, decide, probability_within
from lightoff.inference.estimate import RECTANGULAR, Estimate, Part, combine
from lightoff.inference.instruments import UNKNOWN
from lightoff.judgement.answer import BudgetLine, Row
from lightoff.judgement.evidence import Evidence
from lightoff.judgement.limits import said_by
from lightoff.judgement.message import Message, message
from lightoff.judgement.target import COMMON_PRACTICE, UNIT_PLATE, LimitFrom
from lightoff.machine import Machine, Step, Trip, checks, sequence, trips
from lightoff.machine.visit import Decay, Severity, TripProof, Visit
from lightoff.physics.tightness import temperature_corrected_drop

STOP_CHECKS = frozenset(
    {
        "fan.rotation",
        "gas.type_matches",
        "gas.conversion_complete",
        "gas.upstream_tested",
        "vent.complete",
        "vent.clearance",
        "combustion_air.openings",
        "pilots.relit",
        "spillage.none",
    }
)
FLAME_FAILURE = 4.0  # [s] where the plate is silent; [cp]
SUDDEN = 0.25  # [s] timing a sudden event by hand; engineering judgement
BY_HAND = 0.15  # [s] timing an event that is foreseen by hand; engineering judgement
TIMER = 0.05  # [1] a timer shorter or longer than its plate; [cp]
TEMPERATURE_UNREAD = 1.0  # [K] change of gas temperature nobody read; engineering judgement

# target, step, severity, which side of the plate's seconds is unsafe
_STEPS: tuple[tuple[str, str, Severity, str], ...] = (
    ("flame failure time", "flame failure", "stop", "longer"),
    ("purge", "purge", "correct", "shorter"),
    ("ignition trial", "ignition trial", "correct", "longer"),
    ("post purge", "post purge", "correct", "shorter"),
    ("stage delay", "stage delay", "correct", "shorter"),
)
# seconds the job format has no usual place for: asked for only where declared or measured
_ONLY_IF_DECLARED = ("post purge", "stage delay")


def proof_rows(evidence: Evidence) -> list[Row]:
    """Rows of everything to be proven, in the order of work."""
    machine, visit = evidence.machine, evidence.visit
    return [
        *_check_rows(machine, visit),
        *_trip_rows(machine, visit),
        *_step_rows(machine, visit),
        _joints(visit),
        _decays(evidence),
    ]


def _check_rows(machine: Machine, visit: Visit) -> Iterator[Row]:
    made = {check.id: check.outcome for check in visit.checks}
    for check in checks(machine):
        outcome = made.get(check)
        decision: Decision = "not measured"
        if outcome is not None:
            decision = "does not conform" if outcome == "wrong" else "conforms"
        why = message(
            {None: "not-checked", "wrong": "found-wrong", "right": "found-right"}.get(
                outcome, "not-applicable"
            )
        )
        severity: Severity = "stop" if check in STOP_CHECKS else "correct"
        yield _proof(f"check: {check}", check, decision, severity, why)


def _trip_rows(machine: Machine, visit: Visit) -> Iterator[Row]:
    for trip in trips(machine):
        proofs = [p for p in visit.trips if (p.id, p.furnace) == (trip.id, trip.furnace)]
        if not proofs:
            decision, why = _unproven()
        else:
            decision, why = _proven(machine, trip, proofs[-1])
        yield _proof(
            f"trip: {trip.id}", trip.id, decision, "stop", why, trip.furnace, "caution-trip"
        )


def _unproven() -> tuple[Decision, Message]:
    return "not measured", message("not-proven")


def _proven(machine: Machine, trip: Trip, proof: TripProof) -> tuple[Decision, Message]:
    """A trip acts, at its declared value, and restarts only as intended."""
    if proof.acted is None:
        return _unproven()
    if not proof.acted:
        return "does not conform", message("did-not-act")
    if proof.restarted is False:
        return "does not conform", message("restarted-wrongly")
    if trip.id == "high limit" and proof.value is not None and trip.furnace is not None:
        setting = machine.furnace(trip.furnace).high_limit
        u = UNKNOWN["temperature"].plus_minus * RECTANGULAR
        if setting is not None and probability_within(proof.value, u, None, setting) < 0.05:
            return "does not conform", message("acted-late", by=proof.value - setting)
    if proof.restarted is None:
        return "undecided", message("restart-not-seen")
    return "conforms", message("acted")


def _step_rows(machine: Machine, visit: Visit) -> Iterator[Row]:
    steps = {(step.id, step.furnace): step for step in sequence(machine)}
    for target, name, severity, unsafe in _STEPS:
        for number, _ in machine.numbered():
            step = steps.get((name, number))
            if step is None:
                continue
            seconds = _seconds(visit, name, number)
            if seconds is None and step.seconds is None and name in _ONLY_IF_DECLARED:
                continue
            yield _step_row(visit, target, step, seconds, severity, unsafe)


def _seconds(visit: Visit, name: str, furnace: int) -> float | None:
    """Seconds measured of a step; a proven flame failure is timed as well."""
    timed = [s.seconds for s in visit.steps if (s.id, s.furnace) == (name, furnace)]
    timed += [t.seconds for t in visit.trips if (t.id, t.furnace) == (name, furnace)]
    return next((s for s in reversed(timed) if s is not None), None)


def _step_row(
    visit: Visit, target: str, step: Step, seconds: float | None, severity: Severity, unsafe: str
) -> Row:
    limits = _step_limits(visit, target, step, unsafe)
    found = None
    if seconds is not None:
        hand = SUDDEN if target == "flame failure time" else BY_HAND
        found = Estimate(seconds, {Part("hand timing", step.id): hand})
    if limits is None:
        return _timed(target, step, "not measured", "correct", message("find-it"), found)
    lower, upper, limit_from, source = limits
    if found is None:
        why = message("not-timed")
        return _timed(target, step, "not measured", severity, why, None, *limits)
    decision = _time_decision(found, lower, upper, severity)
    why = message(
        {"conforms": "within", "undecided": "straddles"}.get(decision, f"{unsafe}-time"),
        expanded=found.expanded,
    )
    return _timed(target, step, decision, severity, why, found, lower, upper, limit_from, source)


def _time_decision(
    found: Estimate, lower: float | None, upper: float | None, severity: Severity
) -> Decision:
    """Stop limits are guarded, and a bare reading past one does not conform."""
    if severity != "stop":
        return decide(found.value, found.u, lower, upper, "simple")
    if upper is not None and found.value > upper:
        return "does not conform"
    return decide(found.value, found.u, lower, upper, "guarded")


def _step_limits(
    visit: Visit, target: str, step: Step, unsafe: str
) -> tuple[float | None, float | None, LimitFrom, str] | None:
    own = [limit for limit in visit.limits if limit.target == target]
    if own:
        return own[-1].lower, own[-1].upper, "specification", own[-1].source
    if step.seconds is None:
        if target == "flame failure time":
            return None, FLAME_FAILURE, "common practice", COMMON_PRACTICE
        return None
    if target == "flame failure time":
        return None, step.seconds, "plate", UNIT_PLATE
    if unsafe == "shorter":
        return step.seconds * (1 - TIMER), None, "plate", UNIT_PLATE
    return None, step.seconds * (1 + TIMER), "plate", UNIT_PLATE


def _joints(visit: Visit) -> Row:
    """No leak at any joint: the last test of each one counts."""
    last = {(joint.id, joint.furnace): joint for joint in visit.joints}
    leaking = [joint.id for joint in last.values() if joint.outcome == "leaks"]
    decision: Decision = "conforms"
    why = message("tight", tested=len(last))
    if leaking:
        decision, why = "does not conform", message("leaks", joints=leaking)
    elif not last:
        decision, why = "not measured", message("no-joint-tested")
    return _proof("tightness: joints", None, decision, "stop", why, None, "caution-soap")


def _decays(evidence: Evidence) -> Row:
    """Pressure lost beyond what temperature explains: the worst section, by its last test."""
    last = {decay.section: decay for decay in evidence.visit.decays}
    if not last:
        why = message("no-decay-test")
        return _proof("tightness: decay", None, "not measured", "stop", why, None, "caution-test")
    drops = [(_drop(evidence, decay), decay) for decay in last.values()]
    worst, decay = max(drops, key=lambda pair: pair[0].value - pair[0].expanded)
    allowance, source = _allowance(evidence.visit)
    leaking = worst.value - allowance > worst.expanded
    why = message(
        "decays" if leaking else "holds",
        section=decay.section,
        drop=worst.value,
        expanded=worst.expanded,
    )
    row = _proof(
        "tightness: decay",
        None,
        "does not conform" if leaking else "conforms",
        "stop",
        why,
        None,
        "caution-test",
        worst,
        allowance,
    )
    return replace(row, source=source) if source else row


def _allowance(visit: Visit) -> tuple[float, str | None]:
    """What the authority allows a section to lose [Pa], and who said so; nothing otherwise."""
    for limit in reversed(visit.limits):
        said = said_by(limit.source) != "specification"
        if limit.target == "tightness: decay" and limit.upper is not None and said:
            return limit.upper, limit.source
    return 0.0, None


def _drop(evidence: Evidence, decay: Decay) -> Estimate:
    """Drop that temperature does not explain [Pa]; one gauge reads both ends: its gain cancels."""
    resolution = decay.resolution or UNKNOWN["pressure"].resolution
    gauge = resolution / 2 * RECTANGULAR
    start_temperature = decay.start_temperature or 288.15
    end_temperature = decay.end_temperature or start_temperature
    unread = decay.start_temperature is None or decay.end_temperature is None
    change = TEMPERATURE_UNREAD if unread else UNKNOWN["temperature"].resolution * RECTANGULAR
    return combine(
        lambda p1, p2, t2, b: float(
            temperature_corrected_drop(
                start=p1,
                end=p2,
                start_temperature=start_temperature,
                end_temperature=t2,
                barometer=b,
            )
        ),
        Estimate(decay.start, {Part("resolution", "decay start"): gauge}),
        Estimate(decay.end, {Part("resolution", "decay end"): gauge}),
        Estimate(end_temperature, {Part("gas temperature", "decay"): change}),
        evidence.barometer(),
    )


def _timed(
    target: str,
    step: Step,
    decision: Decision,
    severity: Severity,
    why: Message,
    found: Estimate | None,
    lower: float | None = None,
    upper: float | None = None,
    limit_from: LimitFrom | None = None,
    source: str | None = None,
) -> Row:
    return Row(
        id=target,
        point=step.id,
        run=None,
        decision=decision,
        estimate=None if found is None else found.value,
        standard_uncertainty=None if found is None else found.u,
        lower=lower,
        upper=upper,
        probability=None
        if found is None
        else probability_within(found.value, found.u, lower, upper),
        rule=None if found is None else ("guarded" if severity == "stop" else "simple"),
        severity=severity,
        limit_from=limit_from,
        source=source,
        stale=False,
        why=why,
        furnace=step.furnace,
        kind="time",
        caution="caution-trip",
        budget=_budget(found),
    )


def _proof(
    target: str,
    point: str | None,
    decision: Decision,
    severity: Severity,
    why: Message,
    furnace: int | None = None,
    caution: str | None = None,
    found: Estimate | None = None,
    upper: float | None = None,
) -> Row:
    return Row(
        id=target,
        point=point,
        run=None,
        decision=decision,
        estimate=None if found is None else found.value,
        standard_uncertainty=None if found is None else found.u,
        lower=None,
        upper=upper,
        probability=None,
        rule=None,
        severity=severity,
        limit_from=None if upper is None else "physics",
        source=None if upper is None else "NFPA 54 / IFGC; ideal gas law",
        stale=False,
        why=why,
        furnace=furnace,
        kind=None if found is None else "pressure",
        caution=caution,
        budget=_budget(found),
    )


def _budget(found: Estimate | None) -> tuple[BudgetLine, ...]:
    if found is None:
        return ()
    return tuple(BudgetLine(part.cause, part.of, size) for part, size in found.budget())
