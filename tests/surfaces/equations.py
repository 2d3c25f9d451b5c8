"""A reader of equations: what a person sees on a page, worked out again from the page alone."""

import math
import operator
from collections.abc import Callable, Mapping
from typing import Any
from xml.etree import ElementTree

Token = Any  # a number, or the text of an operator or function

FUNCTIONS: dict[str, Callable[..., float]] = {
    "exp": math.exp, "ln": math.log, "sin": math.sin, "cos": math.cos, "arcsin": math.asin,
    "min": min, "max": max,
}  # fmt: skip
SPACES = ("\u202f", "\u00a0")


def seen(markup: str, letters: Mapping[str, float]) -> float:
    """The value of what some MathML shows, given its letters; brackets count only where drawn."""
    return value([ElementTree.fromstring(f"<mrow>{markup}</mrow>")], letters)


def value(elements: list[ElementTree.Element], letters: Mapping[str, float]) -> float:
    tokens = [token for element in elements for token in read(element, letters)]
    result, rest = _comparison(tokens)
    assert rest == [], f"left over: {rest}"
    return result


def read(element: ElementTree.Element, letters: Mapping[str, float]) -> list[Token]:
    children = list(element)
    text = element.text or ""
    match element.tag:
        case "mn":
            return [float(text.translate(dict.fromkeys(map(ord, SPACES))))]
        case "mi":
            return [text if text in FUNCTIONS else letters[text]]
        case "mo":
            return ["" if text == "\u2061" else "×" if text == "\u2062" else text]
        case "mspace":
            return [""]
        case "mfrac":
            return [value([children[0]], letters) / value([children[1]], letters)]
        case "msqrt":
            return [value(children, letters) ** 0.5]
        case "msup":  # binds to no more than the last thing in its base, as the eye reads it
            return [*read(children[0], letters), "^", value([children[1]], letters)]
        case "mtable":
            return [_branches(children, letters)]
    return [token for child in children for token in read(child, letters)]


def _branches(rows: list[ElementTree.Element], letters: Mapping[str, float]) -> float:
    """The first branch whose condition holds; the last holds otherwise."""
    for row in rows:
        shown, when = list(row)
        condition = [each for each in when.iter("mrow") if each.find("mtext") is None]
        if not condition or value(condition[:1], letters):
            return value([shown], letters)
    raise AssertionError("no branch holds")


def _comparison(tokens: list[Token]) -> tuple[float, list[Token]]:
    left, rest = _sum([token for token in tokens if token != ""])
    if rest[:1] not in (["<"], [">"]):
        return left, rest
    right, after = _sum(rest[1:])
    return float(left < right if rest[0] == "<" else left > right), after


def _sum(tokens: list[Token]) -> tuple[float, list[Token]]:
    minus = tokens[:1] == ["−"]
    total, rest = _product(tokens[1:] if minus else tokens)
    total = -total if minus else total
    while rest[:1] in (["+"], ["−"]):
        term, after = _product(rest[1:])
        total = total + term if rest[0] == "+" else total - term
        rest = after
    return total, rest


def _product(tokens: list[Token]) -> tuple[float, list[Token]]:
    total, rest = _power(tokens)
    while rest[:1] == ["×"]:
        factor, rest = _power(rest[1:])
        total *= factor
    return total, rest


def _power(tokens: list[Token]) -> tuple[float, list[Token]]:
    base, rest = _atom(tokens)
    while rest[:1] == ["^"]:
        base, rest = operator.pow(base, rest[1]), rest[2:]
    return base, rest


_CLOSING = {"(": ")", "|": "|", "⌈": "⌉", "{": ""}


def _atom(tokens: list[Token]) -> tuple[float, list[Token]]:
    first, *rest = tokens
    if isinstance(first, float):
        return first, rest
    if first == "{":
        return _atom(rest)
    if first in FUNCTIONS:
        return _call(FUNCTIONS[first], rest)
    inside, rest = _sum(rest)
    assert rest[0] == _CLOSING[first], (first, rest)
    made = {"|": abs, "⌈": math.ceil}.get(first, float)(inside)
    return float(made), rest[1:]


def _call(function: Callable[..., float], tokens: list[Token]) -> tuple[float, list[Token]]:
    assert tokens[0] == "("
    arguments, rest = [], [",", *tokens[1:]]
    while rest[0] == ",":
        argument, rest = _sum(rest[1:])
        arguments.append(argument)
    assert rest[0] == ")"
    return function(*arguments), rest[1:]
