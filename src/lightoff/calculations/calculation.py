"""What a calculation is: a few formulas put together to answer one question of the trade."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from lightoff.formula import Step, Term, working


@dataclass(frozen=True)
class Input:
    """One thing to type: a quantity of some kind, a word out of `choices`, or a list of numbers.

    What has a `default` [SI] may be left out; what is `optional` as well, and then it is not used.
    `group` parts a long form; inputs of one group stand together. A pressure or height may be
    `signed`; of everything else but temperatures there is none below zero. `most` [SI] is what a
    share may be.
    """

    name: str
    kind: str = "number"
    default: Any = None
    optional: bool = False
    choices: tuple[str, ...] = ()
    many: bool = False
    group: str = ""
    signed: bool = False
    most: float | None = None

    @property
    def required(self) -> bool:
        """Whether nothing can be said without it."""
        return self.default is None and not self.optional


@dataclass(frozen=True)
class Output:
    """One thing answered, and the kind of quantity it is; `word` for one out of a few words."""

    name: str
    kind: str = "number"


@dataclass(frozen=True)
class Note:
    """Something to say beside a result: a sentence's id and its values [SI].

    `advice` is good to know; what is not advice asks for care, and is said first.
    """

    message: str
    values: Mapping[str, Any]
    advice: bool = False


@dataclass(frozen=True)
class Calculation:
    """A question of the trade: `work` takes the inputs by name and returns the outputs by name, SI.

    `work` is made of formulas alone, so that every step of it can be shown. What it can't answer is
    a `CannotCalculateError`; what is to be said beside the answer comes from `remark`.
    """

    name: str
    work: Callable[..., dict[str, Any]]
    inputs: tuple[Input, ...]
    outputs: tuple[Output, ...]
    remark: Callable[[Mapping[str, Any], Mapping[str, Any]], tuple[Note, ...]] | None = None
    picture: str | None = None

    def input(self, name: str) -> Input | None:
        """The input of this name."""
        return next((each for each in self.inputs if each.name == name), None)


@dataclass(frozen=True)
class Answer:
    """What was used, what came out of it, how, and what is to be said beside it.

    `used` holds the defaults too; a name in `assumed` is one of them that took part.
    """

    calculation: Calculation
    used: Mapping[str, Any]
    assumed: tuple[str, ...]
    results: Mapping[str, Any]
    steps: tuple[Step, ...]
    notes: tuple[Note, ...]


class CannotCalculateError(Exception):
    """No answer for these inputs: a sentence's id, the input at fault and values [SI]."""

    def __init__(self, message: str, place: str | None = None, **values: Any) -> None:
        super().__init__(message)
        self.message = message
        self.place = place
        self.values = values


def calculate(calculation: Calculation, given: Mapping[str, Any]) -> Answer:
    """The answer for these inputs [SI]; raises `CannotCalculateError`."""
    for each in calculation.inputs:
        if each.required and given.get(each.name) is None:
            raise CannotCalculateError("calc-missing", each.name)
    used = {each.name: given.get(each.name, each.default) for each in calculation.inputs}
    try:
        found = working(calculation.work, **used)
        results = {name: _plain(value) for name, value in found.result.items()}
        said = calculation.remark(used, results) if calculation.remark else ()
    except (ZeroDivisionError, OverflowError, ValueError) as fault:
        raise CannotCalculateError("calc-impossible") from fault
    steps = (value for step in found.steps for value in (step.value, *_values(step)))
    if not all(map(_is_finite, (*results.values(), *steps))):
        raise CannotCalculateError("calc-impossible")
    assumed = tuple(
        name for name, value in used.items()
        if given.get(name) is None and (name in found.inputs or isinstance(value, str))
    )  # fmt: skip
    notes = sorted((*said, *_outside(found.steps)), key=lambda note: note.advice)
    return Answer(calculation, used, assumed, results, found.steps, tuple(notes))


def _outside(steps: tuple[Step, ...]) -> tuple[Note, ...]:
    """A note for each number a formula was given outside the range it holds for."""
    return tuple(_beyond(step, term) for step in steps for term in step.terms if not term.in_range)


def _beyond(step: Step, term: Term) -> Note:
    low, high = term.quantity.range or (term.value, term.value)
    words = {"formula": step.formula.sentence, "quantity": term.quantity.words}
    span = {"value": term.value, "low": low, "high": high, "unit": term.quantity.unit}
    return Note("calc-outside", {**words, **span})


def _plain(value: Any) -> Any:
    if isinstance(value, tuple | list):
        return tuple(_plain(each) for each in value)
    return float(value) if isinstance(value, float) else value


def _values(step: Step) -> tuple[float, ...]:
    return tuple(term.value for term in step.terms)


def _is_finite(value: Any) -> bool:
    """Whether a result, or each of several, is a number that can be told; words are."""
    if isinstance(value, tuple):
        return all(map(_is_finite, value))
    return not isinstance(value, float) or math.isfinite(value)
