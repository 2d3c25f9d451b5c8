"""What a step stands on: every letter of its equation, with words, value and unit."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from lightoff.formula import Quantity, Step
from lightoff.formula.expression import Call, Operation, Symbol, calls, taken
from lightoff.formula.text import leaf_key, leaves, letters, result_of

MOST_PARTS = 12  # of one input that are told one by one; a gas has fewer


@dataclass(frozen=True)
class Standing:
    """One quantity an equation stands on.

    `above` where another step worked it out, not `taken` where it stands in a branch that was not
    taken; not `in_range` where the formula does not hold for it.
    """

    symbol: str
    words: str
    value: float
    unit: str
    above: bool = False
    in_range: bool = True
    taken: bool = True


def in_words(step: Step) -> bool:
    """Whether the equation is told in words: it is solved, or sums over a gas's composition."""
    return step.expression is None or any(each.range is None for each in step.formula.inputs)


def has_numbers(step: Step) -> bool:
    """Whether there are numbers to be put in: not where it was solved, or is one number alone."""
    seen = step.expression
    while isinstance(seen, Operation) and seen.operator == "where":
        (seen,) = taken(seen)
    return isinstance(seen, Operation)


def stands_on(step: Step) -> tuple[Standing, ...]:
    """The letters of the equation in the order of reading, then what is out of range besides.

    Readings by the dozen stand in the equation alone, in their order.
    """
    if step.expression is None or step.plain:
        return tuple(_terms(step))
    seen = {leaf_key(leaf): leaf for leaf in leaves(step.expression)}
    parts = Counter(_owner(step, leaf) for leaf in seen.values())
    seen = {key: leaf for key, leaf in seen.items() if parts[_owner(step, leaf)] <= MOST_PARTS}
    known = letters(step.expression)
    opened = {leaf_key(call) for call in calls(step.expression)}
    told = [
        _result(leaf, known[key], opened=key in opened) if isinstance(leaf, Call)
        else _given(step, leaf, known[key])
        for key, leaf in seen.items()
    ]  # fmt: skip
    named = {each.symbol for each in told if not each.above}
    return (*told, *(term for term in _terms(step)
                     if not term.in_range and term.symbol not in named))  # fmt: skip


def _terms(step: Step) -> Iterator[Standing]:
    for term in step.terms:
        told = term.quantity
        yield Standing(told.symbol, told.words, term.value, told.unit, in_range=term.in_range)


def _owner(step: Step, leaf: Symbol | Call) -> object:
    """What a letter belongs to: the one input of which it is a part, or itself."""
    return _input(step, leaf.name)[0] if isinstance(leaf, Symbol) else leaf_key(leaf)


def _result(call: Call, symbol: str, *, opened: bool) -> Standing:
    told = result_of(call)
    return Standing(symbol, told.words, call.value, told.unit, above=opened, taken=opened)


def _given(step: Step, leaf: Symbol, symbol: str) -> Standing:
    told, part = _input(step, leaf.name)
    words = f"{told.words.partition(',')[0]}: {part}" if part else told.words
    return Standing(symbol, words, leaf.value, told.unit, in_range=told.holds(leaf.value))


def _input(step: Step, symbol: str) -> tuple[Quantity, str]:
    """The input of a letter; of a composition also the component."""
    own = next((each for each in step.formula.inputs if each.symbol == symbol), None)
    if own is not None:
        return own, ""
    whole = next(each for each in step.formula.inputs if symbol.startswith(f"{each.symbol}_"))
    return whole, symbol.removeprefix(f"{whole.symbol}_").replace("_", " ")
