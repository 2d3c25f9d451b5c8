"""The fan before and after: two points on one system curve, and a fan curve through each."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from lightoff.surfaces.drawing.label import SIZE, Label, width_of
from lightoff.surfaces.drawing.picture import Said, dot, path, picture
from lightoff.surfaces.drawing.plot import NARROW, Axis, Plot

STEPS = 48
WIDE, HIGH = 1.7, 1.75  # the axes reach so far beyond the larger point, so that labels have room
SAME = 0.002  # parabolas closer than this are drawn as one
LINE = 17.0  # px from one line of a label to the next


@dataclass(frozen=True)
class Running:
    """One point of operation, in the units shown, with the lines of its label.

    `curve` is the part of the fan's curve that is drawn, from less flow to more.
    """

    flow: float
    pressure: float
    curve: Sequence[tuple[float, float]]
    lines: tuple[str, ...]


@dataclass(frozen=True)
class FanCurve:
    """What is drawn: the point that was and the one that will be; names of axes and lines."""

    old: Running
    new: Running
    flow_name: str
    pressure_name: str
    system_name: str


def fan_curve(what: FanCurve, said: Said, *, width: float) -> Markup:
    """The picture; the system's pressure goes with the square of the flow, so it is a parabola."""
    plot = _plot(what, width)
    less, more = sorted((what.old, what.new), key=lambda point: point.pressure)
    both = ((what.old, "was"), (what.new, "will"))
    parts = list(plot.axes())
    for point, style in both if _two_systems(what) else ((more, "will"),):
        parts.append(path(_system(plot, point), f"system {style}"))
    for point, style in both:
        parts.append(path((plot.at(*each) for each in point.curve), f"fan {style}"))
    parts += [dot(plot.at(point.flow, point.pressure), style, 5.5) for point, style in both]
    for label in (*_upper_left(plot, more), *_lower_right(plot, less), _named(plot, what, more)):
        parts.append(label.svg())
    return picture(parts, said, width=width, height=plot.height)


def _plot(what: FanCurve, width: float) -> Plot:
    flow = WIDE * max(what.old.flow, what.new.flow)
    pressure = HIGH * max(what.old.pressure, what.new.pressure)
    height = 360.0 if width > NARROW else 320.0
    x, y = Axis(0.0, flow, what.flow_name), Axis(0.0, pressure, what.pressure_name)
    return Plot(x, y, width, height)


def _two_systems(what: FanCurve) -> bool:
    """Whether the points lie on two parabolas: the air became heavier or lighter."""
    old, new = (point.pressure / point.flow**2 for point in (what.old, what.new))
    return abs(new / old - 1) > SAME


def _system(plot: Plot, through: Running) -> Iterator[tuple[float, float]]:
    last = (plot.y.high / through.pressure) ** 0.5
    for step in range(STEPS + 1):
        share = min(last, plot.x.high / through.flow) * step / STEPS
        yield plot.at(share * through.flow, share**2 * through.pressure)


def _upper_left(plot: Plot, point: Running) -> Iterator[Label]:
    """The larger point's label: left of it, above its fan curve, where no other line comes."""
    x, _ = plot.at(point.flow, 0.0)
    _, y = plot.at(0.0, max(pressure for _, pressure in point.curve))
    right = max(x - 4, plot.left + 8 + max(map(width_of, point.lines)))
    yield from _lines(point, right, y - 10 - LINE * (len(point.lines) - 1), "end")


def _lower_right(plot: Plot, point: Running) -> Iterator[Label]:
    """The smaller point's label: below the end of its fan curve, or beside it near the axis."""
    x, y = plot.at(*point.curve[-1])
    tall, wide = LINE * (len(point.lines) - 1), max(map(width_of, point.lines))
    if y + 10 + SIZE + tall < plot.floor - 8:
        left = min(x + 4, plot.right) - wide
        yield from _lines(point, left, y + 10 + SIZE, "start")
    else:
        left = min(x + 10, plot.right - wide)
        yield from _lines(point, left, plot.floor - 10 - tall, "start")


def _lines(point: Running, x: float, y: float, anchor: str) -> Iterator[Label]:
    for i, text in enumerate(point.lines):
        yield Label(x, y + LINE * i, text, anchor, "n halo" if i else "n strong halo")


def _named(plot: Plot, what: FanCurve, point: Running) -> Label:
    """The system curve's name, at its upper end."""
    x, y = plot.at(point.flow * (plot.y.high / point.pressure) ** 0.5, plot.y.high)
    return Label(x + 6, y + 10, what.system_name)
