"""What is proven rather than read: checks, trips, timed steps, joints and pressure decay."""

from lightoff.judgement.answer import Judged
from lightoff.judgement.evidence import Evidence
from lightoff.judgement.proofs.seen import check_rows, trip_rows
from lightoff.judgement.proofs.tight import decay_row, joint_row
from lightoff.judgement.proofs.timed import step_rows

__all__ = ["proof_rows"]


def proof_rows(evidence: Evidence) -> list[Judged]:
    """Rows of everything to be proven, in the order of work."""
    machine, visit = evidence.machine, evidence.visit
    return [
        *map(Judged, check_rows(machine, visit)),
        *map(Judged, trip_rows(machine, visit)),
        *step_rows(machine, visit),
        Judged(joint_row(visit)),
        decay_row(evidence),
    ]
