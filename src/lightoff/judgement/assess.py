"""One visit, judged: the composition of everything the trade decides."""

from dataclasses import replace

from lightoff.judgement.answer import Assessment, Row
from lightoff.judgement.causes import diagnose
from lightoff.judgement.deferral import deferred
from lightoff.judgement.derived import derived_rows
from lightoff.judgement.evidence import Evidence, evidence
from lightoff.judgement.fits import Fits
from lightoff.judgement.fitted import fit, unknown_rows
from lightoff.judgement.history import History, history
from lightoff.judgement.message import Remark
from lightoff.judgement.pointed import point_rows
from lightoff.judgement.proofs import proof_rows
from lightoff.judgement.remarks import remarks
from lightoff.judgement.required import is_required
from lightoff.judgement.retaken import retaken
from lightoff.judgement.rows import judged_rows
from lightoff.judgement.together import Together, together
from lightoff.judgement.verdict import verdict
from lightoff.machine import Machine, Visit

ENGINE = "0.1.0"
FORMAT = 1


def assess(
    machine: Machine,
    visit: Visit,
    *,
    before: Visit | None = None,
    whole: bool = True,
    fits: Fits | None = None,
) -> Assessment:
    """Judge one visit of one machine; pure, and the same every time.

    `before` is the visit before it: what this visit's purpose does not ask for is carried from
    there as a dated remark. Without `whole` the decisions are the same and come sooner: points
    nobody read, unknowns and what each uncertainty is made of are left out. `fits` are fits made
    before: they change nothing but the time it takes.
    """
    known = fits or Fits()
    states = history(machine, visit)
    left = evidence(machine, visit, states)
    model = _model(left, known)
    targets, limit_remarks = _rows(left, model, whole=whole)
    answer = verdict(targets)
    return Assessment(
        format=FORMAT,
        unit=machine.unit.tag,
        visit=visit.number,
        engine=ENGINE,
        verdict=answer,
        remarks=(
            *remarks(machine, visit, left, model, targets, answer),
            *limit_remarks,
            *_carried(machine, visit, before, targets, known),
        ),
        targets=targets,
        points=tuple(point_rows(left, model, whole=whole)),
        as_found=_as_found(left, states, targets, known, whole=whole),
        derived=tuple(derived_rows(left, model)) if whole else (),
        unknowns=tuple(unknown_rows(model)) if whole and model else None,
        fit=fit(model) if model else None,
        causes=diagnose(machine, visit, model) if whole and model else None,
    )


def _model(told: Evidence, fits: Fits) -> Together | None:
    """The model as all readings leave it, save those taken again because they were past a limit."""
    return together(told, retaken(told), fits)


def _as_found(
    left: Evidence, states: History, targets: tuple[Row, ...], fits: Fits, *, whole: bool
) -> tuple[Row, ...]:
    if states.found == states.left:
        return targets
    found = replace(left, state="as found")
    rows, _ = _rows(found, _model(found, fits), whole=whole)
    return rows


def _carried(
    machine: Machine, visit: Visit, before: Visit | None, rows: tuple[Row, ...], fits: Fits
) -> list[Remark]:
    """What was not asked for this time and not measured, as the visit before left it."""
    waiting = [row for row in rows if not row.required and row.decision == "not measured"]
    if before is None or not waiting:
        return []
    then = evidence(machine, before, history(machine, before))
    earlier, _ = _rows(then, _model(then, fits), whole=False)
    known = {row.key: row for row in earlier if row.decision != "not measured"}
    day = before.date.isoformat() if before.date is not None else None
    return [
        Remark(
            f"visit.{visit.number}",
            "carried",
            {"target": row.id, "point": row.point, "decision": known[row.key].decision, "day": day},
        )
        for row in waiting
        if row.key in known
    ]


def _rows(
    told: Evidence, model: Together | None, *, whole: bool
) -> tuple[tuple[Row, ...], tuple[Remark, ...]]:
    machine, visit = told.machine, told.visit
    judged = [*judged_rows(told, model, budgets=whole), *proof_rows(told)]
    rows = [deferred(machine, visit, j.row) for j in judged]
    marked = tuple(replace(row, required=is_required(machine, visit, row)) for row in rows)
    said = {j.remark.place: j.remark for j in judged if j.remark is not None}
    return marked, tuple(said.values())
