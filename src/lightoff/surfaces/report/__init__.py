"""Paper: one visit as a page made for print, by the same code as the screen."""

from lightoff.surfaces.report.page import page

__all__ = ["page"]
