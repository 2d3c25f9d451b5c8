"""The working of a formula: each equation in the order it was carried out, with its numbers."""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from lightoff.formula.description import Description, Quantity, describe
from lightoff.formula.expression import Call, Expression, Operation, Symbol, calls
from lightoff.formula.figure import Figure, expression_of


@dataclass(frozen=True)
class Term:
    """One input of a step: what it is, and its value [SI]."""

    quantity: Quantity
    value: float

    @property
    def in_range(self) -> bool:
        """Whether the formula is valid there."""
        return self.quantity.holds(self.value)


@dataclass(frozen=True)
class Step:
    """One equation with its numbers; `expression` is None where it was solved by iteration.

    `plain` is arithmetic between two formulas, which is no formula itself: only its numbers tell.
    """

    formula: Description
    result: Quantity
    terms: tuple[Term, ...]
    expression: Expression | None
    value: float
    plain: bool = False


@dataclass(frozen=True)
class Working:
    """What a function of formulas answered, the steps to it, and the inputs that took part."""

    result: Any
    steps: tuple[Step, ...]
    inputs: frozenset[str]


def working(
    function: Callable[..., Any], /, *, of: Quantity | None = None, **inputs: Any
) -> Working:
    """Carry out a function and keep its steps.

    Its formulas are opened down to the last one; a function that is itself a formula is the last
    step of its own working. A result may be a number, several in a tuple, list or dict. Where it is
    the number `of` a quantity, arithmetic between the formulas has its steps as well, the last of
    which gives it.
    """
    symbols = _symbols(function)
    given = {name: _symbol(symbols.get(name, name), value) for name, value in inputs.items()}
    found = function(**given)
    steps: dict[object, Step] = {}
    for figure in _figures(found):
        for call in calls(figure.expression):
            _open(call, steps, between=of is not None)
        if of is not None:
            _put_together(of, figure, steps)
    letters = set(_letters(found, set()))
    taken = (name for name in inputs if letters & set(_symbols_in(given[name])))
    return Working(found, tuple(steps.values()), frozenset(taken))


def _letters(found: Any, seen: set[int]) -> Iterator[str]:
    """The letters a result stands on, through every formula on the way."""
    for figure in _figures(found):
        pending: list[Expression] = [figure.expression]
        while pending:
            expression = pending.pop()
            if id(expression) in seen:
                continue
            seen.add(id(expression))
            if isinstance(expression, Symbol):
                yield expression.name
            elif isinstance(expression, Operation):
                pending.extend(expression.operands)
            elif isinstance(expression, Call):
                arguments = _figures(dict(expression.arguments))
                pending.extend(each.expression for each in arguments)


def _symbols_in(given: Any) -> Iterator[str]:
    """The letters that an input goes by: one, or one for each of its numbers."""
    for figure in _figures(given):
        if isinstance(figure.expression, Symbol):
            yield figure.expression.name


def _figures(found: Any) -> Iterator[Figure]:
    if isinstance(found, Figure):
        yield found
    elif isinstance(found, dict | tuple | list):
        for each in found.values() if isinstance(found, dict) else found:
            yield from _figures(each)


def _symbols(function: Callable[..., Any]) -> dict[str, str]:
    """The letters of a formula's inputs; those of another function are its parameters' names."""
    if not hasattr(function, "__wrapped__"):
        return {}
    return {each.name: each.symbol for each in describe(function).inputs}


def _symbol(letter: str, value: Any) -> Any:
    """A value under its letter; what is not a number stays as it is."""
    if isinstance(value, dict):
        return {name: _symbol(re.sub(r"\W", "_", f"{letter}_{name}"), each)
                for name, each in value.items()}  # fmt: skip
    if isinstance(value, tuple):
        return tuple(_symbol(f"{letter}_{i}", each) for i, each in enumerate(value, start=1))
    if isinstance(value, bool) or not isinstance(value, float | int):
        return value
    return Figure(value, Symbol(letter, float(value)))


def _open(call: Call, steps: dict[object, Step], *, between: bool = False) -> None:
    """Add the steps of a call, what it stands on first, unless they are there already.

    Those of arithmetic `between` it and what it stands on, too, where that is asked for.
    """
    told = describe(call.formula)
    result = next(each for each in told.results if call.part in (None, each.name))
    symbols = {each.name: each.symbol for each in told.inputs}
    given = {name: _symbol(symbols[name], _value(value)) for name, value in call.arguments}
    terms = tuple(Term(each, float(given[each.name])) for each in told.inputs
                  if isinstance(given.get(each.name), float))  # fmt: skip
    key = (told.name, result.name, tuple((term.quantity.name, term.value) for term in terms))
    if key in steps:
        return
    for figure in _figures(dict(call.arguments)):
        for inner in calls(figure.expression):
            _open(inner, steps, between=between)
    if between:
        for each in told.inputs:
            value = dict(call.arguments).get(each.name)
            if isinstance(value, Figure):
                _put_together(each, value, steps)
    expression = None if told.solved else _body(call, given)
    for inner in calls(expression) if expression is not None else []:
        _open(inner, steps)
    steps[key] = Step(told, result, terms, expression, call.value)


def _put_together(of: Quantity, figure: Figure, steps: dict[object, Step]) -> None:
    """Add the step of a number that arithmetic made."""
    if not isinstance(figure.expression, Operation) or figure.expression.operator == "neg":
        return
    told = Description("", f"{of.words[:1].upper()}{of.words[1:]}.", "", (), (of,), "arithmetic")
    key = ("", of.words, float(figure))
    steps.setdefault(key, Step(told, of, (), figure.expression, float(figure), plain=True))


def _body(call: Call, given: dict[str, Any]) -> Expression:
    """The arithmetic inside a formula, its inputs by their own letters."""
    found = call.formula.__wrapped__(**given)  # type: ignore[attr-defined]  # wraps
    return expression_of(found if call.part is None else getattr(found, call.part))


def _value(value: Any) -> Any:
    if isinstance(value, dict):
        return {name: _value(each) for name, each in value.items()}
    return float(value) if isinstance(value, Figure) else value
