"""Joints soaped, and pressure that holds."""

from dataclasses import replace

from lightoff.inference.conformity import retaken, steady
from lightoff.inference.estimate import RECTANGULAR, Estimate, NoSuchStateError, Part, combine
from lightoff.inference.instruments import UNKNOWN
from lightoff.judgement.answer import Judged, Row, with_estimate
from lightoff.judgement.evidence import Evidence
from lightoff.judgement.limits import Allowed, overridden
from lightoff.judgement.message import message
from lightoff.judgement.target import Bounds
from lightoff.machine.visit import Decay, Visit
from lightoff.physics.tightness import temperature_corrected_drop

TEMPERATURE_UNREAD = 1.0  # [K] change of gas temperature nobody read; engineering judgement
GAS_TEMPERATURE = 288.706  # [K] 60 degF, where nobody read it
SOURCE = "NFPA 54 / IFGC; ideal gas law"


def joint_row(visit: Visit) -> Row:
    """No leak at any joint: the last test of each one counts."""
    last = {(joint.id, joint.furnace): joint for joint in visit.joints}
    leaking = [joint.id for joint in last.values() if joint.outcome == "leaks"]
    row = Row(
        id="tightness: joints",
        decision="conforms",
        severity="stop",
        why=message("tight", tested=len(last)),
        caution="caution-soap",
    )
    if leaking:
        return replace(row, decision="does not conform", why=message("leaks", joints=leaking))
    if not last:
        return replace(row, decision="not measured", why=message("no-joint-tested"))
    return row


def decay_row(evidence: Evidence) -> Judged:
    """Pressure lost beyond what temperature explains: the section that stands worst."""
    hold = _allowed(evidence.visit)
    row = Row(
        id="tightness: decay",
        decision="not measured",
        severity="stop",
        why=message("no-decay-test"),
        caution="caution-test",
    )
    sections: dict[str, list[Estimate]] = {}
    try:
        for decay in evidence.visit.decays:
            sections.setdefault(decay.section, []).append(_drop(evidence, decay))
    except NoSuchStateError:
        return Judged(replace(row, why=message("no-such-decay")), hold.remark)
    judged = [_section(row, name, drops, hold.bounds) for name, drops in sections.items()]
    worst = min(judged, key=lambda each: _WORST_FIRST.index(each.decision), default=row)
    return Judged(worst, hold.remark)


_WORST_FIRST = ("does not conform", "undecided", "conforms", "not measured")


def _section(row: Row, section: str, drops: list[Estimate], bounds: Bounds | None) -> Row:
    """A drop beyond its own uncertainty is a leak, and stands until two later tests hold."""
    allowance = bounds.upper or 0.0 if bounds is not None else 0.0
    past = [drop.value - allowance > drop.expanded for drop in drops]
    agree = steady([(drop.value, drop.u) for drop in drops[-2:]])
    decision, _ = retaken(past, [not leaks for leaks in past], agree)
    why = {"does not conform": "decays", "undecided": "retaken"}.get(decision, "holds")
    last = drops[-1]
    return replace(
        with_estimate(row, last),
        decision=decision,
        upper=allowance,
        kind="pressure",
        limit_from=None if bounds is None else bounds.limit_from,
        source=None if bounds is None else bounds.source,
        why=message(why, section=section, drop=last.value, expanded=last.expanded),
    )


def _allowed(visit: Visit) -> Allowed:
    """Nothing may be lost, unless the authority allows it [Pa]."""
    limit = next((x for x in reversed(visit.limits) if x.target == "tightness: decay"), None)
    return overridden("stop", Bounds(None, 0.0, "physics", SOURCE), limit)


def _drop(evidence: Evidence, decay: Decay) -> Estimate:
    """Drop that temperature does not explain [Pa]; one gauge reads both ends: its gain cancels."""
    resolution = decay.resolution or UNKNOWN["pressure"].resolution
    gauge = resolution / 2 * RECTANGULAR
    read = [t for t in (decay.start_temperature, decay.end_temperature) if t is not None]
    start, end = (read[0], read[-1]) if read else (GAS_TEMPERATURE, GAS_TEMPERATURE)
    unread = len(read) < 2
    change = TEMPERATURE_UNREAD if unread else UNKNOWN["temperature"].resolution * RECTANGULAR
    return combine(
        lambda p1, p2, t2, b: temperature_corrected_drop(
            start=p1, end=p2, start_temperature=start, end_temperature=t2, barometer=b
        ),
        Estimate(decay.start, {Part("resolution", "decay start"): gauge}),
        Estimate(decay.end, {Part("resolution", "decay end"): gauge}),
        Estimate(end, {Part("gas temperature", "decay"): change}),
        evidence.barometer(),
    )
