"""`lightoff judge --why`: one number opened, to its equations and to what makes it uncertain."""

from collections.abc import Iterator

from lightoff.job import Job
from lightoff.judgement import Assessment, Row, worked
from lightoff.machine import Visit, canonical
from lightoff.quantity import LightoffError
from lightoff.surfaces.calculating import step_shown
from lightoff.surfaces.calculating.plain import step_lines
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.budget import MOST, belongs_to
from lightoff.surfaces.words.plain import Line, is_open, row_lines

SIZE = 18  # columns of a part's size


class NoSuchNumberError(LightoffError):
    """Nothing of that name was read or worked out in the visit."""


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
        yield from _budget(row, visit, speech)
    steps = worked(machine, visit, rows[0])
    if steps:
        yield Line("", "note")
        yield Line(speech.word("point:working"), "group")
    for place, step in enumerate(steps, start=1):
        yield from step_lines(step_shown(step, speech), place, speech)


def _one(answer: Assessment) -> str:
    """A number there is."""
    named = (f"{row.point} {row.run}" for row in answer.targets if row.estimate is not None)
    return next(named, "gas.supply high")


def _budget(row: Row, visit: Visit, speech: Speech) -> Iterator[Line]:
    """The parts of its standard uncertainty, the largest first."""
    if not row.budget or row.kind is None:
        return
    yield Line(f"       {speech.word('budget')}", "note")
    for part in row.budget[:MOST]:
        cause, of = speech.word(f"budget:{part.cause}"), belongs_to(part.of, visit, speech)
        yield _part(part.standard_uncertainty, ", ".join(filter(None, (cause, of))), row, speech)
    rest = row.budget[MOST:]
    if rest:
        size = sum(part.standard_uncertainty**2 for part in rest) ** 0.5
        yield _part(size, speech.word("budget:rest", count=len(rest)), row, speech)


def _part(size: float, text: str, row: Row, speech: Speech) -> Line:
    shown = speech.difference(size, row.kind or "number", expanded=size)
    return Line(f"{shown:>{SIZE}}  {text}", "note")
