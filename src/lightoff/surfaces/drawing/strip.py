"""The window strip: one picture of a value in its limits, the same on every surface.

The limits stand at one quarter and three quarters of the width; a window open on one side runs to
that end. The whisker is the expanded uncertainty; a value off the strip is drawn at its end.
"""

from dataclasses import dataclass

from markupsafe import Markup, escape

from lightoff.inference.estimate import COVERAGE
from lightoff.judgement import Row
from lightoff.surfaces.drawing.marks import State, state_of

LOW, HIGH = 0.25, 0.75  # where the limits stand, of the width
EDGE = 6.0  # px kept free at both ends for a mark


@dataclass(frozen=True)
class _Axis:
    """Maps a value to a place on a strip."""

    lower: float | None
    upper: float | None
    width: float

    def at(self, value: float) -> float:
        """Pixels from the left, held within the strip."""
        inner = self.width - 2 * EDGE
        place = EDGE + inner * self._share(value)
        return min(max(place, EDGE), self.width - EDGE)

    def _share(self, value: float) -> float:
        if self.lower is not None and self.upper is not None:
            span = self.upper - self.lower
            return LOW + (HIGH - LOW) * ((value - self.lower) / span if span else 0.0)
        limit = self.upper if self.upper is not None else self.lower or 0.0
        scale = abs(limit) or 1.0
        start = HIGH if self.upper is not None else LOW
        return start + HIGH * (value - limit) / scale


def strip(row: Row, label: str, *, width: float = 148.0, height: float = 20.0) -> Markup:
    """A row's value in its window; nothing where it has no limits.

    `label` says the same in words for those who cannot see it.
    """
    if row.lower is None and row.upper is None:
        return Markup("")
    axis = _Axis(row.lower, row.upper, width)
    left = EDGE if row.lower is None else axis.at(row.lower)
    right = width - EDGE if row.upper is None else axis.at(row.upper)
    middle = height / 2
    parts = [
        f'<path d="M{EDGE:.1f} {middle:.1f}H{width - EDGE:.1f}" class="st-base"/>',
        f'<rect x="{left:.1f}" y="{middle - 4:.1f}" width="{right - left:.1f}" height="8" '
        'class="st-win"/>',
    ]
    parts += [
        f'<path d="M{x:.1f} {middle - 7:.1f}V{middle + 7:.1f}" class="st-lim"/>'
        for x, limit in ((left, row.lower), (right, row.upper))
        if limit is not None
    ]
    if row.estimate is not None:
        parts += _value(row, axis, middle)
    return Markup(
        f'<svg class="strip" viewBox="0 0 {width:g} {height:g}" width="{width:g}" '
        f'height="{height:g}" role="img" aria-label="{escape(label)}">{"".join(parts)}</svg>'
    )  # numbers and constants; the label is escaped


def _value(row: Row, axis: _Axis, middle: float) -> list[str]:
    estimate, state = row.estimate or 0.0, state_of(row)
    expanded = COVERAGE * (row.standard_uncertainty or 0.0)
    x = axis.at(estimate)
    whisker = f"M{axis.at(estimate - expanded):.1f} {middle:.1f}H{axis.at(estimate + expanded):.1f}"
    return [f'<path d="{whisker}" class="st-u s-{state}"/>', dot(x, middle, state)]


def dot(x: float, y: float, state: State) -> str:
    """The value in the shape of its state."""
    if state in ("hi", "lo", "no"):
        return f'<path d="M{x:.1f} {y - 6:.1f}l6 6-6 6-6-6z" class="st-dot s-{state}"/>'
    if state == "un":
        return (
            f'<circle cx="{x:.1f}" cy="{y:.1f}" r="4.6" class="st-half"/>'
            f'<path d="M{x:.1f} {y - 5.4:.1f}a5.4 5.4 0 0 0 0 10.8z" class="st-dot s-un"/>'
        )
    if state == "nm":
        return f'<circle cx="{x:.1f}" cy="{y:.1f}" r="4.6" class="st-exp"/>'
    return f'<circle cx="{x:.1f}" cy="{y:.1f}" r="5" class="st-dot s-ok"/>'
