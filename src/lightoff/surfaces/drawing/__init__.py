"""Small pictures in SVG, by the same code on the screen and on paper."""

from lightoff.surfaces.drawing.marks import MARKS, mark, state_of, worst
from lightoff.surfaces.drawing.ruler import Measured, Ruler, ruler
from lightoff.surfaces.drawing.strip import strip

__all__ = ["MARKS", "Measured", "Ruler", "mark", "ruler", "state_of", "strip", "worst"]
