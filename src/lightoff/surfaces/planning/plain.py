"""A plan as plain text: readable without colour, at 80 columns."""

import textwrap
from collections.abc import Iterator

from lightoff.surfaces.planning.gear import GearShown, TooCoarse
from lightoff.surfaces.planning.reads import ReadShown
from lightoff.surfaces.planning.sheet import PlanSheet
from lightoff.surfaces.planning.work import StepShown, TaskShown
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.plain import SIGNS, WIDTH, Line, Style

NAME, RUN, VALUE = 40, 7, 17
COARSE, AMOUNT = 27, 18
INDENT = " " * 6
_TITLES = ("too-coarse", "claims", "enough", "take")
_SIGNS = {"ok": SIGNS["conforms"], "un": SIGNS["undecided"], "nm": SIGNS["not measured"]}


def as_lines(sheet: PlanSheet, head: str, speech: Speech) -> Iterator[Line]:
    """What to carry, what is ready, what waits, and what it should read."""
    yield from _wrapped(head, "", "verdict")
    told = [f"{tally.number} {tally.word}" for tally in sheet.tallies]
    yield Line(", ".join([*told, *filter(None, (sheet.time, sheet.weather))]), "counts")
    yield from _carry(sheet, speech)
    yield from _work(sheet, speech)
    for group in sheet.reads:
        yield from _headed(speech.word("plan:reads-of", group=group.title))
        for read in group.reads:
            yield from _read(read)


def _work(sheet: PlanSheet, speech: Speech) -> Iterator[Line]:
    """What is ready, then what waits; there is always something ready until all is done."""
    yield from _headed(speech.word("plan:ready"))
    if not sheet.ready:
        yield from _wrapped(sheet.nothing, "  ")
    yield from _steps(sheet.ready, speech)
    if sheet.waiting:
        yield from _headed(speech.word("plan:waiting"))
        yield from _steps(sheet.waiting, speech)


def _carry(sheet: PlanSheet, speech: Speech) -> Iterator[Line]:
    if sheet.gear or sheet.notes:
        yield from _headed(speech.word("plan:carry"))
    for gear in sheet.gear:
        yield from _gear(gear, speech)
    for text in sheet.notes:
        yield from _wrapped(text, "  ")


def _gear(gear: GearShown, speech: Speech) -> Iterator[Line]:
    name = f"{gear.name}, {gear.kind}" if gear.kind else gear.name
    yield from _wrapped(f"{name}: {gear.note}", f"{_SIGNS[gear.mark]}  ", "row")
    if gear.purpose:
        yield from _wrapped(speech.word("plan:for", purpose=gear.purpose), INDENT)
    if gear.coarse is not None:
        yield from _coarse(gear.coarse, speech)


def _coarse(coarse: TooCoarse, speech: Speech) -> Iterator[Line]:
    yield _columns(*(speech.word(f"plan:{name}") for name in _TITLES))
    for use in coarse.uses:
        *before, last = textwrap.wrap(use.name, COARSE)
        yield from (_columns(part) for part in before)
        line = _columns(last, use.claims, use.enough, use.instead)
        if len(line.text) > WIDTH:  # a long name of one's own
            yield _columns(last, use.claims, use.enough)
            line = Line(f"{use.instead:>{WIDTH}}", "note")
        yield line


def _columns(name: str, claims: str = "", enough: str = "", instead: str = "") -> Line:
    text = f"{INDENT}{name:<{COARSE}} {claims:<{AMOUNT}} {enough:<{AMOUNT}} {instead}"
    return Line(text.rstrip(), "note")


def _steps(steps: tuple[StepShown, ...], speech: Speech) -> Iterator[Line]:
    for step in steps:
        yield Line(f"{step.number:>3}  {step.title}", "row")
        for task in step.tasks:
            yield from _task(task, speech)


def _task(task: TaskShown, speech: Speech) -> Iterator[Line]:
    """A task that waits in a line, one that is ready with all one needs to begin."""
    if task.waits_for:
        names = "; ".join(wait.name for wait in task.waits_for)
        waits = speech.word("plan:waits-for", tasks=names)
        yield from _wrapped(f"{task.name}: {waits}", INDENT, further=2)
        return
    beside = ", ".join(filter(None, (task.minutes, task.licence)))
    yield from _wrapped(f"{task.name} ({beside})", INDENT, "row")
    inner = INDENT + "  "
    yield from _wrapped(task.about, inner)
    for name, records in (("wrong", task.wrong), ("records", task.records)):
        if records:
            names = "; ".join(record.text for record in records)
            yield from _wrapped(f"{speech.word(f'plan:{name}')} {names}", inner)
    if task.instruments:
        yield from _wrapped(speech.word("plan:takes", instruments=task.instruments), inner)
    for caution in task.cautions:
        yield from _wrapped(f"! {caution}", inner, further=2)


def _read(read: ReadShown) -> Iterator[Line]:
    """Name, run and what to expect in columns; the window and who says so below."""
    value = f"{read.number} ± {read.spread}" if read.spread else read.number
    *before, last = textwrap.wrap(read.name, NAME)
    yield from (Line(f"  {part}", "row") for part in before)
    row = f"  {last:<{NAME}} {read.run_id:<{RUN}} {value:>{VALUE}} {read.unit}"
    yield Line(row.rstrip(), "row")
    if read.window:
        yield from _wrapped("; ".join((f"{read.window} ({read.why})", *read.also)), INDENT)
    elif read.why:
        yield from _wrapped(read.why, INDENT)


def _headed(title: str) -> Iterator[Line]:
    yield Line("", "note")
    yield Line(title, "group")


def _wrapped(text: str, head: str, style: Style = "note", further: int = 0) -> Iterator[Line]:
    """Text behind a head, going on below itself."""
    below = " " * (len(head) + further)
    for line in textwrap.wrap(text, WIDTH, initial_indent=head, subsequent_indent=below):
        yield Line(line, style)
