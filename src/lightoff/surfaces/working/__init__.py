"""A working, rendered: one expression tree, set as text, as MathML and as Typst's mathematics."""

from lightoff.surfaces.working.mathml import mathml, mathml_letter
from lightoff.surfaces.working.step import Standing, has_numbers, in_words, stands_on
from lightoff.surfaces.working.text import (
    as_sentence,
    equation,
    equation_lines,
    numbers,
    si_text,
    value,
)
from lightoff.surfaces.working.typst import typst, typst_letter
from lightoff.surfaces.working.unit import said, unit_text

__all__ = [
    "Standing",
    "as_sentence",
    "equation",
    "equation_lines",
    "has_numbers",
    "in_words",
    "mathml",
    "mathml_letter",
    "numbers",
    "said",
    "si_text",
    "stands_on",
    "typst",
    "typst_letter",
    "unit_text",
    "value",
]
