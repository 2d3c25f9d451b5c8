"""Joints soaped, and pressure that holds."""

from dataclasses import replace

from lightoff.inference.estimate import RECTANGULAR, Estimate, NoSuchStateError, Part, combine
from lightoff.inference.instruments import UNKNOWN
from lightoff.judgement.answer import Row, with_estimate
from lightoff.judgement.evidence import Evidence
from lightoff.judgement.limits import said_by
from lightoff.judgement.message import message
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


def decay_row(evidence: Evidence) -> Row:
    """Pressure lost beyond what temperature explains: the worst section, by its last test."""
    row = Row(
        id="tightness: decay",
        decision="not measured",
        severity="stop",
        why=message("no-decay-test"),
        caution="caution-test",
    )
    last = {decay.section: decay for decay in evidence.visit.decays}
    if not last:
        return row
    try:
        drops = [(_drop(evidence, decay), decay) for decay in last.values()]
    except NoSuchStateError:
        return replace(row, why=message("no-such-decay"))
    worst, decay = max(drops, key=lambda pair: pair[0].value - pair[0].expanded)
    allowance, source = _allowance(evidence.visit)
    leaking = worst.value - allowance > worst.expanded
    values = {"section": decay.section, "drop": worst.value, "expanded": worst.expanded}
    return replace(
        with_estimate(row, worst),
        decision="does not conform" if leaking else "conforms",
        upper=allowance,
        kind="pressure",
        limit_from="code" if source else "physics",
        source=source or SOURCE,
        why=message("decays" if leaking else "holds", **values),
    )


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
    read = [t for t in (decay.start_temperature, decay.end_temperature) if t is not None]
    start, end = (read[0], read[-1]) if read else (GAS_TEMPERATURE, GAS_TEMPERATURE)
    unread = len(read) < 2
    change = TEMPERATURE_UNREAD if unread else UNKNOWN["temperature"].resolution * RECTANGULAR
    return combine(
        lambda p1, p2, t2, b: float(
            temperature_corrected_drop(
                start=p1, end=p2, start_temperature=start, end_temperature=t2, barometer=b
            )
        ),
        Estimate(decay.start, {Part("resolution", "decay start"): gauge}),
        Estimate(decay.end, {Part("resolution", "decay end"): gauge}),
        Estimate(end, {Part("gas temperature", "decay"): change}),
        evidence.barometer(),
    )
