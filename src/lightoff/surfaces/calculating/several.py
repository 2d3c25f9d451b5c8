"""Several values typed as one text: `0.05 inwc, 0.06 inwc`, or `0.05, 0.06 inwc`."""

import re
from collections.abc import Sequence

from lightoff.quantity import LightoffError, find, parse

MOST = 200  # values; no traverse needs more
LONGEST = 4000  # characters
_SEPARATOR = re.compile(r"\s*[;\n]\s*|,\s+|\s+,")
_THOUSANDS = re.compile(r"\d,\d{3}(?!\d)")
_UNIT_AFTER = re.compile(
    r"\s*[+\-−]?[\d.,½⅓⅔¼¾⅛⅜⅝⅞]*(?:[ -]?\d+/\d+)?(?:[eE][+-]?\d+)?\s*(.*?)\s*", re.DOTALL
)

_TWO_WAYS = (
    "its commas can be read in two ways: put a space after each comma of a list, and write "
    "thousands without one"
)


class ListError(LightoffError):
    """Values of a list that cannot be read, a sentence each."""

    def __init__(self, messages: Sequence[str]) -> None:
        super().__init__("; ".join(messages))
        self.messages = tuple(messages)


def values(typed: object, kind: str) -> tuple[float, ...]:
    """The values in SI, from a text or a list of texts; a `ListError` names every faulty one."""
    pieces: Sequence[object] = typed if isinstance(typed, list | tuple) else [typed]
    if isinstance(typed, str):
        if len(typed) > LONGEST:
            raise ListError([f"the list is too long: it may have {MOST} values"])
        pieces = with_units(split(typed))
    if len(pieces) > MOST:
        raise ListError([f"{len(pieces)} values are too many: a list may have {MOST}"])
    found, messages = [], []
    for place, piece in enumerate(pieces, start=1):
        try:
            found.append(parse(piece, kind).value)
        except LightoffError as error:
            messages.append(f"value {place}: {error}")
    if messages:
        raise ListError(messages)
    return tuple(found)


def split(text: str) -> list[str]:
    """The pieces of a list, as typed.

    >>> split("1,200 cfm, 1,300 cfm"), split("0.05,0.06 inwc")
    (['1,200 cfm', '1,300 cfm'], ['0.05', '0.06 inwc'])
    """
    pieces = _SEPARATOR.split(text.strip().strip(",;"))
    if len(pieces) == 1 and "," in text:
        if _THOUSANDS.search(text):
            raise ListError([_TWO_WAYS])
        pieces = text.split(",")
    return [piece.strip() for piece in pieces]


def with_units(pieces: list[str]) -> list[str]:
    """The pieces, a bare number given the unit of the others where they all have the same.

    >>> with_units(["0.05", "0.06 inwc"])
    ['0.05 inwc', '0.06 inwc']
    """
    units = {unit for piece in pieces if (unit := unit_of(piece))}
    unit = units.pop() if len(units) == 1 else ""
    if not find(unit):
        return pieces
    return [piece if not piece or unit_of(piece) else f"{piece} {unit}" for piece in pieces]


def unit_of(piece: str) -> str:
    """What stands after the number.

    >>> unit_of("5 3/8 in"), unit_of("1e-3 Pa"), unit_of("0.05")
    ('in', 'Pa', '')
    """
    match = _UNIT_AFTER.fullmatch(piece)
    return match[1] if match else ""
