"""Taking an entry back: the small form beside what should not be there."""

from collections.abc import Callable
from dataclasses import dataclass

from lightoff.record import Entry
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.fields import Field, Typed, field_of


@dataclass(frozen=True)
class Withdrawing:
    """Where the form is sent, and the reason it asks for."""

    action: str
    event_id: str
    reason: Field
    faults: tuple[str, ...]
    opened: bool


@dataclass(frozen=True)
class Forms:
    """What every form of a page needs: what was sent before, and ids for what will be."""

    typed: Typed
    new_id: Callable[[], str]


def withdrawing(bench: Bench, entry: Entry | None, forms: Forms) -> Withdrawing | None:
    """The form of an entry; None where the record does not know it or the visit is closed."""
    if entry is None or bench.closed:
        return None
    mine = forms.typed.of(f"withdraw-{entry.id}")
    return Withdrawing(
        action=f"{bench.base}/entry/{entry.id}/withdraw",
        event_id=forms.new_id(),
        reason=field_of("reason", bench.speech, mine),
        faults=mine.besides("reason"),
        opened=bool(mine.faults),
    )
