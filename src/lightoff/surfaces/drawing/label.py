"""A label in a picture: where it stands, how much room it takes, and how several share a line.

Widths are those of the pages' own font at its bolder weight, a little generous, so that what fits
here fits on the screen as well.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import escape

SIZE = 13.0  # px, the size of every label in a picture
ASCENT, DESCENT = 0.74, 0.24  # of the size: figures and capitals above, tails below the baseline

# widths in em, from the font's own metrics
_NARROW = {0.2: " \u00a0\u2009", 0.29: "!'.,:;ijl|Iı‘’·", 0.38: "-()[]{}frt/\\°²³₂¹*J"}
_BROAD = {0.68: "CDGHNOQUw&↑↓→", 0.86: "mMW%@"}
_EM = {sign: em for em, signs in (_NARROW | _BROAD).items() for sign in signs}
_OTHER = 0.57


def width_of(text: str) -> float:
    """How wide a label is [px]."""
    return SIZE * sum(_EM.get(sign, _OTHER) for sign in text)


@dataclass(frozen=True)
class Label:
    """One line of text: its anchor's place, its baseline, and its style."""

    x: float
    y: float
    text: str
    anchor: str = "start"
    style: str = "n"

    @property
    def left(self) -> float:
        share = {"start": 0.0, "middle": 0.5, "end": 1.0}[self.anchor]
        return self.x - share * width_of(self.text)

    @property
    def right(self) -> float:
        return self.left + width_of(self.text)

    def svg(self) -> str:
        """As markup."""
        place = f'x="{self.x:.1f}" y="{self.y:.1f}" text-anchor="{self.anchor}"'
        return f'<text {place} class="{self.style}">{escape(self.text)}</text>'


def spread(places: Sequence[float], pitch: float, low: float, high: float) -> list[float]:
    """The same places in the same order, moved no further than it takes to stand `pitch` apart.

    Those that crowd are centred on where they would stand; all stay from `low` to `high` as far as
    there is room.

    >>> spread((10, 12, 50), 10, 0, 60)
    [6.0, 16.0, 50.0]
    """
    groups: list[list[float]] = []  # [sum of the places of its first, how many]
    for place in places:
        groups.append([place, 1.0])
        while len(groups) > 1 and _first(groups[-2]) + groups[-2][1] * pitch > _first(groups[-1]):
            total, count = groups.pop()
            groups[-1] = [groups[-1][0] + total - count * groups[-1][1] * pitch,
                          groups[-1][1] + count]  # fmt: skip
    spaced = [_first(g) + i * pitch for g in groups for i in range(int(g[1]))]
    spaced = _from(spaced, pitch, low)
    return [high + low - x for x in _from([high + low - x for x in spaced[::-1]], pitch, low)][::-1]


def _first(group: Sequence[float]) -> float:
    return group[0] / group[1]


def _from(places: Sequence[float], pitch: float, low: float) -> list[float]:
    """Pushed up so that the first is at least `low`, and each at least `pitch` above the last."""
    pushed: list[float] = []
    for place in places:
        pushed.append(max(place, pushed[-1] + pitch if pushed else low))
    return pushed
