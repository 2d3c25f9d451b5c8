"""A calculation as it is shown: what it asks, what it answers, and every step between.

One frozen `Sheet` serves the terminal, HTTP and the pages alike; a template only lays it out.
"""

from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from lightoff.formula import Step
from lightoff.surfaces.calculating.faults import Fault

NO_BREAK = "\u00a0"


@dataclass(frozen=True)
class Choice:
    """One word an input may be, and how it is read."""

    word: str
    label: str


@dataclass(frozen=True)
class InputShown:
    """One thing to type.

    `typed` is what was typed, `number` and `unit` the same in the reader's units, `si` its value in
    `si_unit`. Where nothing was typed and the answer rests on the default, `assumed` is true and
    the value is the default; `number` is blank where neither took part. `default` is that value in
    words, blank where there is none; `hint` two right ways to write it; `fault` what is wrong with
    what was typed.
    """

    name: str
    label: str
    kind: str
    many: bool
    required: bool
    choices: tuple[Choice, ...]
    default: str
    hint: str
    typed: str = ""
    number: str = ""
    unit: str = ""
    si: Any = None
    si_unit: str = "1"
    assumed: bool = False
    fault: str = ""


@dataclass(frozen=True)
class ResultShown:
    """One thing answered: in the reader's units, and as `si` in `si_unit`."""

    name: str
    label: str
    kind: str
    number: str
    unit: str
    si: Any
    si_unit: str

    @property
    def text(self) -> str:
        """Number and unit, held together."""
        return NO_BREAK.join(filter(None, (self.number, self.unit)))


@dataclass(frozen=True)
class NoteShown:
    """Something said beside the answer, as a sentence; `message` is its id."""

    message: str
    sentence: str
    advice: bool = False


@dataclass(frozen=True)
class TermShown:
    """One letter of an equation: its words, and its value with the SI unit, in text and as data.

    `mark` says in words that it was worked out in a step above, or lies out of range. `mathml` and
    `typst` set the letter.
    """

    symbol: str
    words: str
    value: str
    unit: str
    si: float
    si_unit: str
    in_range: bool
    mark: str
    mathml: Markup
    typst: str


@dataclass(frozen=True)
class StepShown:
    """One equation, in SI: in letters, with numbers, and its value.

    `equation`, `numbers` and `value` are text; `mathml` and `typst` show the same in one.
    `numbers` is blank where there are none to put in. `in_words` where the equation is told and not
    set, `solved` where the value was found by iteration. `like` is the place, from 1, of the first
    step with the same equation; `mathml` and `typst` then show the numbers alone.
    """

    formula: str
    sentence: str
    symbol: str
    equation: str
    numbers: str
    value: str
    unit: str
    si: float
    si_unit: str
    in_words: bool
    solved: bool
    terms: tuple[TermShown, ...]
    source: str
    mathml: Markup
    typst: str
    step: Step
    like: int = 0


@dataclass(frozen=True)
class Sheet:
    """A calculation: a title, one line about it, and the rest in the order of reading.

    Without anything typed, or with `faults`, there are no results, notes or steps. A fault without
    a place concerns the inputs together.
    """

    name: str
    title: str
    about: str
    picture: str | None
    inputs: tuple[InputShown, ...]
    results: tuple[ResultShown, ...] = ()
    notes: tuple[NoteShown, ...] = ()
    steps: tuple[StepShown, ...] = ()
    faults: tuple[Fault, ...] = ()
