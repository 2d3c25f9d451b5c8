"""A smooth curve through declared points that does not overshoot between them.

Piecewise cubic after Fritsch and Butland (SIAM J. Sci. Stat. Comput. 5, 1984; known as PCHIP): it
goes through every point, is monotone wherever the points are, and its slope is continuous. A fitted
polynomial would miss the plate's own points and could grow a peak or a dip that nobody declared.
The ordinates may be floats or arrays.
"""

from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import NamedTuple

from lightoff.formula import Number
from lightoff.formula.dual import sloped
from lightoff.formula.elementary import where
from lightoff.formula.figure import Figure, carried

Points = Sequence[tuple[Number, Number]]


class Piece(NamedTuple):
    """A cubic in the distance from where it starts."""

    start: Number
    a: Number
    b: Number = 0.0
    c: Number = 0.0
    d: Number = 0.0

    def value(self, x: Number) -> Number:
        """Its height at x."""
        t = x - self.start
        return self.a + t * (self.b + t * (self.c + t * self.d))

    def slope(self, x: Number) -> Number:
        """Its slope at x."""
        t = x - self.start
        return self.b + t * (2 * self.c + t * (3 * self.d))


# level up to the first point, a cubic between two points, a straight line from the last one on
Curve = tuple[Piece, ...]


def curve_through(points: Points, end_slope: Number) -> Curve:
    """The curve through two points or more, in order of x; `end_slope` is that beyond the last."""
    (first, height), (last, end) = points[0], points[-1]
    return (Piece(first, height), *_cubics(points), Piece(last, end, end_slope))


def slopes_of(points: Points) -> tuple[Number, ...]:
    """The curve's slope at each of its points."""
    widths, rises = _chords(points)
    if len(points) == 2:
        return (rises[0], rises[0])
    inner = (_weighted(*each) for each in zip(pairwise(widths), pairwise(rises), strict=True))
    left = _end(widths[0], widths[1], rises[0], rises[1])
    right = _end(widths[-1], widths[-2], rises[-1], rises[-2])
    return (left, *inner, right)


def read(curve: Curve, x: Number) -> Number:
    """The height of the curve at x."""
    if isinstance(x, Figure):
        return carried("table", lambda value: read(curve, value), x)
    return _read(x, curve)


@sloped(lambda x, curve: _piece(curve, x).slope(x))
def _read(x: Number, curve: Curve) -> Number:
    return _piece(curve, x).value(x)


def _piece(curve: Curve, x: Number) -> Piece:
    return piece_at(curve, (x > piece.start for piece in curve[1:]))


def piece_at(curve: Curve, reached: Iterable[Number]) -> Piece:
    """The piece that starts at the last point that is `reached`: one answer for each point."""
    found = curve[0]
    for there, piece in zip(reached, curve[1:], strict=True):
        found = Piece(*(where(there, new, old) for new, old in zip(piece, found, strict=True)))
    return found


def _chords(points: Points) -> tuple[list[Number], list[Number]]:
    widths = [b[0] - a[0] for a, b in pairwise(points)]
    return widths, [(b[1] - a[1]) / h for (a, b), h in zip(pairwise(points), widths, strict=True)]


def _cubics(points: Points) -> Iterable[Piece]:
    slopes = pairwise(slopes_of(points))
    for (x, y), (m, n), h, rise in zip(points[:-1], slopes, *_chords(points), strict=True):
        yield Piece(x, y, m, (3 * rise - 2 * m - n) / h, (m + n - 2 * rise) / h**2)


def _weighted(widths: tuple[Number, Number], rises: tuple[Number, Number]) -> Number:
    """Harmonic mean of the slopes on both sides; none where the points turn."""
    (h, k), (left, right) = widths, rises
    same = left * right > 0
    w_left, w_right = h + 2 * k, 2 * h + k
    both = w_left * right + w_right * left
    return where(same, (w_left + w_right) * left * right / where(same, both, 1.0), 0.0)


def _end(h: Number, k: Number, rise: Number, following: Number) -> Number:
    """Slope at an end from the parabola through three points, kept from overshooting."""
    slope = ((2 * h + k) * rise - h * following) / (h + k)
    steepest = where(abs(slope) > 3 * abs(rise), 3 * rise, slope)
    return where(slope * rise > 0, steepest, 0.0)
