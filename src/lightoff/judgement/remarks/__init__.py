"""What a technician would notice: the declared against itself, the visit against the declared."""

from collections.abc import Sequence

from lightoff.judgement.answer import Row, Verdict
from lightoff.judgement.evidence import Evidence
from lightoff.judgement.message import Remark
from lightoff.judgement.remarks.declared import declared
from lightoff.judgement.remarks.instruments import instruments
from lightoff.judgement.remarks.misfits import misfits
from lightoff.judgement.remarks.slips import slips
from lightoff.judgement.remarks.visit import on_visit
from lightoff.judgement.together import Together
from lightoff.machine import Machine, Visit


def remarks(
    machine: Machine,
    visit: Visit,
    evidence: Evidence,
    together: Together | None,
    rows: Sequence[Row],
    verdict: Verdict,
) -> list[Remark]:
    """Every remark of one visit; a remark refuses nothing and keeps every value as typed."""
    return [
        *declared(machine),
        *on_visit(machine, visit, evidence, verdict),
        *instruments(machine, visit, rows, together),
        *slips(evidence, rows),
        *(misfits(together) if together else ()),
    ]
