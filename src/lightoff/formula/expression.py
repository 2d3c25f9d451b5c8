"""Arithmetic written down: what a formula did with its inputs, as a tree."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Literal, TypeAlias

Operator = Literal[
    "+", "-", "*", "/", "^", "neg", "<", ">", "where", "exp", "log", "sin", "cos", "asin", "abs",
    "min", "max", "ceil", "table",
]  # fmt: skip

_BINDING: dict[str, int] = {
    "where": -1, "<": 0, ">": 0, "+": 1, "-": 1, "neg": 2, "*": 3, "/": 3, "^": 4,
}  # fmt: skip


@dataclass(frozen=True)
class Constant:
    """A number of the formula itself."""

    value: float


@dataclass(frozen=True)
class Symbol:
    """An input, by the letter its source gives it."""

    name: str
    value: float


@dataclass(frozen=True)
class Operation:
    """An operator over its operands."""

    operator: Operator
    operands: tuple["Expression", ...]
    value: float


@dataclass(frozen=True)
class Call:
    """The result of another formula: it has a working of its own.

    `part` names one of several results.
    """

    formula: Callable[..., Any]
    arguments: tuple[tuple[str, Any], ...]
    value: float
    part: str | None = None


Expression: TypeAlias = Constant | Symbol | Operation | Call


def needs_brackets(outer: Operation, operand: Expression) -> bool:
    """Whether an operand binds less tightly than what stands round it."""
    if not isinstance(operand, Operation) or outer.operator not in _BINDING:
        return False
    inside, around = _BINDING.get(operand.operator, 9), _BINDING[outer.operator]
    if operand.operator == "neg" and operand is outer.operands[0]:
        return outer.operator == "^"
    if inside != around:
        return inside < around
    last = operand is outer.operands[-1] and len(outer.operands) > 1
    return outer.operator == "^" or (last and outer.operator in ("-", "/"))


def calls(expression: Expression) -> list[Call]:
    """Every result of another formula in an expression, once, in the order of reading."""
    found: dict[int, Expression] = {}  # what was used twice is walked once
    pending = [expression]
    while pending:
        here = pending.pop()
        if id(here) not in found:
            found[id(here)] = here
            pending += reversed(taken(here)) if isinstance(here, Operation) else ()
    return [each for each in found.values() if isinstance(each, Call)]


def taken(operation: Operation) -> tuple[Expression, ...]:
    """The operands that made the value: of two branches the one that was taken."""
    if operation.operator != "where":
        return operation.operands
    condition, yes, no = operation.operands
    return (yes,) if condition.value else (no,)
