"""`lightoff judge --why`: one number opened, to its equations and to what makes it uncertain."""

from collections.abc import Iterator

from lightoff.job import Job
from lightoff.judgement import Assessment, worked
from lightoff.machine import Visit, canonical
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
    if not rows:
        raise NoSuchNumberError(
            f'"{asked}" is no number of this visit: write a point and its run, as "{_one(answer)}"'
        )
    for row in rows:
        yield from row_lines(row, speech)
        if not is_open(row) and (window := speech.window(row)):
            yield Line(f"       {speech.word('text:limits', window=window)}", "note")
        yield from budget_lines(row.budget, row.kind or "number", visit, speech)
    yield from working_lines(speech.word("point:working"), worked(machine, visit, rows[0]), speech)


def _one(answer: Assessment) -> str:
    """A number there is."""
    named = (f"{row.point} {row.run}" for row in answer.targets if row.estimate is not None)
    return next(named, "gas.supply high")
