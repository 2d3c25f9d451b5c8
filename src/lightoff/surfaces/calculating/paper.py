"""A sheet on paper: the answer, what it was worked out from, and the working, set by Typst.

The text goes in as data and is never read as markup; only the equations are, and those are made of
quoted names and digits. The same sheet gives the same bytes.
"""

import json
from importlib import resources
from typing import Any

import typst

from lightoff import __version__
from lightoff.surfaces.calculating.sheet import InputShown, Sheet, StepShown, TermShown
from lightoff.surfaces.words import Speech
from lightoff.surfaces.working import as_sentence, equation_lines

PAPER = {"us": "us-letter", "si": "a4"}
LINE = 84  # characters of an equation too long to be set, told as text
WORDS = ("from", "working", "assumed", "source", "solved")


def paper(sheet: Sheet, speech: Speech) -> bytes:
    """The sheet as PDF, letter in US units and A4 in SI."""
    template = (resources.files(__package__) / "paper.typ").read_bytes()
    printed = typst.compile(
        template,
        format="pdf",
        sys_inputs={"sheet": json.dumps(_data(sheet, speech), ensure_ascii=False)},
        ignore_system_fonts=True,
        pdf_standards=["ua-1"],
    )
    assert isinstance(printed, bytes)  # one file, unless pages are asked for one by one
    return printed


def _data(sheet: Sheet, speech: Speech) -> dict[str, Any]:
    return {
        "paper": PAPER[speech.system],
        "version": __version__,
        "title": sheet.title,
        "about": sheet.about,
        "results": [[each.label, each.number, each.unit] for each in sheet.results],
        "inputs": [_input(each) for each in sheet.inputs if each.number],
        "notes": [[note.sentence, note.advice] for note in sheet.notes],
        "steps": [_step(step, speech) for step in sheet.steps],
        "words": {word: speech.word(f"sheet:{word}") for word in WORDS},
    }


def _input(each: InputShown) -> dict[str, Any]:
    return {"label": each.label, "number": each.number, "unit": each.unit, "assumed": each.assumed}


def _step(step: StepShown, speech: Speech) -> dict[str, Any]:
    again = step.like > 0
    return {
        "sentence": speech.word("sheet:again", place=step.like) if again else step.sentence,
        "equation": step.typst,
        "lines": list(equation_lines(step.step, LINE, again=again or step.in_words)),
        "alt": as_sentence(step.step),
        "words": step.equation if step.in_words and not again else "",
        "solved": step.solved,
        "again": again,
        "terms": [] if again else [_term(term) for term in step.terms],
        "source": "" if again else speech.word("sheet:source", source=step.source),
    }


def _term(term: TermShown) -> dict[str, Any]:
    return {
        "letter": term.typst,
        "alt": term.symbol,
        "words": term.words,
        "value": term.value,
        "unit": term.unit,
        "mark": term.mark,
        "strong": not term.in_range,
    }
