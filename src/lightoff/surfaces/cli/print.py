"""The answer on a terminal: the plain text, with colour where there is a terminal to show it."""

from collections.abc import Iterable

from rich.console import Console
from rich.text import Text

from lightoff.inference.conformity import Decision
from lightoff.judgement import Assessment
from lightoff.quantity import System
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.plain import WIDTH, Line, as_lines

_DECISION: dict[Decision, str] = {
    "does not conform": "bold red",
    "undecided": "yellow",
    "conforms": "green",
}
_STYLE = {"verdict": "bold", "group": "bold"}


def print_answer(answer: Assessment, units: System, *, everything: bool) -> None:
    """Print the answer to stdout."""
    print_lines(as_lines(answer, Speech(units), everything=everything))


def print_lines(lines: Iterable[Line]) -> None:
    """Print lines to stdout."""
    console = Console(highlight=False, markup=False, emoji=False, soft_wrap=True)
    console.width = max(console.width, WIDTH)
    for line in lines:
        console.print(_styled(line))


def _styled(line: Line) -> Text:
    if line.decision is not None:
        text = Text(line.text)
        text.stylize(_DECISION.get(line.decision, "dim"), 0, 4)
        return text
    return Text(line.text, style=_STYLE.get(line.style, ""))
