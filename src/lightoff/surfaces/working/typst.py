"""A step as Typst's mathematics, for print.

Every name is a quoted text or one letter, so nothing that a formula calls a quantity can be read as
a command.
"""

from collections.abc import Sequence

from lightoff.formula import Step
from lightoff.surfaces.working.digits import digits
from lightoff.surfaces.working.letter import letter
from lightoff.surfaces.working.step import has_numbers, in_words
from lightoff.surfaces.working.unit import unit_text
from lightoff.surfaces.working.writer import in_numbers, in_symbols

_OPERATORS = {"exp", "ln", "sin", "cos", "arcsin", "min", "max"}


def typst(step: Step, *, again: bool = False) -> str:
    """The step as the source of one equation, its rows aligned at the equals signs.

    `again` where the letters have been read before: numbers and value in one row.
    """
    notation = Typst()
    result = notation.letter(step.result.symbol)
    sides: list[str] = []
    if step.expression is not None:
        if not in_words(step) and not again:
            sides.append(in_symbols(step.expression, notation))
        if has_numbers(step):
            sides.append(in_numbers(step.expression, notation))
    unit = unit_text(step.result.unit)
    sides.append(notation.number(step.value) + (f" thick {quoted(unit)}" if unit else ""))
    rows = [" = ".join(sides)] if again else sides
    return f"{result} " + " \\\n".join(f"&= {row}" for row in rows)


def typst_letter(symbol: str) -> str:
    """One letter in a line of text."""
    return Typst().letter(symbol)


def quoted(text: str) -> str:
    """Text inside an equation.

    >>> quoted('a "b" #c')
    '"a \\\\"b\\\\" #c"'
    """
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


class Typst:
    """The pieces of an equation as Typst's mathematics."""

    def number(self, value: float) -> str:
        told = digits(value)
        text = quoted(told.grouped())
        if told.exponent is not None:
            text = f"{text} {self.times()} 10^({told.exponent})"
        return f"-{text}" if told.negative else text

    def letter(self, symbol: str) -> str:
        told = letter(symbol)
        text = quoted(told.base) if told.species else _name(told.base)
        if told.below:
            text += f"_({', '.join(map(_name, told.below))})"
        text += "'" * told.primes
        return f"Δ {text}" if told.difference else text

    def side_by_side(self, pieces: Sequence[str]) -> str:
        return " ".join(pieces)

    def times(self) -> str:
        return "times"

    def gap(self) -> str:
        return "thin"

    def sign(self, sign: str) -> str:
        return "-" if sign == "neg" else sign

    def brackets(self, inside: str) -> str:
        return f"lr(({inside}))"

    def fraction(self, above: str, below: str) -> str:
        return f"frac({above}, {below})"

    def power(self, base: str, exponent: str) -> str:
        return f"{base}^({exponent})"

    def root(self, inside: str) -> str:
        return f"sqrt({inside})"

    def between(self, operator: str, inside: str) -> str:
        return f"{operator}({inside})"  # abs and ceil bear the same names there

    def function(self, name: str, arguments: Sequence[str]) -> str:
        known = name if name in _OPERATORS else f"op({quoted(name)})"
        return f"{known} lr(({', '.join(arguments)}))"

    def branches(self, rows: Sequence[tuple[str, str]]) -> str:
        told = (f"{value} &{_when(condition)}" for value, condition in rows)
        return f"cases({', '.join(told)})"


def _when(condition: str) -> str:
    return f'quad "if " {condition}' if condition else 'quad "otherwise"'


def _name(name: str) -> str:
    return name if len(name) == 1 and name.isalpha() else quoted(name)
