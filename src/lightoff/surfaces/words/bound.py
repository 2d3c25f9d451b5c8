"""How pages and paper speak: the same sentences, in which no number is torn from its unit."""

import re
from functools import cache
from typing import Any

from lightoff.judgement import Message, Remark, Row
from lightoff.quantity import UNITS, printed_unit, shown
from lightoff.surfaces.words.speech import Speech

NO_BREAK = "\u00a0"


class PageSpeech(Speech):
    """A reader of pages, on a screen or on paper."""

    def word(self, message_id: str, **values: Any) -> str:
        return bound(super().word(message_id, **values))

    def say(self, message: Message | Remark, row: Row | None = None) -> str:
        return bound(super().say(message, row))

    def quantity(
        self, value: float, kind: str, *, expanded: float | None = None, unit: bool = True
    ) -> str:
        return bound(super().quantity(value, kind, expanded=expanded, unit=unit))

    def limit(self, limit: float, row: Row) -> str:
        """One limit of a row as its window writes it, without the unit."""
        place = self._window_place(row)
        return shown(limit, row.kind or "number", self.system, resolution=place).number


def bound(text: str) -> str:
    """Text whose numbers hold on to their units, and a ± to its number.

    >>> bound("at most 3.52 in. w.c. here") == "at most 3.52\u00a0in.\u00a0w.c. here"
    True
    """
    return _breaks().sub(NO_BREAK, text)


@cache
def _breaks() -> re.Pattern[str]:
    """The spaces after a number and before its unit, within a unit, and after ±."""
    names = sorted({printed_unit(unit.name) for unit in UNITS}, key=len, reverse=True)
    units = "|".join(re.escape(name) for name in names if name)
    return re.compile(rf"(?<=\d) (?=(?:{units})(?!\w))|(?<=\bin\.) (?=w\.c\.)|(?<=±) | (?=±)")
