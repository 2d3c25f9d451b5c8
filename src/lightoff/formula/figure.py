"""A number that remembers how it was worked out.

A formula is plain arithmetic, so handed figures in place of floats it gives back a figure, and what
is shown to a reader is the arithmetic that was carried out, never a second copy of it.

>>> double = 2 * Figure(0.6, Symbol("d", 0.6))
>>> double, double.expression.operator
(1.2, '*')
"""

from collections.abc import Callable
from typing import Any, SupportsFloat

from lightoff.formula.expression import Constant, Expression, Operation, Operator, Symbol

__all__ = ["Figure", "Holds", "Symbol", "carried", "expression_of", "result"]


class Figure(float):
    """A float and the expression it came from."""

    expression: Expression

    def __new__(cls, value: SupportsFloat, expression: Expression) -> "Figure":
        figure = super().__new__(cls, value)
        figure.expression = expression
        return figure

    def __add__(self, other: float) -> "Figure":
        return result("+", float(self) + float(other), self, other)

    def __radd__(self, other: float) -> "Figure":
        return result("+", float(other) + float(self), other, self)

    def __sub__(self, other: float) -> "Figure":
        return result("-", float(self) - float(other), self, other)

    def __rsub__(self, other: float) -> "Figure":
        return result("-", float(other) - float(self), other, self)

    def __mul__(self, other: float) -> "Figure":
        return result("*", float(self) * float(other), self, other)

    def __rmul__(self, other: float) -> "Figure":
        return result("*", float(other) * float(self), other, self)

    def __truediv__(self, other: float) -> "Figure":
        return result("/", float(self) / float(other), self, other)

    def __rtruediv__(self, other: float) -> "Figure":
        return result("/", float(other) / float(self), other, self)

    def __pow__(self, other: float, _modulo: None = None) -> "Figure":
        return result("^", float(self) ** float(other), self, other)

    def __rpow__(self, other: float, _modulo: None = None) -> "Figure":
        return result("^", float(other) ** float(self), other, self)

    def __neg__(self) -> "Figure":
        return result("neg", -float(self), self)

    def __abs__(self) -> "Figure":
        return result("abs", abs(float(self)), self)

    def __lt__(self, other: float) -> "Holds":  # type: ignore[override, misc]  # a bool that remembers
        return Holds(float(self) < float(other), "<", self, other)

    def __gt__(self, other: float) -> "Holds":  # type: ignore[override, misc]  # the same
        return Holds(float(self) > float(other), ">", self, other)


class Holds:
    """A comparison of figures: true or false, and what was compared."""

    def __init__(self, truth: bool, operator: Operator, a: float, b: float) -> None:
        self.truth = truth
        operands = (expression_of(a), expression_of(b))
        self.expression = Operation(operator, operands, float(truth))

    def __bool__(self) -> bool:
        return self.truth


def expression_of(value: Any) -> Expression:
    """How a value came about; a plain number is itself."""
    if isinstance(value, Figure | Holds):
        return value.expression
    return Constant(float(value))


def result(operator: Operator, value: Any, *operands: Any) -> Figure:
    """A figure made of others; ValueError where it is not a real number."""
    if isinstance(value, complex):
        raise ValueError("a root of a negative number is not a figure")
    expressions = tuple(expression_of(each) for each in operands)
    return Figure(value, Operation(operator, expressions, float(value)))


def carried(operator: Operator, function: Callable[..., float], *operands: Any) -> Figure:
    """What a function makes of figures."""
    return result(operator, function(*map(float, operands)), *operands)
