"""The answer of a calculation: the result asked for, the others, and all that belongs to them."""

from dataclasses import dataclass

from markupsafe import Markup

from lightoff.surfaces.calculating import Sheet
from lightoff.surfaces.calculating.sheet import ResultShown, StepShown, TermShown
from lightoff.surfaces.web.contexts.pictured import Picture
from lightoff.surfaces.web.contexts.pictures import pictured
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.bound import NO_BREAK, bound

LONG = 16  # characters of a value that is no longer read at a glance


@dataclass(frozen=True)
class Result:
    """One thing answered; `long` where it is a list of numbers or words."""

    label: str
    number: str
    unit: str
    long: bool


@dataclass(frozen=True)
class TermPart:
    """One letter of an equation, with its words and its value; `mark` where it needs a word."""

    symbol: Markup
    words: str
    value: str
    mark: str
    in_range: bool


@dataclass(frozen=True)
class StepPart:
    """One step of the working; `again` where its equation was told before."""

    sentence: str
    again: bool
    equation: Markup
    solved: bool
    terms: tuple[TermPart, ...]
    source: str


@dataclass(frozen=True)
class Assumed:
    """A default that the answer rests on."""

    label: str
    value: str


@dataclass(frozen=True)
class Worked:
    """`large` is the result asked for; `cautions` must be read with it, `advice` helps."""

    large: Result
    others: tuple[Result, ...]
    assumed: tuple[Assumed, ...]
    cautions: tuple[str, ...]
    advice: tuple[str, ...]
    picture: Picture | None
    steps: tuple[StepPart, ...]


def worked(sheet: Sheet, speech: Speech) -> Worked | None:
    """The answer on a sheet, where there is one."""
    if not sheet.results:
        return None
    large, *others = map(_result, sheet.results)
    return Worked(
        large=large,
        others=tuple(others),
        assumed=tuple(
            Assumed(each.label, NO_BREAK.join(filter(None, (each.number, each.unit))))
            for each in sheet.inputs
            if each.assumed
        ),
        cautions=tuple(bound(note.sentence) for note in sheet.notes if not note.advice),
        advice=tuple(bound(note.sentence) for note in sheet.notes if note.advice),
        picture=pictured(sheet, speech),
        steps=tuple(step_part(step, speech) for step in sheet.steps),
    )


def _result(result: ResultShown) -> Result:
    return Result(result.label, result.number, result.unit, len(result.number) > LONG)


def step_part(step: StepShown, speech: Speech) -> StepPart:
    """One step as a page shows it."""
    again = step.like > 0
    return StepPart(
        sentence=speech.word("sheet:again", place=step.like) if again else bound(step.sentence),
        again=again or step.step.plain,
        equation=step.mathml,
        solved=step.solved,
        terms=() if again else tuple(map(_term, step.terms)),
        source=bound(step.source),
    )


def _term(term: TermShown) -> TermPart:
    value = NO_BREAK.join(filter(None, (term.value, term.unit)))
    return TermPart(term.mathml, bound(term.words), value, term.mark, term.in_range)
