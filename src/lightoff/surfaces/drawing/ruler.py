"""The ruler: a point's readings and its estimate on one axis, large, with the window behind them.

Every number is in the unit it is shown in. The axis closes in near a limit and widens to show a
miss. On a narrow screen the names stand above their lines instead of beside them.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup, escape

from lightoff.surfaces.drawing.marks import State
from lightoff.surfaces.drawing.strip import dot

MARGIN = 0.10  # of the axis, free at both ends
GUTTER = 168.0  # px for the names, where they stand beside their lines
EDGE = 12.0
TOP = 38.0
BELL = 30.0  # px, height of the curve of an estimate
ROOM = 84.0  # px for a limit's text
STEPS = 48


@dataclass(frozen=True)
class Measured:
    """One line of a ruler: a value with its expanded uncertainty; `best` bears a curve."""

    name: str
    text: str
    value: float
    expanded: float
    state: State
    best: bool = False


@dataclass(frozen=True)
class Ruler:
    """What is drawn: lines in time, limits with their texts (None where open)."""

    lines: Sequence[Measured]
    lower: float | None
    upper: float | None
    lower_text: str
    upper_text: str
    unit: str

    @property
    def ends(self) -> tuple[float, float]:
        """The axis: from the least to the most of limits and whiskers, and a margin."""
        limits = [limit for limit in (self.lower, self.upper) if limit is not None]
        spread = [m.value + side * 1.6 * m.expanded for m in self.lines for side in (-1, 1)]
        low, high = min(limits + spread, default=0.0), max(limits + spread, default=1.0)
        span = (high - low) or abs(high) * 0.1 or 1.0
        return low - MARGIN * span, high + MARGIN * span


@dataclass(frozen=True)
class _Frame:
    """Where things stand on the sheet [px]."""

    ruler: Ruler
    width: float
    wide: bool

    @property
    def left(self) -> float:
        return GUTTER if self.wide else EDGE

    @property
    def pitch(self) -> float:
        return 52.0 if self.wide else 70.0

    @property
    def floor(self) -> float:
        return TOP + self.pitch * len(self.ruler.lines) + 8

    def line(self, row: int) -> float:
        """Where the line of a row runs."""
        return TOP + self.pitch * (row + 1) - 6

    def at(self, value: float) -> float:
        low, high = self.ruler.ends
        return self.left + (self.width - EDGE - self.left) * (value - low) / (high - low)


def ruler(what: Ruler, label: str, *, width: float) -> Markup:
    """The picture; `label` says the same in words."""
    frame = _Frame(what, width, wide=width > 500)
    height = frame.floor + 28
    parts = [*_window(frame), *_axis(frame)]
    for row, line in enumerate(what.lines):
        parts += _line(frame, line, frame.line(row))
    return Markup(
        f'<svg class="chart" viewBox="0 0 {width:g} {height:g}" width="{width:g}" '
        f'height="{height:g}" role="img" aria-label="{escape(label)}">{"".join(parts)}</svg>'
    )  # numbers, constants and escaped text


def _window(frame: _Frame) -> Iterator[str]:
    what = frame.ruler
    if what.lower is None and what.upper is None:
        return
    left = frame.left if what.lower is None else frame.at(what.lower)
    right = frame.width - EDGE if what.upper is None else frame.at(what.upper)
    for top, bottom in _bands(frame):
        box = f'x="{left:.1f}" y="{top:g}" width="{right - left:.1f}" height="{bottom - top:g}"'
        yield f'<rect {box} class="win"/>'
    places = [
        (*_beside(frame, frame.at(limit), left_of=is_lower), text)
        for limit, text, is_lower in (
            (what.lower, what.lower_text, True),
            (what.upper, what.upper_text, False),
        )
        if limit is not None
    ]
    for x, _, _ in places:
        for top, bottom in _bands(frame):
            yield f'<path d="M{x:.1f} {top - 4:g}V{bottom:g}" class="lim"/>'
    for x, anchor, text in _apart(places):
        yield _text(x, anchor, TOP - 16, text, "n strong")


def _apart(places: list[tuple[float, str, str]]) -> list[tuple[float, str, str]]:
    """The limits' texts; as one where both would stand on the same side of two limits so near."""
    if len(places) < 2:
        return places
    (x, anchor, low), (end, other, high) = places
    if anchor != other or end - x > ROOM:
        return places
    return [(x if anchor == "start" else end, anchor, f"{low}–{high}")]


