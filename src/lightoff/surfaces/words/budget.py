"""What an uncertainty is made of, in words."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lightoff.judgement.answer import BudgetLine
from lightoff.machine import Visit
from lightoff.surfaces.words.catalogue import has
from lightoff.surfaces.words.speech import Speech

_MOST = 8  # parts listed; the rest are small, and told as one
_READING = re.compile(r"visit\.\d+\.reading\.\d+")


@dataclass(frozen=True)
class PartShown:
    """One part: its cause, what it belongs to, and how large it is [SI], in words too."""

    cause: str
    of: str
    size: float
    text: str


def parts_shown(
    parts: Sequence[BudgetLine], kind: str, visit: Visit | None, speech: Speech
) -> Iterator[PartShown]:
    """The parts, the largest first, in the kind of what they make uncertain."""
    for part in parts[:_MOST]:
        of = _belongs_to(part.of, visit, speech)
        yield _part(
            speech.word(f"budget:{part.cause}"), of, part.standard_uncertainty, kind, speech
        )
    rest = parts[_MOST:]
    if rest:
        size = sum(part.standard_uncertainty**2 for part in rest) ** 0.5
        yield _part(speech.word("budget:rest", count=len(rest)), "", size, kind, speech)


def _part(cause: str, of: str, size: float, kind: str, speech: Speech) -> PartShown:
    return PartShown(cause, of, size, speech.difference(size, kind, expanded=size))


def _belongs_to(of: str, visit: Visit | None, speech: Speech) -> str:
    """A reading, an unknown of the machine, an instrument."""
    if visit is not None and _READING.fullmatch(of):
        return _reading(of, visit, speech)
    unknown, _, run = of.partition(" ")
    name = speech.unknown(unknown)
    if name:
        in_run = speech.run(run) if run else ""
        return speech.word("budget:of-run", name=name, run=in_run) if run else name
    return speech.word(f"budget-of:{of}") if has(f"budget-of:{of}") else of


def _reading(place: str, visit: Visit, speech: Speech) -> str:
    """A reading by its point, and when it was taken."""
    reading = next((r for r in visit.readings if r.place == place), None)
    if reading is None:
        return ""
    name = speech.point(reading.point)
    if reading.at is None:
        return name
    return speech.word("budget:reading", name=name, time=f"{reading.at:%H:%M}")
