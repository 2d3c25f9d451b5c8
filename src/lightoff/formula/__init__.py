"""What a formula is: arithmetic on floats or arrays that can also be asked to show its working."""

from lightoff.formula.declared import formula, is_formula
from lightoff.formula.description import Description, Quantity, describe
from lightoff.formula.elementary import Number
from lightoff.formula.working import Step, Term, Working, working

__all__ = [
    "Description",
    "Number",
    "Quantity",
    "Step",
    "Term",
    "Working",
    "describe",
    "formula",
    "is_formula",
    "working",
]
