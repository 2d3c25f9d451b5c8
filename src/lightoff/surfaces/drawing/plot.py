"""Two axes with round numbers, and where a value stands between them."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from lightoff.surfaces.drawing.label import Label, width_of
from lightoff.surfaces.drawing.ruler import ticks

NARROW = 500.0  # px: below it a picture has fewer ticks
TOP, FOOT, EDGE = 28.0, 42.0, 14.0  # px free above, below and at the right of the axes


@dataclass(frozen=True)
class Axis:
    """From `low` to `high`, in the unit shown; `name` says what and in which unit.

    A `bare` one has no figures.
    """

    low: float
    high: float
    name: str
    bare: bool = False


@dataclass(frozen=True)
class Plot:
    """A frame of `width` by `height` px, with room for what stands above it and at its right."""

    x: Axis
    y: Axis
    width: float
    height: float
    head: float = 0.0
    gutter: float = 0.0

    @cached_property
    def rungs(self) -> list[tuple[float, str]]:
        return ticks(self.y.low, self.y.high, 5)

    @cached_property
    def left(self) -> float:
        return max(width_of(text) for _, text in self.rungs) + 10

    @property
    def right(self) -> float:
        return self.width - EDGE - self.gutter

    @property
    def top(self) -> float:
        return TOP + self.head

    @property
    def floor(self) -> float:
        return self.height - FOOT

    def at(self, x: float, y: float) -> tuple[float, float]:
        """Where a pair of values stands [px]."""
        across = (x - self.x.low) / (self.x.high - self.x.low)
        up = (y - self.y.low) / (self.y.high - self.y.low)
        return (
            self.left + (self.right - self.left) * across,
            self.floor + (self.top - self.floor) * up,
        )

    def axes(self) -> Iterator[str]:
        """Grid, ticks and names."""
        for value, text in self.rungs:
            _, y = self.at(self.x.low, value)
            yield f'<path d="M{self.left:.1f} {y:.1f}H{self.right:.1f}" class="grid"/>'
            yield Label(self.left - 8, y + 4.5, text, "end").svg()
        yield f'<path d="M{self.left:.1f} {self.floor:.1f}H{self.right:.1f}" class="axis"/>'
        yield from self._feet()
        yield Label(0, self.top - 15, self.y.name).svg()
        yield Label(self.right, self.height - 4, self.x.name, "end").svg()

    def _feet(self) -> Iterator[str]:
        before = -1e9
        most = 8 if self.width > NARROW else 4
        for value, text in () if self.x.bare else ticks(self.x.low, self.x.high, most):
            x, _ = self.at(value, self.y.low)
            label = Label(min(x, self.width - width_of(text) / 2), self.floor + 20, text, "middle")
            yield f'<path d="M{x:.1f} {self.floor:.1f}v5" class="axis"/>'
            if label.left > before + 6:
                yield label.svg()
                before = label.right
