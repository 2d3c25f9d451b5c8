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
from lightoff.calculations.heat import AIRFLOW_FROM_RISE

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

CALCULATIONS: dict[str, Calculation] = {each.name: each for each in (CLOCKING, AIRFLOW_FROM_RISE)}
