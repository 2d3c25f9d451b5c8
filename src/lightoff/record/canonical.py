"""JSON as the record keeps it: one text for one value (RFC 8785), and the value back again."""

import json
from datetime import date, time
from typing import Any

import rfc8785

from lightoff.quantity import LightoffError

MOST_EXACT = 2**53 - 1  # beyond it JSON's numbers skip some whole ones


def plain(value: Any) -> Any:
    """A copy of what TOML or JSON gave, with dates and times as ISO 8601 text.

    >>> plain({"date": date(2026, 11, 3), "furnace": (1, 2)})
    {'date': '2026-11-03', 'furnace': [1, 2]}
    """
    try:
        return _plain(value)
    except RecursionError:
        raise LightoffError("brackets are nested deeper than any job needs") from None


def _plain(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _plain(part) for key, part in value.items()}
    if isinstance(value, (list, tuple)):
        return [_plain(part) for part in value]
    return value.isoformat() if isinstance(value, (date, time)) else value


def canonical(value: Any) -> str:
    """The one text of a value; a ValueError where JSON cannot keep it.

    >>> canonical({"value": "3.5 inwc", "furnace": 1, "share": 1.0})
    '{"furnace":1,"share":1,"value":"3.5 inwc"}'
    """
    return rfc8785.dumps(value).decode()


def from_canonical(text: str) -> Any:
    """The value of such a text; a ValueError where it is none."""
    return _DECODER.decode(text)


def _number(digits: str) -> int | float:
    # canonical JSON writes 1e20 as a whole number, which only a float holds
    number = int(digits)
    return number if abs(number) <= MOST_EXACT else float(digits)


_DECODER = json.JSONDecoder(parse_int=_number)  # made once: a record decodes thousands of texts
