"""What a person typed, worked out and put on a sheet in their own units."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Any

from markupsafe import Markup

from lightoff.calculations import (
    Answer,
    Calculation,
    CannotCalculateError,
    Input,
    Output,
    calculate,
)
from lightoff.formula import Step
from lightoff.surfaces.calculating.faults import Fault
from lightoff.surfaces.calculating.inputs import Typed, hint, read
from lightoff.surfaces.calculating.sheet import (
    NO_BREAK,
    Choice,
    InputShown,
    NoteShown,
    ResultShown,
    Sheet,
    StepShown,
    TermShown,
)
from lightoff.surfaces.calculating.told import input_told, result_told, si_unit
from lightoff.surfaces.words import Speech, has
from lightoff.surfaces.working import (
    Standing,
    equation,
    in_words,
    mathml,
    mathml_letter,
    numbers,
    said,
    stands_on,
    typst,
    typst_letter,
    unit_text,
)
from lightoff.surfaces.working.digits import digits, printed
from lightoff.surfaces.working.letter import plain as plain_letter


def blank(calculation: Calculation, speech: Speech) -> Sheet:
    """The sheet before anything is typed."""
    return Sheet(
        name=calculation.name,
        title=speech.word(f"calc:{calculation.name}"),
        about=speech.word(f"calc:{calculation.name}:about"),
        picture=calculation.picture,
        inputs=tuple(_asked(calculation, each, speech) for each in calculation.inputs),
    )


def filled(
    calculation: Calculation, typed: Typed, speech: Speech, *, working: bool = True
) -> Sheet:
    """The sheet with what was typed, and its answer or every fault in it; no steps if unwanted."""
    sheet, found = blank(calculation, speech), read(calculation, typed)
    if found.faults:
        return _typed(sheet, typed, found.values, speech, faults=found.faults)
    try:
        answer = calculate(calculation, found.values)
    except CannotCalculateError as refusal:
        fault = Fault(refusal.place or "", speech.word(refusal.message, **refusal.values))
        return _typed(sheet, typed, found.values, speech, faults=(fault,))
    return replace(
        _typed(sheet, typed, answer.used, speech, assumed=answer.assumed),
        results=tuple(_results(answer, speech)),
        notes=tuple(_notes(answer, speech)),
        steps=tuple(steps_shown(answer.steps, speech)) if working else (),
    )


def _asked(calculation: Calculation, asked: Input, speech: Speech) -> InputShown:
    return InputShown(
        name=asked.name,
        label=speech.word(f"measure:{asked.name}"),
        kind=asked.kind,
        many=asked.many,
        required=asked.required,
        choices=tuple(Choice(word, speech.word(f"word:{word}")) for word in asked.choices),
        default=NO_BREAK.join(filter(None, _told(asked.default, asked.kind, speech))),
        hint=hint(calculation, asked),
        si_unit=si_unit(asked.kind),
    )


def _typed(
    sheet: Sheet,
    typed: Typed,
    used: Mapping[str, Any],
    speech: Speech,
    *,
    assumed: tuple[str, ...] = (),
    faults: tuple[Fault, ...] = (),
) -> Sheet:
    """The sheet with what was typed, what it was read as, and what is wrong with it."""
    said = {fault.place: fault.message for fault in reversed(faults)}
    inputs = []
    for each in sheet.inputs:
        text, value = typed.get(each.name), used.get(each.name)
        idle = text is None and each.name not in assumed
        number, unit = (
            ("", "") if idle else _told(value, each.kind, speech, typed=each.name not in assumed)
        )
        told = replace(each, typed=_as_typed(text), number=number, unit=unit, si=value,
                       assumed=each.name in assumed, fault=said.get(each.name, ""))  # fmt: skip
        inputs.append(told)
    return replace(sheet, inputs=tuple(inputs), faults=faults)


def _as_typed(typed: object) -> str:
    if typed is None:
        return ""
    return ", ".join(map(str, typed)) if isinstance(typed, list | tuple) else str(typed).strip()


def _results(answer: Answer, speech: Speech) -> Iterator[ResultShown]:
    for output in answer.calculation.outputs:
        value = answer.results.get(output.name)
        if value is not None:
            yield _result(output, value, speech)


def _result(output: Output, value: Any, speech: Speech) -> ResultShown:
    number, unit = _told(value, output.kind, speech)
    label = speech.word(f"measure:{output.name}")
    return ResultShown(output.name, label, output.kind, number, unit, value, si_unit(output.kind))


def _told(value: Any, kind: str, speech: Speech, *, typed: bool = False) -> tuple[str, str]:
    """Number and unit in the reader's units; several numbers side by side; a word as it is read."""
    if value is None:
        return "", ""
    if isinstance(value, str):
        return _word(value, speech), ""
    if isinstance(value, tuple):
        each = [_told(one, kind, speech, typed=typed) for one in value]
        return ", ".join(number for number, _ in each), each[0][1] if each else ""
    told = (input_told if typed else result_told)(value, kind, speech.system)
    return told.number, told.unit


def _word(word: str, speech: Speech) -> str:
    """A word as it is read; a size or number of the trade, such as a drill's, stands as it is."""
    name = f"word:{word}"
    return speech.word(name) if has(name, speech.language) else word


def _notes(answer: Answer, speech: Speech) -> Iterator[NoteShown]:
    """Each note once: a value used in two steps is out of range in both."""
    said = {speech.word(note.message, **note.values): note for note in answer.notes}
    for sentence, note in said.items():
        yield NoteShown(note.message, sentence, note.advice)


def steps_shown(steps: Sequence[Step], speech: Speech) -> Iterator[StepShown]:
    """Every step; one whose equation has been read before, and that holds, in numbers alone."""
    first: dict[object, int] = {}
    for place, step in enumerate(steps, start=1):
        like = first.setdefault((step.formula.name, step.result.name), place)
        again = not step.plain and like < place and all(term.in_range for term in step.terms)
        yield _step(step, speech, like=like if again else 0)


def _step(step: Step, speech: Speech, *, like: int) -> StepShown:
    """One step of a working."""
    again = like > 0 or step.plain
    return StepShown(
        formula=step.formula.name,
        sentence=said(step.formula.sentence),
        symbol=plain_letter(step.result.symbol),
        equation=equation(step),
        numbers=numbers(step),
        value=printed(digits(step.value)),
        unit=unit_text(step.result.unit),
        si=step.value,
        si_unit=step.result.unit,
        in_words=in_words(step),
        solved=step.expression is None,
        terms=tuple(_term(each, speech) for each in stands_on(step)),
        source=said(step.formula.source),
        mathml=Markup(mathml(step, again=again)),
        typst=typst(step, again=again),
        step=step,
        like=like,
    )


def _term(each: Standing, speech: Speech) -> TermShown:
    marks = (
        *(["sheet:above"] if each.above else []),
        *([] if each.taken else ["sheet:not-taken"]),
        *([] if each.in_range else ["sheet:outside"]),
    )
    return TermShown(
        symbol=plain_letter(each.symbol),
        words=said(each.words),
        value=printed(digits(each.value)),
        unit=unit_text(each.unit),
        si=each.value,
        si_unit=each.unit,
        in_range=each.in_range,
        mark=", ".join(map(speech.word, marks)),
        mathml=Markup(mathml_letter(each.symbol)),
        typst=typst_letter(each.symbol),
    )
