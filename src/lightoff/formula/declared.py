"""Marks a function as a formula, so that its result can be opened."""

from collections.abc import Callable
from functools import wraps
from typing import Any, ParamSpec, TypeVar, cast

from lightoff.formula.expression import Call
from lightoff.formula.figure import Figure

P = ParamSpec("P")
R = TypeVar("R")

_OPENED = frozenset({Figure, dict})  # what a figure may be or be in


def formula(function: Callable[P, R]) -> Callable[P, R]:
    """The same function; asked with figures it answers with a figure that can be opened."""

    @wraps(function)
    def asked(*args: P.args, **kwargs: P.kwargs) -> R:
        for value in args:
            if type(value) in _OPENED:
                return cast(R, called(asked, function, args, kwargs))
        for value in kwargs.values():
            if type(value) in _OPENED:
                return cast(R, called(asked, function, args, kwargs))
        return function(*args, **kwargs)

    return asked


def is_formula(thing: Any) -> bool:
    """Whether a function was marked."""
    return callable(thing) and hasattr(thing, "__wrapped__")


def called(
    asked: Callable[..., Any],
    function: Callable[..., Any],
    args: tuple[Any, ...],
    kwargs: dict[str, Any],
) -> Any:
    """The result of a formula as figures, each a call that has a working of its own."""
    names = function.__code__.co_varnames
    given = {**dict(zip(names, args, strict=False)), **kwargs}
    found = function(**{name: plain(value) for name, value in given.items()})
    if isinstance(found, complex):
        raise ValueError(f"{function.__name__} has no real answer for these inputs")
    if not any(map(is_figure, given.values())):
        return found
    arguments = tuple(given.items())
    if not isinstance(found, tuple):
        return Figure(found, Call(asked, arguments, float(found)))
    several: Any = found
    parts = {part: Figure(x, Call(asked, arguments, float(x), part))
             for part, x in several._asdict().items()}  # fmt: skip
    return several._replace(**parts)


def is_figure(value: Any) -> bool:
    """Whether a value, or any of a mapping, remembers how it was worked out."""
    if type(value) is dict:
        return any(isinstance(each, Figure) for each in value.values())
    return isinstance(value, Figure)


def plain(value: Any) -> Any:
    """The numbers alone."""
    if type(value) is dict:
        return {name: plain(each) for name, each in value.items()}
    return float(value) if isinstance(value, Figure) else value
