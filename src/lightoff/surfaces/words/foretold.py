"""A run foretold, as plain text at 80 columns."""

from collections.abc import Iterator

from lightoff.inference.estimate import COVERAGE
from lightoff.judgement.foretell import Foretold, ForetoldRow
from lightoff.machine import Machine, points
from lightoff.surfaces.words.groups import group_of_point
from lightoff.surfaces.words.plain import Line
from lightoff.surfaces.words.speech import Speech

NAME, VALUE = 46, 22


def as_lines(told: Foretold, machine: Machine, speech: Speech) -> Iterator[Line]:
    """The run, on whose word, how the machine fares, and every value in its group."""
    run, outdoor = speech.run(told.run), told.outdoor
    head = speech.word("foretold:head", unit=told.unit, run=run)
    if outdoor is not None:
        head = speech.word("foretold:day", head=head, day=speech.quantity(outdoor, "temperature"))
    yield Line(head, "verdict")
    yield Line(speech.word("foretold:read" if told.by_readings else "foretold:plate"), "counts")
    if told.outcome != "as it should":
        yield Line(speech.word(f"outcome:{told.outcome}"), "note")
    for title, rows in _grouped(told, machine, speech):
        yield Line("", "note")
        yield Line(title, "group")
        yield from (Line(_row(row, speech), "row") for row in rows)


def _grouped(
    told: Foretold, machine: Machine, speech: Speech
) -> Iterator[tuple[str, list[ForetoldRow]]]:
    """Points in the groups a technician thinks in, then what is worked out."""
    group_of = {point.id: group_of_point(point) for point in points(machine)}
    groups = sorted({group_of[row.id] for row in told.rows if row.id in group_of})
    for group in groups:
        yield group.title(speech), [row for row in told.rows if group_of.get(row.id) == group]
    derived = [row for row in told.rows if row.id not in group_of]
    if derived:
        yield speech.word("foretold:derived"), derived


def _row(row: ForetoldRow, speech: Speech) -> str:
    expanded = COVERAGE * row.standard_uncertainty
    shown = speech.parts(row.value, row.kind, expanded=expanded)
    spread = f" \u00b1 {speech.spread(expanded, row.kind)}" if expanded > 0 else ""
    return (
        f"  {speech.point(row.id):<{NAME}} {shown.number + spread:>{VALUE}} {shown.unit}".rstrip()
    )
