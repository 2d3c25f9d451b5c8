"""A step as presentation MathML (Core), for pages.

One `<math>` holds the equation, the numbers put in and the value, one row under the other. The
cells bear the classes `is` and `side`; a page's style sheet aligns them:

    math .is { padding-inline: .35em }  math .side { text-align: start }

What a reader without MathML hears is in `alttext`.
"""

from collections.abc import Sequence
from html import escape

from lightoff.formula import Step
from lightoff.surfaces.working.digits import MINUS, digits
from lightoff.surfaces.working.letter import letter
from lightoff.surfaces.working.step import has_numbers, in_words
from lightoff.surfaces.working.text import as_sentence
from lightoff.surfaces.working.unit import unit_text
from lightoff.surfaces.working.writer import in_numbers, in_symbols

_NAMESPACE = "http://www.w3.org/1998/Math/MathML"
_SIGNS = {"-": MINUS, "neg": MINUS, "<": "&lt;", ">": "&gt;"}


def mathml(step: Step, *, again: bool = False) -> str:
    """The step as one `<math>` element.

    `again` where the letters have been read before: numbers and value in one row.
    """
    notation = MathML()
    words = in_words(step)
    rows = [("", in_text(step.formula.equation))] if words and not again else []
    sides = []
    if step.expression is not None:
        if not words and not again:
            sides.append(in_symbols(step.expression, notation))
        if has_numbers(step):
            sides.append(in_numbers(step.expression, notation))
    unit = unit_text(step.result.unit)
    value = notation.number(step.value) + (_space("0.22em") + in_text(unit) if unit else "")
    sides.append(f"<mrow>{value}</mrow>")
    first, *rest = ["<mo>=</mo>".join(sides)] if again else sides
    rows += [(notation.letter(step.result.symbol), first), *(("", side) for side in rest)]
    return whole(rows, as_sentence(step, again=again))


def mathml_letter(symbol: str) -> str:
    """One letter in a line of text."""
    return f'<math xmlns="{_NAMESPACE}" alttext="{escape(symbol)}">{MathML().letter(symbol)}</math>'


def whole(rows: Sequence[tuple[str, str]], spoken: str) -> str:
    """Rows of a left and a right side; a row without a left side goes on from the one before."""
    cells = "".join(map(_row, rows, range(len(rows))))
    return (
        f'<math xmlns="{_NAMESPACE}" display="block" alttext="{escape(spoken)}">'
        f"<mtable>{cells}</mtable></math>"
    )


def _row(sides: tuple[str, str], place: int) -> str:
    left, right = sides
    if not left and place == 0:
        return f'<mtr><mtd class="side" columnspan="3">{right}</mtd></mtr>'
    return (
        f'<mtr><mtd>{left}</mtd><mtd class="is"><mo>=</mo></mtd>'
        f'<mtd class="side"><mstyle displaystyle="true">{right}</mstyle></mtd></mtr>'
    )


def in_text(text: str) -> str:
    return f"<mtext>{escape(text)}</mtext>"


def _space(width: str) -> str:
    return f'<mspace width="{width}"/>'


class MathML:
    """The pieces of an equation as MathML."""

    def number(self, value: float) -> str:
        told = digits(value)
        text = f"<mn>{told.grouped()}</mn>"
        if told.exponent is not None:
            power = self._signed(f"<mn>{abs(told.exponent)}</mn>", told.exponent < 0)
            text = f"<mrow>{text}{self.times()}<msup><mn>10</mn>{power}</msup></mrow>"
        return self._signed(text, told.negative)

    def letter(self, symbol: str) -> str:
        told = letter(symbol)
        upright = ' mathvariant="normal"' if told.species else ""
        text = f"<mi{upright}>{escape(told.base)}</mi>"
        prime = f"<mo>{'′' * told.primes}</mo>"
        below = "<mo>,</mo>".join(map(self._below, told.below))
        below = f"<mrow>{below}</mrow>" if len(told.below) > 1 else below
        if told.below and told.primes:
            text = f"<msubsup>{text}{below}{prime}</msubsup>"
        elif told.below:
            text = f"<msub>{text}{below}</msub>"
        elif told.primes:
            text = f"<msup>{text}{prime}</msup>"
        delta = '<mi mathvariant="normal">Δ</mi>'
        return f"<mrow>{delta}{text}</mrow>" if told.difference else text

    def _below(self, part: str) -> str:
        return f"<mn>{part}</mn>" if part.isdecimal() else f"<mi>{escape(part)}</mi>"

    def _signed(self, text: str, negative: bool) -> str:
        return f'<mrow><mo form="prefix">{MINUS}</mo>{text}</mrow>' if negative else text

    def side_by_side(self, pieces: Sequence[str]) -> str:
        return f"<mrow>{''.join(pieces)}</mrow>"

    def times(self) -> str:
        return "<mo>×</mo>"

    def gap(self) -> str:
        return "<mo>&#x2062;</mo>" + _space("0.17em")

    def sign(self, sign: str) -> str:
        form = ' form="prefix"' if sign == "neg" else ""
        return f"<mo{form}>{_SIGNS.get(sign, sign)}</mo>"

    def brackets(self, inside: str) -> str:
        return f"<mrow><mo>(</mo>{inside}<mo>)</mo></mrow>"

    def fraction(self, above: str, below: str) -> str:
        return f"<mfrac>{above}{below}</mfrac>"

    def power(self, base: str, exponent: str) -> str:
        return f"<msup>{base}{exponent}</msup>"

    def root(self, inside: str) -> str:
        return f"<msqrt>{inside}</msqrt>"

    def between(self, operator: str, inside: str) -> str:
        left, right = ("|", "|") if operator == "abs" else ("⌈", "⌉")
        return (
            f'<mrow><mo form="prefix" fence="true">{left}</mo>{inside}'
            f'<mo form="postfix" fence="true">{right}</mo></mrow>'
        )

    def function(self, name: str, arguments: Sequence[str]) -> str:
        inside = "<mo>,</mo>".join(arguments)
        named = f'<mi mathvariant="normal">{name}</mi>'
        return f"<mrow>{named}<mo>&#x2061;</mo>{self.brackets(inside)}</mrow>"

    def branches(self, rows: Sequence[tuple[str, str]]) -> str:
        cells = "".join(
            f'<mtr><mtd class="side">{value}</mtd><mtd class="side">{_when(condition)}</mtd></mtr>'
            for value, condition in rows
        )
        return f"<mrow><mo>{{</mo><mtable>{cells}</mtable></mrow>"


def _when(condition: str) -> str:
    if not condition:
        return in_text("otherwise")
    return f"<mrow>{in_text('if')}{_space('0.3em')}{condition}</mrow>"
