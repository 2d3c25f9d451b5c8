"""What an uncertainty is made of: each part in words, and how large it is beside the others."""

from collections.abc import Sequence
from dataclasses import dataclass

from lightoff.judgement import Row
from lightoff.judgement.answer import BudgetLine
from lightoff.machine import Visit
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.budget import parts_shown


@dataclass(frozen=True)
class Bar:
    """One part: its cause, what it belongs to, its size in words and in percent of the whole."""

    cause: str
    of: str
    size: str
    percent: float
    total: bool = False


def budget(bench: Bench, row: Row) -> tuple[Bar, ...]:
    """The parts of a row's standard uncertainty, the largest first, and their root of squares."""
    parts = next((each.budget for each in bench.whole.targets if each.key == row.key), ())
    whole, kind = row.standard_uncertainty or 0.0, row.kind or "number"
    return bars(parts, whole, kind, bench.visit, bench.speech)


def bars(
    parts: Sequence[BudgetLine], whole: float, kind: str, visit: Visit | None, speech: Speech
) -> tuple[Bar, ...]:
    """The parts of a standard uncertainty of a quantity of that kind."""
    if not parts or whole <= 0:
        return ()
    word, size = speech.word, speech.difference(whole, kind, expanded=whole)
    shown = (
        Bar(each.cause, each.of, each.text, round(min(100.0, 100.0 * each.size / whole), 1))
        for each in parts_shown(parts, kind, visit, speech)
    )
    return (*shown, Bar(word("budget:together"), word("budget:root"), size, 100, True))
