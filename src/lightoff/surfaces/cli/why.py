"""`lightoff judge --why`: one number opened, to its equations and to what makes it uncertain."""

from collections.abc import Iterator

from lightoff.inference.estimate import COVERAGE, Estimate
from lightoff.job import Job
from lightoff.judgement import Assessment, worked
from lightoff.judgement.answer import BudgetLine
from lightoff.judgement.evidence import evidence
from lightoff.judgement.history import history
from lightoff.machine import Visit, canonical, kind_of
from lightoff.machine.visit import Reading
from lightoff.surfaces.calculating.plain import hanging
from lightoff.surfaces.cli.opened import NoSuchNumberError, budget_lines, working_lines
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.plain import Line, is_open, row_lines


def opened(job: Job, visit: Visit, answer: Assessment, asked: str) -> Iterator[Line]:
    """Every row of a point, or of it in one run: `input.1 high`."""
    point, _, run = asked.strip().partition(" ")
    machine, speech = job.machine(), Speech(job.display.units)
    wanted = canonical(machine, run.strip()) if run.strip() else None
    rows = [
        row
        for row in answer.targets
        if row.point == point and row.estimate is not None and wanted in (None, row.run)
    ]
    read = [
        reading
        for reading in visit.readings
        if reading.point == point
        and reading.value is not None
        and wanted in (None, canonical(machine, reading.run))
    ]
    if not rows and not read:
        raise NoSuchNumberError(
            f'"{asked}" is no number of this visit: write a point and its run, as "{_one(answer)}"'
        )
    for row in rows:
        yield from row_lines(row, speech)
        if not is_open(row) and (window := speech.window(row)):
            yield Line(f"       {speech.word('text:limits', window=window)}", "note")
        yield from budget_lines(row.budget, row.kind or "number", visit, speech)
    if rows:
        steps = worked(machine, visit, rows[0])
        yield from working_lines(speech.word("point:working"), steps, speech)
        return
    told = evidence(machine, visit, history(machine, visit))
    for reading in read:
        yield from _reading(reading, told.of(reading), answer, visit, speech)


def _reading(
    reading: Reading, found: Estimate, answer: Assessment, visit: Visit, speech: Speech
) -> Iterator[Line]:
    """A reading that no limit is about: how sure it is, and what the others say of it."""
    kind = kind_of(reading.point) or "number"
    name = speech.reading(f"{reading.point} {reading.run}")
    value = speech.parts(found.value, kind, expanded=found.expanded)
    spread = speech.spread(found.expanded, kind)
    yield Line(f"{name}: {value.number} \u00b1 {spread} {value.unit}", "verdict")
    parts = tuple(BudgetLine(part.cause, part.of, size) for part, size in found.budget())
    yield from budget_lines(parts, kind, visit, speech)
    here = (each for each in answer.points if (each.id, each.run) == (reading.point, reading.run))
    for row in here:
        if row.foretold is not None:
            expanded = COVERAGE * (row.foretold_uncertainty or 0.0)
            says = speech.quantity(row.foretold, kind, expanded=expanded)
            word = "check:off" if row.suspect else "check:fits"
            text = speech.word(word, value=says, spread=speech.spread(expanded, kind))
            yield from hanging(text, "  ")


def _one(answer: Assessment) -> str:
    """A number there is."""
    named = (f"{row.point} {row.run}" for row in answer.targets if row.estimate is not None)
    return next(named, "gas.supply high")
