"""An expression in two dimensions, walked once for every notation that can set it.

What is divided becomes a fraction and what is raised to a half a root; so brackets stand only where
the eye needs them, and a notation has nothing to decide.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Protocol, TypeGuard

from lightoff.formula.expression import Call, Constant, Expression, Operation, Symbol, taken
from lightoff.formula.text import leaf_key, letters
from lightoff.surfaces.working.digits import digits

FUNCTIONS = {"log": "ln", "asin": "arcsin"}  # the others bear the name they are read by
HALF = 0.5


class Notation(Protocol):
    """How the pieces of an equation are set; every method takes and gives source text."""

    def number(self, value: float) -> str: ...
    def letter(self, symbol: str) -> str: ...
    def side_by_side(self, pieces: Sequence[str]) -> str: ...
    def times(self) -> str: ...
    def gap(self) -> str: ...
    def sign(self, sign: str) -> str: ...
    def brackets(self, inside: str) -> str: ...
    def fraction(self, above: str, below: str) -> str: ...
    def power(self, base: str, exponent: str) -> str: ...
    def root(self, inside: str) -> str: ...
    def between(self, operator: str, inside: str) -> str: ...
    def function(self, name: str, arguments: Sequence[str]) -> str: ...
    def branches(self, rows: Sequence[tuple[str, str]]) -> str: ...


def in_symbols(expression: Expression, notation: Notation) -> str:
    """The equation in its letters, every branch of it."""
    known = letters(expression)
    return _Writer(notation, lambda leaf: notation.letter(known[leaf_key(leaf)]), False).write(
        expression
    )


def in_numbers(expression: Expression, notation: Notation) -> str:
    """The same with the numbers put in; of two branches the one that was taken."""
    return _Writer(notation, lambda leaf: notation.number(leaf.value), True).write(expression)


@dataclass(frozen=True)
class _Writer:
    notation: Notation
    leaf: Callable[[Symbol | Call], str]
    numbers: bool

    def write(self, expression: Expression) -> str:
        seen = self.seen(expression)
        if isinstance(seen, Constant):
            return self.notation.number(seen.value)
        if not isinstance(seen, Operation):
            return self.leaf(seen)
        match seen.operator:
            case "+" | "-" | "<" | ">":
                return self._sum(seen)
            case "*" | "/":
                return self._product(seen)
            case "^":
                return self._power(seen)
            case "neg":
                return self._negative(seen)
            case "where":
                return self.notation.branches(list(self._branches(seen)))
            case "abs" | "ceil":
                return self.notation.between(seen.operator, self.write(seen.operands[0]))
        name = FUNCTIONS.get(seen.operator, seen.operator)
        return self.notation.function(name, [self.write(each) for each in seen.operands])

    def seen(self, expression: Expression) -> Expression:
        """What is shown of an expression: with numbers, of two branches the one taken."""
        while self.numbers and is_a(expression, "where"):
            expression = taken(expression)[0]
        return expression

    def _sum(self, sum_: Operation) -> str:
        left, right = map(self.seen, sum_.operands)
        if sum_.operator == "+" and left == Constant(0.0):  # where Python's own sum() began
            return self.write(right)
        within = ("+", "-", "where") if sum_.operator == "-" else ("where",)
        first = self._bracketed(left, is_a(left, "where"))
        second = self._bracketed(right, is_a(right, *within) or self._begins_with_minus(right))
        return self.notation.side_by_side([first, self.notation.sign(sum_.operator), second])

    def _negative(self, negative: Operation) -> str:
        (inside,) = map(self.seen, negative.operands)
        loose = is_a(inside, "+", "-", "where") or self._begins_with_minus(inside)
        return self.notation.side_by_side(
            [self.notation.sign("neg"), self._bracketed(inside, loose)]
        )

    def _power(self, power: Operation) -> str:
        base, exponent = map(self.seen, power.operands)
        if exponent == Constant(HALF):
            return self.notation.root(self.write(base))
        compound = isinstance(base, Operation) and base.operator not in ("abs", "ceil")
        odd = not isinstance(base, Operation) and self._is_written_long(base)
        return self.notation.power(self._bracketed(base, compound or odd), self.write(exponent))

    def _is_written_long(self, leaf: Expression) -> bool:
        """Whether a number takes more than digits: a sign, or a power of ten."""
        told = digits(leaf.value)
        return self._is_number(leaf) and (told.negative or told.exponent is not None)

    def _product(self, product: Operation) -> str:
        groups = list(_fractions(self._factors(product)))
        pieces = []
        for place, (above, below) in enumerate(groups):
            if not below:
                pieces += self._row(above, alone=False, first=place == 0)
                continue
            top, bottom = (self._joined(self._row(row, alone=len(row) == 1, first=True))
                           for row in (above, below))  # fmt: skip
            pieces.append((self.notation.fraction(top, bottom), False))
        return self._joined(pieces)

    def _row(
        self, factors: Sequence[Expression], *, alone: bool, first: bool
    ) -> list[tuple[str, bool]]:
        """Each factor, and whether it begins with a digit."""
        row = []
        for place, factor in enumerate(factors):
            loose = is_a(factor, "+", "-", "where")
            inner = not (first and place == 0) and self._begins_with_minus(factor)
            bracketed = not alone and (loose or inner)
            digit = not bracketed and self._begins_with_digit(factor)
            row.append((self._bracketed(factor, bracketed), digit))
        return row

    def _joined(self, pieces: Sequence[tuple[str, bool]]) -> str:
        """Factors side by side: a cross where a number would run into what stands before it."""
        source: list[str] = []
        for text, digit in pieces:
            if source:
                cross = self.numbers or digit
                source.append(self.notation.times() if cross else self.notation.gap())
            source.append(text)
        return source[0] if len(source) == 1 else self.notation.side_by_side(source)

    def _factors(self, expression: Expression) -> Iterator[tuple[Expression, bool]]:
        """The factors of a product in the order of reading, and whether each divides."""
        if not is_a(expression, "*", "/"):
            yield expression, False
            return
        left, right = map(self.seen, expression.operands)
        yield from self._factors(left)
        if expression.operator == "/":
            yield right, True
        else:
            yield from self._factors(right)

    def _branches(self, choice: Operation) -> Iterator[tuple[str, str]]:
        """What holds and when; the last row holds otherwise."""
        condition, yes, no = choice.operands
        yield self.write(yes), self.write(condition)
        if is_a(no, "where"):
            yield from self._branches(no)
        else:
            yield self.write(no), ""

    def _bracketed(self, expression: Expression, needed: bool) -> str:
        text = self.write(expression)
        return self.notation.brackets(text) if needed else text

    def _is_number(self, expression: Expression) -> bool:
        return isinstance(expression, Constant) or (
            self.numbers and not isinstance(expression, Operation)
        )

    def _begins_with_minus(self, expression: Expression) -> bool:
        if is_a(expression, "neg"):
            return True
        if is_a(expression, "+", "-", "*"):
            return self._begins_with_minus(self.seen(expression.operands[0]))
        return self._is_number(expression) and digits(expression.value).negative

    def _begins_with_digit(self, expression: Expression) -> bool:
        if is_a(expression, "^"):
            base, exponent = expression.operands
            return exponent != Constant(HALF) and self._begins_with_digit(base)
        return self._is_number(expression)


def is_a(expression: Expression, *operators: str) -> TypeGuard[Operation]:
    """Whether an expression is one of these operations."""
    return isinstance(expression, Operation) and expression.operator in operators


def _fractions(
    factors: Iterator[tuple[Expression, bool]],
) -> Iterator[tuple[list[Expression], list[Expression]]]:
    """Factors in fractions, from left to right: what is multiplied after a division begins anew."""
    above: list[Expression] = []
    below: list[Expression] = []
    for factor, divides in factors:
        if divides:
            below.append(factor)
            continue
        if below:
            yield above, below
            above, below = [], []
        above.append(factor)
    yield above, below
