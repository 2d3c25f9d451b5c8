"""Calculations on their way to a reader: what was typed read, the answer put on a sheet."""

from lightoff.surfaces.calculating.data import as_data
from lightoff.surfaces.calculating.examples import example
from lightoff.surfaces.calculating.faults import Fault, FaultsError
from lightoff.surfaces.calculating.inputs import Typed, read
from lightoff.surfaces.calculating.sheet import Sheet
from lightoff.surfaces.calculating.shown import blank, filled, steps_shown
from lightoff.surfaces.calculating.table import answered

__all__ = [
    "Fault",
    "FaultsError",
    "Sheet",
    "Typed",
    "answered",
    "as_data",
    "blank",
    "example",
    "filled",
    "read",
    "steps_shown",
]
