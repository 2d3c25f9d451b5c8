"""What an uncertainty is made of: each part in words, and how large it is beside the others."""

from dataclasses import dataclass

from lightoff.judgement import Row
from lightoff.judgement.answer import BudgetLine
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.words.budget import MOST, belongs_to


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
    whole = row.standard_uncertainty or 0.0
    if not parts or whole <= 0 or row.kind is None:
        return ()
    shown, rest = parts[:MOST], parts[MOST:]
    bars = [_bar(bench, line, row.kind, whole) for line in shown]
    if rest:
        size = sum(line.standard_uncertainty**2 for line in rest) ** 0.5
        of = bench.speech.word("budget:rest", count=len(rest))
        bars.append(Bar(of, "", _size(bench, size, row.kind), _percent(size, whole)))
    word = bench.speech.word
    total = Bar(
        word("budget:together"), word("budget:root"), _size(bench, whole, row.kind), 100, True
    )
    return (*bars, total)


def _bar(bench: Bench, line: BudgetLine, kind: str, whole: float) -> Bar:
    size = line.standard_uncertainty
    return Bar(
        cause=bench.speech.word(f"budget:{line.cause}"),
        of=belongs_to(line.of, bench.visit, bench.speech),
        size=_size(bench, size, kind),
        percent=_percent(size, whole),
    )


def _percent(size: float, whole: float) -> float:
    return round(min(100.0, 100.0 * size / whole), 1)


def _size(bench: Bench, size: float, kind: str) -> str:
    return bench.speech.difference(size, kind, expanded=size)
