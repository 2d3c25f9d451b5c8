"""An expression on one line: in symbols, or with the numbers put in."""

from collections.abc import Callable, Iterator
from dataclasses import replace

from lightoff.formula.description import Quantity, describe
from lightoff.formula.expression import (
    Call,
    Constant,
    Expression,
    Operation,
    Symbol,
    needs_brackets,
    taken,
)

Leaf = Callable[[Symbol | Call], str]


def written(expression: Expression) -> str:
    """The equation in symbols: what is multiplied stands side by side."""
    known = letters(expression)
    return _line(expression, lambda leaf: known[leaf_key(leaf)], " ", both=True)


def with_numbers(expression: Expression) -> str:
    """The same with the numbers put in; of two branches the one that was taken."""
    return _line(expression, lambda leaf: figure(leaf.value), " × ", both=False)


def letters(expression: Expression) -> dict[object, str]:
    """A letter for every input and every result of another formula, none of them twice."""
    known: dict[object, str] = {}
    for leaf in leaves(expression):
        own = leaf.name if isinstance(leaf, Symbol) else result_of(leaf).symbol
        taken_by = [key for key, letter in known.items() if letter.partition("'")[0] == own]
        if leaf_key(leaf) not in known:
            known[leaf_key(leaf)] = own + "'" * len(taken_by)
    return known


def leaf_key(leaf: Symbol | Call) -> object:
    """What makes two leaves the same."""
    if isinstance(leaf, Symbol):
        return leaf.name
    return leaf.formula, leaf.part, tuple((name, repr(value)) for name, value in leaf.arguments)


def leaves(expression: Expression) -> Iterator[Symbol | Call]:
    """Inputs first, then results of other formulas, each in the order of reading."""
    yield from (leaf for leaf in _leaves(expression) if isinstance(leaf, Symbol))
    yield from (leaf for leaf in _leaves(expression) if isinstance(leaf, Call))


def _leaves(expression: Expression) -> Iterator[Symbol | Call]:
    if isinstance(expression, Operation):
        for operand in expression.operands:
            yield from _leaves(operand)
    elif not isinstance(expression, Constant):
        yield expression


def result_of(call: Call) -> Quantity:
    """What a call is the result of: the one result, or the part of several."""
    return next(r for r in describe(call.formula).results if call.part in (None, r.name))


def figure(value: float) -> str:
    """A number of a formula: six digits, and no exponent where it is not needed.

    >>> figure(101325.0), figure(6356766.0), figure(0.0009144), figure(1.2e-7)
    ('101325', '6356766', '0.0009144', '1.2e-07')
    """
    if value == round(value) and abs(value) < 1e9:
        return f"{value:.0f}"
    return f"{value:.6g}"


def _line(expression: Expression, leaf: Leaf, times: str, *, both: bool) -> str:
    if isinstance(expression, Constant):
        return figure(expression.value)
    if not isinstance(expression, Operation):
        return leaf(expression)
    if not both:
        if expression.operator == "where":
            return _line(taken(expression)[0], leaf, times, both=both)
        expression = replace(expression, operands=tuple(map(_branch, expression.operands)))
    if expression.operator == "+" and expression.operands[0] == Constant(0.0):
        return _line(expression.operands[1], leaf, times, both=both)  # where Python's sum() began
    parts: list[str] = []
    for operand in expression.operands:
        part = _line(operand, leaf, times, both=both)
        negative = part[0] == "-" and (bool(parts) or expression.operator == "^")
        bracketed = needs_brackets(expression, operand) or negative
        parts.append(f"({part})" if bracketed and expression.operator in _INFIX else part)
    return _joined(expression.operator, parts, times)


def _branch(operand: Expression) -> Expression:
    """An operand, of two branches the one that was taken."""
    while isinstance(operand, Operation) and operand.operator == "where":
        (operand,) = taken(operand)
    return operand


_INFIX = {"+": " + ", "-": " - ", "/": " / ", "^": "^", "<": " < ", ">": " > ", "*": "", "neg": ""}


def _joined(operator: str, parts: list[str], times: str) -> str:
    if operator == "neg":
        return f"-{parts[0]}"
    if operator == "*":
        left, right = parts
        return f"{left} × {right}" if right[0].isdigit() else f"{left}{times}{right}"
    if operator == "where":
        condition, yes, no = parts
        return f"{yes} if {condition} else {no}"
    if operator in _INFIX:
        return _INFIX[operator].join(parts)
    return f"{operator}({', '.join(parts)})"
