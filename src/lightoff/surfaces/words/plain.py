"""The answer as plain text: readable without colour, at 80 columns."""

import textwrap
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from lightoff.inference.conformity import Decision
from lightoff.inference.estimate import COVERAGE
from lightoff.judgement import Assessment, Row
from lightoff.surfaces.words.groups import by_group
from lightoff.surfaces.words.speech import Speech
from lightoff.surfaces.words.together import together

WIDTH = 80
NAME, RUN, VALUE, UNIT = 38, 8, 17, 9
INDENT = " " * 7

# a shape for each decision, so that a row is told without colour
SIGNS: dict[Decision, str] = {
    "conforms": "  ok",
    "does not conform": "[NO]",
    "undecided": " (?)",
    "not measured": "  --",
    "deferred": "(--)",
}

Style = Literal["verdict", "counts", "group", "row", "note"]


@dataclass(frozen=True)
class Line:
    """One line of text; `style` and `decision` tell a terminal how it may be coloured."""

    text: str
    style: Style
    decision: Decision | None = None


def as_text(answer: Assessment, speech: Speech, *, everything: bool) -> str:
    """Verdict, counts, what is open (or everything), and the remarks."""
    return "\n".join(line.text for line in as_lines(answer, speech, everything=everything))


def as_lines(answer: Assessment, speech: Speech, *, everything: bool) -> Iterator[Line]:
    """The same, line by line."""
    verdict = speech.word(f"verdict:{answer.verdict}")
    head = speech.word("text:head", unit=answer.unit, visit=answer.visit, verdict=verdict)
    yield Line(head, "verdict")
    yield Line(counts(answer, speech), "counts")
    if said := together(answer, speech):
        yield from _note(said, "")
    for group, rows in by_group(answer.targets):
        shown = [row for row in rows if everything or is_open(row)]
        if shown:
            yield Line("", "note")
            yield Line(group.title(speech), "group")
        for row in shown:
            yield from row_lines(row, speech, furnace=not group.furnace)
    if answer.remarks:
        yield Line("", "note")
        yield Line(speech.word("text:remarks"), "group")
    for remark in answer.remarks:
        yield from _note(f"{remark.place}: {speech.say(remark)}", "  ")


def counts(answer: Assessment, speech: Speech) -> str:
    """How many rows stand where."""
    decisions = [row.decision for row in answer.targets]
    told = [
        f"{decisions.count(decision)} {speech.word(f'count:{decision}')}"
        for decision in SIGNS
        if decision in decisions
    ]
    stale = sum(row.stale for row in answer.targets)
    return ", ".join(told + ([f"{stale} {speech.word('count:stale')}"] if stale else []))


def is_open(row: Row) -> bool:
    """Whether a row asks for anything."""
    return row.decision != "conforms" or row.stale


def row_lines(row: Row, speech: Speech, *, furnace: bool = True) -> Iterator[Line]:
    """One row; `furnace` is whether its name says which."""
    name = speech.row(row, furnace=furnace)
    number, unit = _value(row, speech)
    head = f"{SIGNS[row.decision]}  {name:<{NAME}} {row.run or '':<{RUN}}"
    yield Line(f"{head} {number:>{VALUE}} {unit:<{UNIT}}".rstrip(), "row", row.decision)
    read = speech.read(row, apart=1.0)
    if not is_open(row):
        if read:
            yield from _note(read, INDENT)
        return
    window = speech.window(row)
    said = [speech.word("mark:stale")] if row.stale else []
    said += [read] if read else []
    said += [speech.word("text:limits", window=window)] if window else []
    yield from _note("; ".join([*said, speech.say(row.why, row)]), INDENT)


def _value(row: Row, speech: Speech) -> tuple[str, str]:
    if row.estimate is None or row.kind is None:
        return "", ""
    expanded = COVERAGE * (row.standard_uncertainty or 0.0)
    shown = speech.parts(row.estimate, row.kind, expanded=expanded)
    return f"{shown.number} ± {speech.spread(expanded, row.kind)}", shown.unit


def _note(text: str, indent: str) -> Iterator[Line]:
    for line in textwrap.wrap(text, WIDTH, initial_indent=indent, subsequent_indent=indent):
        yield Line(line, "note")
