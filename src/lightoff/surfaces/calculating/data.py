"""A sheet as data for programs: SI values with their units, steps and notes."""

from typing import Any

from lightoff.surfaces.calculating.sheet import Sheet, StepShown


def as_data(sheet: Sheet) -> dict[str, Any]:
    """The answer as plain dicts and lists, fit for JSON."""
    return {
        "calculation": sheet.name,
        "title": sheet.title,
        "inputs": {
            each.name: {"value": each.si if each.number else None, "unit": each.si_unit,
                        "typed": each.typed, "assumed": each.assumed}
            for each in sheet.inputs
        },
        "results": {each.name: {"value": each.si, "unit": each.si_unit} for each in sheet.results},
        "notes": [
            {"id": note.message, "sentence": note.sentence, "advice": note.advice}
            for note in sheet.notes
        ],
        "steps": [_step(step) for step in sheet.steps],
    }  # fmt: skip


def _step(step: StepShown) -> dict[str, Any]:
    return {
        "formula": step.formula,
        "sentence": step.sentence,
        "equation": step.equation,
        "numbers": step.numbers,
        "solved": step.solved,
        "terms": [
            {"symbol": term.symbol, "words": term.words, "value": term.si, "unit": term.si_unit,
             "in_range": term.in_range}
            for term in step.terms
        ],
        "value": step.si,
        "unit": step.si_unit,
        "source": step.source,
    }  # fmt: skip
