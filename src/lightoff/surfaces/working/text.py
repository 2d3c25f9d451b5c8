"""A step in plain text: for a terminal, and for whoever listens to a page."""

import re
import textwrap
from collections.abc import Iterator

from lightoff.formula import Step
from lightoff.formula.text import figure, with_numbers, written
from lightoff.surfaces.working import digits, letter
from lightoff.surfaces.working.step import has_numbers, in_words
from lightoff.surfaces.working.unit import unit_text
from lightoff.surfaces.working.writer import FUNCTIONS

_LETTER = re.compile(r"(?<![\w.])[A-Za-z]\w*'*")
_NUMBER = re.compile(r"(?<![\w.])\d+(?:\.\d+)?(?:e[+-]\d+)?")


def equation(step: Step) -> str:
    """What the result equals, in letters; for a solved step, the equation that was solved."""
    if in_words(step) or step.expression is None:
        return step.formula.equation
    return f"{letter.plain(step.result.symbol)} = {_readable(written(step.expression))}"


def numbers(step: Step) -> str:
    """The same with the numbers put in; nothing where there are none to put in."""
    if step.expression is None or not has_numbers(step):
        return ""
    return _readable(with_numbers(step.expression))


def value(step: Step) -> str:
    """The value with its unit."""
    return si_text(step.value, step.result.unit)


def si_text(number: float, unit: str) -> str:
    """A number of a formula with its unit.

    >>> si_text(1.2, "kg/m3")
    '1.2 kg/m³'
    """
    return f"{digits.plain(digits.digits(number))} {unit_text(unit)}".rstrip()


def equation_lines(step: Step, width: int, *, again: bool = False) -> Iterator[str]:
    """Equation, numbers and value under one another, the equals signs in one column.

    `again` where the letters have been read before: numbers and value in one row.
    """
    symbol = letter.plain(step.result.symbol)
    sides = [each for each in (numbers(step), value(step)) if each]
    if again:
        sides = [" = ".join(sides)]
    elif in_words(step):
        yield from textwrap.wrap(equation(step), width)
    else:
        sides.insert(0, equation(step).partition(" = ")[2])
    first = f"{symbol} = "
    for side in sides:
        yield from textwrap.wrap(side, width, initial_indent=first,
                                 subsequent_indent=" " * len(first))  # fmt: skip
        first = " " * len(symbol) + " = "


def as_sentence(step: Step, *, again: bool = False) -> str:
    """The whole step on one line, its numbers ungrouped, so that it can be read aloud.

    `again` where the letters have been heard before.
    """
    symbol = step.result.symbol
    last = f"{figure(step.value)} {unit_text(step.result.unit)}".rstrip()
    if step.expression is None:
        return f"{step.formula.equation}; {symbol} = {last}"
    if again:
        return f"{symbol} = {with_numbers(step.expression)} = {last}"
    if in_words(step):
        return f"{step.formula.equation}; {symbol} = {with_numbers(step.expression)} = {last}"
    return f"{symbol} = {written(step.expression)} = {with_numbers(step.expression)} = {last}"


def _readable(line: str) -> str:
    return _grouped(_LETTER.sub(lambda match: _word(match[0]), line))


def _word(word: str) -> str:
    return FUNCTIONS.get(word) or letter.plain(word)


def _grouped(line: str) -> str:
    grouped = _NUMBER.sub(lambda match: digits.plain(digits.read(match[0])), line)
    return grouped.replace("-", digits.MINUS)
