"""A duct in section, to scale, with the points of a traverse and how far in each of them lies."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from markupsafe import Markup

from lightoff.surfaces.drawing.label import Label, spread, width_of
from lightoff.surfaces.drawing.picture import Said, dot, picture
from lightoff.surfaces.drawing.plot import NARROW

HEAD = 26.0  # px above the duct, for what stands there
GAP = 8.0  # px between the duct and the probe below it
LINE = 17.0  # px from one line of labels to the next
EDGE = 2.0


@dataclass(frozen=True)
class Place:
    """One distance from a wall, in the unit shown, and its text."""

    value: float
    text: str


@dataclass(frozen=True)
class Traverse:
    """What is drawn: the duct, and the distances across it, from the left, and down, from the top.

    A round duct has its `across` on every one of `lines` diameters, and no `down`.
    """

    width: float
    height: float
    across: Sequence[Place]
    size_text: str
    across_name: str
    down: Sequence[Place] = ()
    down_name: str = ""
    lines: int = 0

    @property
    def round(self) -> bool:
        return self.lines > 0


@dataclass(frozen=True)
class _Sheet:
    """Where the duct stands on a sheet of `width` px."""

    what: Traverse
    width: float

    @property
    def gutter(self) -> float:
        """Room at the right for the distances from the top."""
        widest = max((width_of(place.text) for place in self.what.down), default=0.0)
        return widest + 26 if widest else EDGE

    @property
    def scale(self) -> float:
        room = self.width - self.gutter - EDGE
        tall = 300.0 if self.width > NARROW else 250.0
        return min(room / self.what.width, tall / self.what.height)

    @property
    def wide(self) -> float:
        return self.what.width * self.scale

    @property
    def tall(self) -> float:
        return self.what.height * self.scale

    @property
    def left(self) -> float:
        return EDGE if self.what.down else (self.width - self.wide) / 2

    @property
    def room(self) -> float:
        """How tall the part of the sheet is that holds the duct and what stands at its right."""
        return max(self.tall, LINE * len(self.what.down))

    @property
    def top(self) -> float:
        return HEAD + (self.room - self.tall) / 2

    @property
    def probe(self) -> float:
        """Where the probe lies below the duct."""
        return HEAD + self.room + GAP

    def x(self, place: Place) -> float:
        return self.left + place.value * self.scale

    def y(self, place: Place) -> float:
        return self.top + place.value * self.scale


def traverse(what: Traverse, said: Said, *, width: float) -> Markup:
    """The picture."""
    sheet = _Sheet(what, width)
    marks, height = _probe(sheet)
    parts = [*(_round(sheet) if what.round else _rectangle(sheet)), *marks, *_down(sheet)]
    parts.append(Label(0, 13, what.size_text, "start", "n strong").svg())
    return picture(parts, said, width=width, height=height)


def _rectangle(sheet: _Sheet) -> Iterator[str]:
    yield (f'<rect x="{sheet.left:.1f}" y="{sheet.top:.1f}" width="{sheet.wide:.1f}" '
           f'height="{sheet.tall:.1f}" class="duct"/>')  # fmt: skip
    for across in sheet.what.across:
        yield f'<path d="M{sheet.x(across):.1f} {sheet.top:.1f}v{sheet.tall:.1f}" class="grid"/>'
    for down in sheet.what.down:
        yield f'<path d="M{sheet.left:.1f} {sheet.y(down):.1f}h{sheet.wide:.1f}" class="grid"/>'
    size = _dot_size(sheet)
    for down in sheet.what.down:
        for across in sheet.what.across:
            yield dot((sheet.x(across), sheet.y(down)), "will", size)


def _round(sheet: _Sheet) -> Iterator[str]:
    radius = sheet.wide / 2
    x, y = sheet.left + radius, sheet.top + radius
    yield f'<circle cx="{x:.1f}" cy="{y:.1f}" r="{radius:.1f}" class="duct"/>'
    size = _dot_size(sheet)
    for line in range(sheet.what.lines):
        angle = math.pi * line / sheet.what.lines
        cos, sin = math.cos(angle), math.sin(angle)
        ends = (x - radius * cos, y - radius * sin, x + radius * cos, y + radius * sin)
        yield '<path d="M{:.1f} {:.1f}L{:.1f} {:.1f}" class="grid"/>'.format(*ends)
        for place in sheet.what.across:
            out = place.value * sheet.scale - radius
            yield dot((x + out * cos, y + out * sin), "will", size)


def _dot_size(sheet: _Sheet) -> float:
    """Small enough that neighbours do not touch."""
    gaps = [(b.value - a.value) * sheet.scale
            for each in (sheet.what.across, sheet.what.down)
            for a, b in pairwise(each)]  # fmt: skip
    return max(1.0, min(4.0, 0.4 * min(gaps, default=10.0)))


def _probe(sheet: _Sheet) -> tuple[list[str], float]:
    """The probe's marks below the duct, at the same scale, each with its distance; the height."""
    y, what = sheet.probe, sheet.what
    parts = [f'<path d="M{sheet.left:.1f} {y:.1f}h{sheet.wide:.1f}" class="axis"/>',
             f'<path d="M{sheet.left:.1f} {y - 5:.1f}v10" class="axis"/>']  # fmt: skip
    pitch = max(width_of(place.text) for place in what.across) + 8
    rows = min(len(what.across), math.ceil(len(what.across) * pitch / sheet.width))
    for row in range(rows):
        mine = what.across[row::rows]
        at = [sheet.x(place) for place in mine]
        places = spread(at, pitch, pitch / 2, sheet.width - pitch / 2)
        low = y + 24 + LINE * row
        for place, x, shown in zip(mine, at, places, strict=True):
            lead = f"M{x:.1f} {y - 4:.1f}v8L{shown:.1f} {low - 11:.1f}"
            parts.append(f'<path d="{lead}" class="lead"/>')
            parts.append(Label(shown, low, place.text, "middle", "n halo").svg())
    foot = y + 24 + LINE * rows + 2
    parts.append(Label(0, foot, what.across_name).svg())
    return parts, foot + 8


def _down(sheet: _Sheet) -> Iterator[str]:
    """The distances from the top, at the right."""
    if not sheet.what.down:
        return
    at = [sheet.y(place) for place in sheet.what.down]
    low, high = HEAD + LINE / 2, HEAD + sheet.room - LINE / 2
    right = sheet.left + sheet.wide
    for place, y, shown in zip(sheet.what.down, at, spread(at, LINE, low, high), strict=True):
        yield f'<path d="M{right:.1f} {y:.1f}h4L{right + 18:.1f} {shown:.1f}h2" class="lead"/>'
        yield Label(right + 23, shown + 4.5, place.text).svg()
    name = sheet.what.down_name
    clear = width_of(sheet.what.size_text) + 16 + width_of(name)
    end = min(max(right + 23 + width_of(name) / 2, clear), sheet.width)
    yield Label(end, 13, name, "end").svg()
