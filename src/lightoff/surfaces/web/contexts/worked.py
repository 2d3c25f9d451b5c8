"""The answer of a calculation: the result asked for, the others, and all that belongs to them."""

from dataclasses import dataclass

from markupsafe import Markup

from lightoff.surfaces.calculating import Sheet
from lightoff.surfaces.calculating.sheet import ResultShown, StepShown, TermShown
from lightoff.surfaces.web.contexts.pictured import Picture, pictured
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.bound import bound
from lightoff.surfaces.working import Standing, stands_on
from lightoff.surfaces.working.mathml import MathML

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
    """One step of the working."""

    sentence: str
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
    """`large` is the result asked for; `notes` are sentences that must be read with it."""

    large: Result
    others: tuple[Result, ...]
    assumed: tuple[Assumed, ...]
    notes: tuple[str, ...]
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
            Assumed(each.label, f"{each.number}\u00a0{each.unit}".strip())
            for each in sheet.inputs
            if each.assumed
        ),
        notes=tuple(bound(note.sentence) for note in sheet.notes),
        picture=pictured(sheet, speech),
        steps=tuple(map(_step, sheet.steps)),
    )


def _result(result: ResultShown) -> Result:
    return Result(result.label, result.number, result.unit, len(result.number) > LONG)


def _step(step: StepShown) -> StepPart:
    letters = stands_on(step.step)
    return StepPart(
        sentence=step.sentence,
        equation=step.mathml,
        solved=step.solved,
        terms=tuple(_term(*each) for each in zip(step.terms, letters, strict=True)),
        source=step.source,
    )


def _term(term: TermShown, letter: Standing) -> TermPart:
    symbol = f"<math>{MathML().letter(letter.symbol)}</math>"  # its pieces are escaped
    value = f"{term.value}\u00a0{term.unit}".strip()
    return TermPart(Markup(symbol), term.words, value, term.mark, term.in_range)
