"""What a formula says of itself: its docstring, read as data.

A docstring is a sentence; the equation; under `Parameters` a line for each input, `name : symbol,
words, low to high [unit]` (the range is where the formula holds); under `Returns` a line for each
result, `symbol, words [unit]`, or `name : symbol, words [unit]` where there are several; and a
paragraph that begins with `Source:`. A symbol is a letter, `p`, with what stands below it, `p_ws`;
Greek letters by name, `rho`, `Delta_p`.
"""

import inspect
import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import Any

_NUMBER = r"[+-]?\d[\d ]*(?:\.\d+)?(?:e[+-]?\d+)?"
_LINE = re.compile(
    r"(?P<symbol>[A-Za-z]\w*), (?P<words>.+?)"
    rf"(?:,? (?P<low>{_NUMBER}) to (?P<high>{_NUMBER}))? \[(?P<unit>[^\]]+)\]"
)
_ENTRY = re.compile(r"(?:(?P<name>\w+) : )?(?P<rest>.+)")


@dataclass(frozen=True)
class Quantity:
    """One input or result: name, symbol, words, SI unit, and the range the formula holds for."""

    name: str
    symbol: str
    words: str
    unit: str
    range: tuple[float, float] | None = None

    def holds(self, value: float) -> bool:
        """Whether a value lies in the range the formula is valid for."""
        return self.range is None or self.range[0] <= value <= self.range[1]


@dataclass(frozen=True)
class Description:
    """A formula: one sentence, its equation, its inputs and results, its source.

    `solved` is whether the equation is not worked out from left to right but solved for the result.
    """

    name: str
    sentence: str
    equation: str
    inputs: tuple[Quantity, ...]
    results: tuple[Quantity, ...]
    source: str

    @property
    def solved(self) -> bool:
        return "solved for" in self.equation

    def input(self, name: str) -> Quantity:
        """The input of this name."""
        return next(each for each in self.inputs if each.name == name)


class UndescribedError(Exception):
    """A docstring that does not say what it must."""


@cache
def describe(formula: Callable[..., Any]) -> Description:
    """Read a formula's docstring."""
    text = inspect.getdoc(formula) or ""
    name = formula.__name__
    paragraphs = text.split("\n\n")
    sections = dict(re.findall(r"^(\w+)\n-+\n(.*?)(?:\n\n|\Z)", text, re.MULTILINE | re.DOTALL))
    source = re.search(r"^Source: (.*?)(?:\n\n|\Z)", text, re.MULTILINE | re.DOTALL)
    for missing, found in (("inputs", "Parameters" in sections),
                           ("result", "Returns" in sections), ("source", source)):  # fmt: skip
        if not found:
            raise UndescribedError(f"{name} does not say its {missing}")
    assert source is not None
    return Description(
        name=name,
        sentence=_flat(paragraphs[0]),
        equation=_flat(paragraphs[1]) if "\n---" not in paragraphs[1] else "",
        inputs=tuple(_quantities(name, sections["Parameters"])),
        results=tuple(_quantities(name, sections["Returns"])),
        source=_flat(source[1]),
    )


def _quantities(formula: str, block: str) -> list[Quantity]:
    return [_quantity(formula, line) for line in _entries(block)]


def _entries(block: str) -> list[str]:
    """One string an entry: what is indented goes on from the line before."""
    return [_flat(entry) for entry in re.split(r"\n(?! )", block)]


def _quantity(formula: str, line: str) -> Quantity:
    entry = _ENTRY.fullmatch(line)
    match = _LINE.fullmatch(entry["rest"]) if entry else None
    if entry is None or match is None:
        raise UndescribedError(f'{formula}: "{line}" is not "symbol, words [unit]"')
    name = entry["name"] or "result"
    low, high = match["low"], match["high"]
    span = None if low is None else (_number(low), _number(high))
    return Quantity(name, match["symbol"], match["words"], match["unit"], span)


def _number(text: str) -> float:
    return float(text.replace(" ", ""))


def _flat(text: str) -> str:
    return " ".join(text.split())
