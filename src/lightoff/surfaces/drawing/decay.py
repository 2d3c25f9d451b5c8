"""A pressure test: what was read, and what the temperature alone would have made of it."""

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup

from lightoff.surfaces.drawing.label import Label, spread, width_of
from lightoff.surfaces.drawing.picture import Said, dot, path, picture
from lightoff.surfaces.drawing.plot import NARROW, Axis, Plot

LINE = 20.0  # px from one line of the key to the next
PITCH = 16.0  # px between the two ends' numbers


@dataclass(frozen=True)
class End:
    """One end of the test, in the unit shown: its value, its number, its line in the key."""

    value: float
    number: str
    text: str


@dataclass(frozen=True)
class Decay:
    """What is drawn, in the units shown; `explained` is the end of a pipe that has lost nothing.

    `duration` is 0 where nobody looked at a watch: then the time has no figures.
    """

    duration: float
    start: float
    read: End
    explained: End
    time_name: str
    pressure_name: str


def decay(what: Decay, said: Said, *, width: float) -> Markup:
    """The picture; nobody read between the two ends, so the lines are straight."""
    plot = _plot(what, width)
    begin = plot.at(0.0, what.start)
    read, explained = (plot.at(plot.x.high, end.value) for end in (what.read, what.explained))
    parts = [*_key(what), *plot.axes()]
    parts += [path((begin, explained), "explained"), path((begin, read), "now")]
    parts += [dot(begin, "will"), dot(explained, "was"), dot(read, "will")]
    parts += [label.svg() for label in _numbers(plot, what)]
    return picture(parts, said, width=width, height=plot.height)


def _plot(what: Decay, width: float) -> Plot:
    there = [what.start, what.read.value, what.explained.value]
    span = max(max(there) - min(there), 0.001 * abs(what.start)) or 1.0
    y = Axis(min(there) - 0.2 * span, max(there) + 0.2 * span, what.pressure_name)
    height = 300.0 if width > NARROW else 290.0
    gutter = max(width_of(end.number) for end in (what.read, what.explained)) + 4
    x = Axis(0.0, what.duration or 1.0, what.time_name, bare=not what.duration)
    return Plot(x, y, width, height, head=2 * LINE + 12, gutter=gutter)


def _key(what: Decay) -> Iterator[str]:
    """Above the picture: which line is which."""
    for row, (end, line, style) in enumerate(
        ((what.read, "now", "will"), (what.explained, "explained", "was"))
    ):
        y = 10 + LINE * row
        yield path(((2, y), (34, y)), line) + dot((34, y), style)
        yield Label(48, y + 4.5, end.text, style="n" if row else "n strong").svg()


def _numbers(plot: Plot, what: Decay) -> Iterator[Label]:
    """The two ends' numbers, right of their points, one above the other."""
    ends = sorted((what.read, what.explained), key=lambda end: -end.value)
    at = [plot.at(plot.x.high, end.value)[1] + 4.5 for end in ends]
    places = spread(at, PITCH, plot.top, plot.floor - 4)
    for end, y in zip(ends, places, strict=True):
        style = "n strong" if end is what.read else "n"
        yield Label(plot.right + 11, y, end.number, style=style)
