"""The pressure along a pipe: what it begins with, what is left at its end, what must be left."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from lightoff.surfaces.drawing.label import Label
from lightoff.surfaces.drawing.picture import Said, dot, path, picture
from lightoff.surfaces.drawing.plot import NARROW, Axis, Plot

FREE = 0.35  # of the span of the pressures, free above and below them


@dataclass(frozen=True)
class Level:
    """A pressure in the unit shown, and its label."""

    value: float
    text: str


@dataclass(frozen=True)
class PipeDrop:
    """What is drawn; `along` is the way between the ends: distances and pressures."""

    along: Sequence[tuple[float, float]]
    start: Level
    end: Level
    length_name: str
    pressure_name: str
    least: Level | None = None


def pipe_drop(what: PipeDrop, said: Said, *, width: float) -> Markup:
    """The picture; what the pipe takes is the wedge above the line."""
    plot = _plot(what, width)
    line = [plot.at(*each) for each in what.along]
    corner = plot.at(plot.x.high, what.start.value)
    parts = [path([*line, corner], "under"), *plot.axes()]
    if what.least is not None:
        parts.append(_across(plot, what.least.value, "least"))
    parts += [path(line, "now"), dot(line[0], "will"), dot(line[-1], "will")]
    parts += [label.svg() for label in _labels(plot, what)]
    return picture(parts, said, width=width, height=plot.height)


def _plot(what: PipeDrop, width: float) -> Plot:
    """The axis closes in on the pressures."""
    there = [what.start.value, what.end.value, *([what.least.value] if what.least else [])]
    low, high = min(there), max(there)
    span = max(high - low, 0.001 * abs(high)) or 1.0
    y = Axis(low - FREE * span, high + FREE * span, what.pressure_name)
    height = 280.0 if width > NARROW else 260.0
    return Plot(Axis(0.0, what.along[-1][0], what.length_name), y, width, height)


def _across(plot: Plot, value: float, style: str) -> str:
    _, y = plot.at(0.0, value)
    return f'<path d="M{plot.left:.1f} {y:.1f}H{plot.right:.1f}" class="{style}"/>'


def _labels(plot: Plot, what: PipeDrop) -> Iterator[Label]:
    """The start above its end of the line, what is left below the other; the limit at the left."""
    x, start = plot.at(0.0, what.start.value)
    yield Label(x + 4, start - 12, what.start.text, "start", "n strong halo")
    x, end = plot.at(plot.x.high, what.end.value)
    yield Label(x, end + 22, what.end.text, "end", "n strong halo")
    if what.least is not None:
        x, least = plot.at(0.0, what.least.value)
        above = what.least.value > what.start.value
        yield Label(x + 4, least - 26 if above else least + 18, what.least.text, "start", "n halo")
