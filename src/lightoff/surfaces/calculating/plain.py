"""A sheet as plain text: the answer first, readable without colour, at 80 columns."""

import re
import textwrap
from collections.abc import Iterator, Sequence

from lightoff.surfaces.calculating.sheet import InputShown, ResultShown, Sheet, StepShown
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.plain import WIDTH, Line, Style
from lightoff.surfaces.working import equation_lines, si_text

LABEL = 42  # characters of a label on one line
LONGEST = 16  # characters of a value that still stands in a column
Value = InputShown | ResultShown


def as_text(sheet: Sheet, speech: Speech, *, working: bool = False) -> str:
    """The sheet as one text."""
    return "\n".join(line.text for line in as_lines(sheet, speech, working=working))


def as_lines(sheet: Sheet, speech: Speech, *, working: bool) -> Iterator[Line]:
    """Answer, notes, what it was worked out from, and the working where it is asked for."""
    used = [each for each in sheet.inputs if each.number]
    label, number = _columns([*sheet.results, *used])
    yield Line(sheet.title, "verdict")
    yield from hanging(sheet.about, "")
    yield Line("", "note")
    for result in sheet.results:
        yield from _value(result, label, number, "", "group")
    for note in sheet.notes:
        yield Line("", "note")
        yield from hanging(note.sentence, "    " if note.advice else "  ! ")
    yield from _headed(speech.word("sheet:from"))
    for each in used:
        yield from _value(each, label, number, _mark(each, speech), "row")
    if working:
        yield from _headed(speech.word("sheet:working"))
        for place, step in enumerate(sheet.steps, start=1):
            yield from step_lines(step, place, speech)


def _headed(title: str) -> Iterator[Line]:
    yield Line("", "note")
    yield Line(title, "group")


def _columns(values: Sequence[Value]) -> tuple[int, int]:
    """How wide the labels are, and the numbers of the usual length."""
    label = [min(len(each.label), LABEL) for each in values]
    number = [len(each.number) for each in values if len(each.number) <= LONGEST]
    return max(label, default=0), max(number, default=0)


def _value(each: Value, label: int, number: int, mark: str, style: Style) -> Iterator[Line]:
    """Label, number, unit and mark, the numbers ending in one column; a list goes on below."""
    *before, last = textwrap.wrap(each.label, label)
    yield from (Line(f"  {part}", style) for part in before)
    head = f"  {last:<{label}}  "
    text = "  ".join(filter(None, (f"{each.number:>{number}} {each.unit}".rstrip(), mark)))
    if len(each.number) <= LONGEST:
        yield Line(head + text, style)
        return
    for line in hanging(text.strip(), head):
        yield Line(line.text, style)


def _mark(each: InputShown, speech: Speech) -> str:
    """That a value was not typed, or how it was typed where that was in another unit."""
    if each.assumed:
        return f"({speech.word('sheet:assumed')})"
    number = re.escape(each.number.replace("−", "-"))
    as_shown = re.match(rf"{number}(?![\d.])", each.typed.replace(",", ""))
    return "" if as_shown or each.many or each.choices else f"({each.typed})"


def step_lines(step: StepShown, place: int, speech: Speech) -> Iterator[Line]:
    """One step: what it says, the equation with its numbers, the letters, the source."""
    yield Line("", "note")
    again = speech.word("sheet:again", place=step.like) if step.like else ""
    yield from hanging(again or step.sentence, f"{place:>3}  ")
    plain = bool(again) or step.step.plain
    for line in equation_lines(step.step, WIDTH - 9, again=plain):
        yield Line(" " * 9 + line, "row")
    if plain:
        return
    if step.solved:
        yield from hanging(speech.word("sheet:solved"), " " * 9)
    yield from _terms(step)
    yield from hanging(speech.word("sheet:source", source=step.source), " " * 5)


def _terms(step: StepShown) -> Iterator[Line]:
    shown = [si_text(term.si, term.si_unit) for term in step.terms]
    symbol = max((len(term.symbol) for term in step.terms), default=0)
    value = max(map(len, shown), default=0)
    for term, text in zip(step.terms, shown, strict=True):
        head = f"     {term.symbol:<{symbol}}  {text:<{value}}  "
        yield from hanging(f"{term.words} ({term.mark})" if term.mark else term.words, head)


def hanging(text: str, head: str) -> Iterator[Line]:
    """Text behind a head; what does not fit goes on below the text."""
    for line in textwrap.wrap(text, WIDTH, initial_indent=head, subsequent_indent=" " * len(head)):
        yield Line(line, "note")
