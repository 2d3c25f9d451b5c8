"""One visit, judged: the composition of everything the trade decides."""

from dataclasses import replace

from lightoff.judgement.answer import Assessment, Row
from lightoff.judgement.deferral import deferred
from lightoff.judgement.derived import derived_rows, point_rows
from lightoff.judgement.evidence import Evidence, evidence
from lightoff.judgement.history import history
from lightoff.judgement.message import Remark
from lightoff.judgement.proofs import proof_rows
from lightoff.judgement.remarks import remarks
from lightoff.judgement.required import is_required
from lightoff.judgement.rows import judged_rows
from lightoff.judgement.verdict import verdict
from lightoff.machine import Machine, Visit

ENGINE = "0.1.0"
FORMAT = 1


def assess(machine: Machine, visit: Visit, *, before: Visit | None = None) -> Assessment:
    """Judge one visit of one machine; pure, and the same every time.

    `before` is the visit before it: what this visit's purpose does not ask for is carried from
    there as a dated remark.
    """
    states = history(machine, visit)
    left = evidence(machine, visit, states)
    targets, limit_remarks = _rows(left)
    found = targets
    if states.found != states.left:
        found, _ = _rows(replace(left, state="as found"))
    answer = verdict(targets)
    return Assessment(
        format=FORMAT,
        unit=machine.unit.tag,
        visit=visit.number,
        engine=ENGINE,
        verdict=answer,
        remarks=(
            *remarks(machine, visit, left, targets, answer),
            *limit_remarks,
            *_carried(machine, visit, before, targets),
        ),
        targets=targets,
        points=tuple(point_rows(left)),
        as_found=found,
        derived=tuple(derived_rows(left)),
    )


def _carried(
    machine: Machine, visit: Visit, before: Visit | None, rows: tuple[Row, ...]
) -> list[Remark]:
    """What was not asked for this time and not measured, as the visit before left it."""
    if before is None:
        return []
    earlier, _ = _rows(evidence(machine, before, history(machine, before)))
    known = {row.key: row for row in earlier if row.decision != "not measured"}
    day = before.date.isoformat() if before.date is not None else None
    return [
        Remark(
            f"visit.{visit.number}",
            "carried",
            {"target": row.id, "point": row.point, "decision": known[row.key].decision, "day": day},
        )
        for row in rows
        if not row.required and row.decision == "not measured" and row.key in known
    ]


def _rows(told: Evidence) -> tuple[tuple[Row, ...], tuple[Remark, ...]]:
    machine, visit = told.machine, told.visit
    judged = [*judged_rows(told), *proof_rows(told)]
    rows = [deferred(machine, visit, j.row) for j in judged]
    marked = tuple(replace(row, required=is_required(machine, visit, row)) for row in rows)
    said = {j.remark.place: j.remark for j in judged if j.remark is not None}
    return marked, tuple(said.values())
