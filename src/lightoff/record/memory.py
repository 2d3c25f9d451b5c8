"""A store that lasts as long as the program: for tests, and for trying things out."""

from collections.abc import Sequence

from lightoff.record.chain import Stored, linked
from lightoff.record.events import Event
from lightoff.record.store import Clash, UnitSummary, kept_before, summary


class MemoryStore:
    """Keeps its streams in memory; one writer at a time."""

    def __init__(self) -> None:
        self._streams: dict[str, tuple[Stored, ...]] = {}
        self._by_id: dict[str, Stored] = {}
        self._units: dict[str, UnitSummary] = {}

    def append(
        self, stream: str, expected_version: int, events: Sequence[Event]
    ) -> tuple[Stored, ...]:
        known = [self._by_id[event.id] for event in events if event.id in self._by_id]
        if kept := kept_before(stream, events, known):
            return kept
        before = self.read(stream)
        if len(before) != expected_version:
            raise Clash(expected_version, self.read(stream, expected_version))
        stored = linked(stream, before[-1] if before else None, events)
        unit = self._units.get(stream)
        for link in stored:
            unit = summary(unit, link)
        if unit is not None:
            self._units[stream] = unit
        self._streams[stream] = before + stored
        self._by_id.update((link.event.id, link) for link in stored)
        return stored

    def read(self, stream: str, after: int = 0) -> tuple[Stored, ...]:
        return self._streams.get(stream, ())[max(after, 0) :]

    def streams(self) -> tuple[UnitSummary, ...]:
        return tuple(sorted(self._units.values(), key=lambda unit: (unit.tag, unit.stream)))
