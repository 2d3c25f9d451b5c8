"""The sums a technician reaches for, each alone, each with its working."""

from lightoff.calculations.calculation import (
    Answer,
    Calculation,
    CannotCalculateError,
    Input,
    Note,
    Output,
    calculate,
)
from lightoff.calculations.clocking import CLOCKING

__all__ = [
    "CALCULATIONS",
    "Answer",
    "Calculation",
    "CannotCalculateError",
    "Input",
    "Note",
    "Output",
    "calculate",
]

CALCULATIONS: dict[str, Calculation] = {each.name: each for each in (CLOCKING,)}
