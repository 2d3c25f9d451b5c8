"""Small pictures in SVG, by the same code on the screen and on paper."""

from lightoff.surfaces.drawing.marks import MARKS, mark, state_of, worst
from lightoff.surfaces.drawing.strip import strip

__all__ = ["MARKS", "mark", "state_of", "strip", "worst"]