def _bands(frame: _Frame) -> list[tuple[float, float]]:
    """Where the window is drawn: behind all lines, or behind each where names stand between."""
    if frame.wide or not frame.ruler.lines:
        return [(TOP - 6, frame.floor)]
    lines = [frame.line(row) for row in range(len(frame.ruler.lines))]
    return [(TOP - 6, TOP - 2), *((y - BELL - 6, y + 6) for y in lines[:-1]),
            (lines[-1] - BELL - 6, frame.floor)]  # fmt: skip


def _beside(frame: _Frame, x: float, *, left_of: bool) -> tuple[float, str]:
    """Where a limit's text stands so that it stays on the sheet."""
    room = x - EDGE if left_of else frame.width - EDGE - x
    outside = room > ROOM
    return x, ("end" if left_of == outside else "start")


def _axis(frame: _Frame) -> Iterator[str]:
    y, (low, high) = frame.floor, frame.ruler.ends
    yield f'<path d="M{frame.left:.1f} {y:g}H{frame.width - EDGE:g}" class="axis"/>'
    for tick, text in ticks(low, high, 8 if frame.wide else 4):
        x = frame.at(tick)
        yield f'<path d="M{x:.1f} {y:g}v5" class="axis"/>'
        yield _text(x, "middle", y + 20, text, "n")
    if frame.wide:
        yield _text(0, "start", y + 20, frame.ruler.unit, "n")


def _line(frame: _Frame, line: Measured, y: float) -> Iterator[str]:
    x, weight = frame.at(line.value), " strong" if line.best else ""
    tone = f"s-{line.state}"
    if line.best and line.expanded > 0:
        yield _bell(frame, line, y, tone)
    yield f'<path d="M{frame.left:.1f} {y:g}H{frame.width - EDGE:g}" class="grid"/>'
    ends = frame.at(line.value - line.expanded), frame.at(line.value + line.expanded)
    yield f'<path d="M{ends[0]:.1f} {y:g}H{ends[1]:.1f}" class="st-u {tone}"/>'
    yield dot(x, y, line.state)
    if frame.wide:
        yield _text(0, "start", y - 6, line.name, f"n{weight}")
        yield _text(0, "start", y + 11, line.text, "n v2")
    else:
        yield _text(EDGE, "start", y - BELL - 13, line.name, f"n{weight}")
        yield _text(frame.width - EDGE, "end", y - BELL - 13, line.text, "n v2")


def _bell(frame: _Frame, line: Measured, y: float, tone: str) -> str:
    """How the value is spread, as far as three standard uncertainties either way."""
    u = line.expanded / 2
    sides = [-3.0 + 6.0 * step / STEPS for step in range(STEPS + 1)]
    path = "L".join(
        f"{frame.at(line.value + z * u):.1f} {y - BELL * math.exp(-z * z / 2):.1f}" for z in sides
    )
    return f'<path d="M{path}" class="bell {tone}"/>'


def ticks(low: float, high: float, most: int) -> list[tuple[float, str]]:
    """At most about `most` round numbers from `low` to `high`, with their texts.

    >>> ticks(3.0, 3.7, 4)
    [(3.0, '3.0'), (3.2, '3.2'), (3.4, '3.4'), (3.6, '3.6')]
    """
    rough = (high - low) / most
    place = 10.0 ** math.floor(math.log10(rough))
    step = next(place * size for size in (1, 2, 5, 10) if place * size >= rough)
    places = max(0, -math.floor(math.log10(step) + 1e-9))
    first = math.ceil(low / step - 1e-9)
    count = math.floor(high / step + 1e-9) - first + 1
    numbers = [round((first + i) * step, places) + 0.0 for i in range(count)]
    return [(n, f"{n:.{places}f}".replace("-", "−")) for n in numbers]


def _text(x: float, anchor: str, y: float, text: str, style: str) -> str:
    place = f'x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}"'
    return f'<text {place} class="{style}">{escape(text)}</text>'
