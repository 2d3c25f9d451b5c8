"""Checks seen and trips made to act."""

from collections.abc import Iterator

from lightoff.inference.conformity import CONFIDENT, Decision, probability_within
from lightoff.inference.estimate import RECTANGULAR
from lightoff.inference.instruments import UNKNOWN
from lightoff.judgement.answer import Row
from lightoff.judgement.message import Message, message
from lightoff.machine import Machine, Trip, checks, trips
from lightoff.machine.visit import TripProof, Visit

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
_OUTCOMES: dict[str | None, tuple[Decision, str]] = {
    None: ("not measured", "not-checked"),
    "right": ("conforms", "found-right"),
    "wrong": ("does not conform", "found-wrong"),
    "not applicable": ("conforms", "not-applicable"),
}


def check_rows(machine: Machine, visit: Visit) -> Iterator[Row]:
    """One row a check; the last time it was looked at counts."""
    made = {check.id: check.outcome for check in visit.checks}
    for check in checks(machine):
        decision, why = _OUTCOMES[made.get(check)]
        yield Row(
            id=f"check: {check}",
            point=check,
            decision=decision,
            severity="stop" if check in STOP_CHECKS else "correct",
            why=message(why),
        )


def trip_rows(machine: Machine, visit: Visit) -> Iterator[Row]:
    """One row a trip; its last proof counts."""
    for trip in trips(machine):
        proofs = [p for p in visit.trips if (p.id, p.furnace) == (trip.id, trip.furnace)]
        decision, why = _proven(machine, trip, proofs[-1] if proofs else None)
        yield Row(
            id=f"trip: {trip.id}",
            point=trip.id,
            decision=decision,
            severity="stop",
            why=why,
            furnace=trip.furnace,
            caution="caution-trip",
        )


def _proven(machine: Machine, trip: Trip, proof: TripProof | None) -> tuple[Decision, Message]:
    """A trip acts, not above its setting, and restarts only as intended."""
    if proof is None or proof.acted is None:
        return "not measured", message("not-proven")
    if not proof.acted:
        return "does not conform", message("did-not-act")
    if proof.restarted is False:
        return "does not conform", message("restarted-wrongly")
    if (late := _late(machine, trip, proof)) is not None:
        return "does not conform", message("acted-late", by=late)
    if proof.restarted is None:
        return "undecided", message("restart-not-seen")
    return "conforms", message("acted")


def _late(machine: Machine, trip: Trip, proof: TripProof) -> float | None:
    """How far above its setting a high limit provably opened [K]."""
    if trip.id != "high limit" or trip.furnace is None or proof.value is None:
        return None
    setting = machine.furnace(trip.furnace).high_limit
    if setting is None:
        return None
    u = UNKNOWN["temperature"].plus_minus * RECTANGULAR
    within = probability_within(proof.value, u, None, setting)
    return proof.value - setting if within <= 1 - CONFIDENT else None
