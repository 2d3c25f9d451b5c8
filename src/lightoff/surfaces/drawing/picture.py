"""The sheet a picture is drawn on: its size, and what it says to those who cannot see it."""

from collections.abc import Iterable
from dataclasses import dataclass

from markupsafe import Markup, escape


@dataclass(frozen=True)
class Said:
    """A picture in words: what it is, and what it shows."""

    title: str
    text: str


def picture(parts: Iterable[str], said: Said, *, width: float, height: float) -> Markup:
    """One drawing as markup; its parts are numbers, constants and escaped text."""
    box = f'viewBox="0 0 {width:g} {height:g}" width="{width:g}" height="{height:g}"'
    words = f"<title>{escape(said.title)}</title><desc>{escape(said.text)}</desc>"
    return Markup(
        f'<svg class="chart" {box} role="img" aria-label="{escape(f"{said.title}: {said.text}")}">'
        f"{words}{''.join(parts)}</svg>"
    )


def path(points: Iterable[tuple[float, float]], style: str) -> str:
    """A line through points [px]."""
    line = "L".join(f"{x:.1f} {y:.1f}" for x, y in points)
    return f'<path d="M{line}" class="{style}"/>'


def dot(place: tuple[float, float], style: str, size: float = 5.0) -> str:
    """A point: full where it is or will be, open where it was or would be."""
    return f'<circle cx="{place[0]:.1f}" cy="{place[1]:.1f}" r="{size:.1f}" class="dot {style}"/>'
