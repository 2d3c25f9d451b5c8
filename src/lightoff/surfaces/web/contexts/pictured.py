"""The picture of an answer, where its calculation has one, for a wide and for a narrow screen."""

from collections.abc import Callable
from dataclasses import dataclass

from markupsafe import Markup

from lightoff.surfaces.calculating import Sheet
from lightoff.surfaces.words import Speech

WIDE, NARROW = 640.0, 324.0  # px


@dataclass(frozen=True)
class Picture:
    """One picture in two widths, and what is to be said below it."""

    title: str
    wide: Markup
    narrow: Markup
    caption: str


def pictured(sheet: Sheet, speech: Speech) -> Picture | None:
    """The picture of a sheet's answer."""
    draw = DRAWN.get(sheet.picture or "")
    return draw(sheet, speech) if draw else None


DRAWN: dict[str, Callable[[Sheet, Speech], Picture | None]] = {}
