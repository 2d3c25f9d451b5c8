"""What a calculation asks for, and an example to run: the help of `lightoff calc`."""

import shlex
from collections.abc import Iterable, Iterator, Mapping

from lightoff.calculations import Calculation
from lightoff.surfaces.calculating import blank, example
from lightoff.surfaces.calculating.plain import hanging
from lightoff.surfaces.calculating.sheet import InputShown
from lightoff.surfaces.cli.options import as_option
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.plain import WIDTH, Line

OPTIONS = ("units", "working", "json", "table", "pdf")


def list_lines(calculations: Iterable[Calculation], speech: Speech) -> Iterator[Line]:
    """Every calculation by name, with its title."""
    known = list(calculations)
    width = max(len(each.name) for each in known) + 2
    yield Line(speech.word("sheet:list"), "verdict")
    yield Line("", "note")
    for each in known:
        yield from hanging(speech.word(f"calc:{each.name}"), f"  {each.name:<{width}}")
    yield Line("", "note")
    yield from hanging(speech.word("sheet:list:help"), "")


def help_lines(calculation: Calculation, speech: Speech) -> Iterator[Line]:
    """One calculation: what it answers, its inputs, its options, an example."""
    sheet = blank(calculation, speech)
    yield Line(f"lightoff calc {sheet.name}: {sheet.title}", "verdict")
    yield from hanging(sheet.about, "")
    yield from _section(speech.word("sheet:inputs"))
    width = max(len(as_option(each.name)) for each in sheet.inputs) + 2
    for each in sheet.inputs:
        yield from _input(each, width, speech)
    yield from _section(speech.word("sheet:options"))
    for name in OPTIONS:
        text = speech.word(f"sheet:option:{name}")
        option, _, told = text.partition(": ")
        yield from hanging(told, f"  {option:<{width}}")
    if typed := example(calculation.name):
        yield from _section(speech.word("sheet:example"))
        yield from (Line(line, "row") for line in command_lines(sheet.name, typed))


def _section(title: str) -> Iterator[Line]:
    yield Line("", "note")
    yield Line(title, "group")


def _input(each: InputShown, width: int, speech: Speech) -> Iterator[Line]:
    optional = not each.required and not each.default
    label = f"{each.label} {speech.word('sheet:left-out')}" if optional else each.label
    yield from hanging(label, f"  {as_option(each.name):<{width}}")
    yield from hanging("; ".join(_ways(each, speech)), " " * (width + 2))


def _ways(each: InputShown, speech: Speech) -> Iterator[str]:
    """How an input is written, and what stands for it where it is left out."""
    if each.choices:
        yield speech.word("sheet:one-of", words=" | ".join(choice.word for choice in each.choices))
    else:
        yield speech.word("sheet:several" if each.many else "sheet:written", ways=each.hint)
    if each.default:
        yield speech.word("sheet:default", value=each.default)


def command_lines(name: str, typed: Mapping[str, str]) -> list[str]:
    """A command to copy, broken where a shell lets it go on."""
    parts = [f"{as_option(each)} {_quoted(text)}" for each, text in typed.items()]
    lines = [f"  lightoff calc {name}"]
    for part in parts:
        if len(lines[-1]) + len(part) + 3 > WIDTH:
            lines[-1] += " \\"
            lines.append("     ")
        lines[-1] += f" {part}"
    return lines


def _quoted(text: str) -> str:
    return (
        text if shlex.quote(text) == text else f'"{text}"' if '"' not in text else shlex.quote(text)
    )
