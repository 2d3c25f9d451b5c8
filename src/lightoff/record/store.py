"""What a store promises: events are added, in order, and never changed or lost.

(stream, expected version) is the lock: who writes says which version they have seen.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import Protocol

from lightoff.record.chain import Stored
from lightoff.record.events import DECLARED, OPENED, REDECLARED, Event, RecordError


class StoreError(RecordError):
    """The store cannot be used: not a record, read-only, full, locked."""


class TakenError(RecordError):
    """An event id that stands already for another event."""

    def __init__(self, event_id: str) -> None:
        super().__init__(f"the event id {event_id} stands for something else already")


class Clash(RecordError):  # noqa: N818 - an outcome a person settles, not a failure
    """Somebody else wrote first; `events` are those the writer had not seen."""

    def __init__(self, expected: int, events: tuple[Stored, ...]) -> None:
        self.expected = expected
        self.events = events
        since = f"{len(events)} since" if events else "never reached"
        super().__init__(
            f"this record is not at version {expected} ({since}): read it again before writing"
        )


@dataclass(frozen=True)
class UnitSummary:
    """One line of the list of units."""

    stream: str
    tag: str
    serves: str | None
    visits: int
    at: datetime
    version: int


class Store(Protocol):
    """Where events are kept: one stream for each unit."""

    def append(
        self, stream: str, expected_version: int, events: Sequence[Event]
    ) -> tuple[Stored, ...]:
        """Add all of `events` or none; when this returns, they are kept.

        The same events again are harmless: what is stored already is the answer. An id that
        stands for another event raises `TakenError`, another version than the expected `Clash`.
        """
        ...

    def read(self, stream: str, after: int = 0) -> tuple[Stored, ...]:
        """The events of a stream beyond version `after`; none where there is no such stream."""
        ...

    def streams(self) -> tuple[UnitSummary, ...]:
        """Every stream with its unit, by tag; cheap, whatever the length of the streams."""
        ...


def summary(before: UnitSummary | None, stored: Stored) -> UnitSummary:
    """The unit's line after one more event."""
    event = stored.event
    if before is None:
        before = UnitSummary(stored.stream, "", None, 0, event.at, 0)
    if event.name in (DECLARED, REDECLARED):
        unit = event.body["job"]["unit"]
        before = replace(before, tag=unit["tag"], serves=unit.get("serves"))
    visits = before.visits + (event.name == OPENED)
    return replace(before, visits=visits, at=event.at, version=stored.version)


def kept_before(
    stream: str, events: Sequence[Event], known: Sequence[Stored]
) -> tuple[Stored, ...]:
    """What a retry stored the first time, out of the `known` bearers of these ids.

    Nothing where no id is known; a batch of which only a part is known was never written as such.
    """
    bearers = {stored.event.id: stored for stored in known}
    ids = [event.id for event in events]
    if twice := next((one for one in ids if ids.count(one) > 1), None):
        raise TakenError(twice)
    if not bearers:
        return ()
    for event in events:
        bearer = bearers.get(event.id)
        if bearer is None or bearer.stream != stream or not event.tells_the_same(bearer.event):
            raise TakenError(event.id)
    return tuple(bearers[one] for one in ids)
