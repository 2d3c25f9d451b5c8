"""A store in one SQLite file: what a laptop keeps."""

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from datetime import datetime
from os import PathLike
from pathlib import Path
from threading import Lock
from typing import Any, Self

from lightoff.record.chain import Stored, linked
from lightoff.record.events import Event
from lightoff.record.sqlite_file import opened, telling, transaction
from lightoff.record.store import Clash, UnitSummary, kept_before, summary

BUSY = 5.0  # [s]
_LINK = "stream, version, text, previous, digest"
_UNIT = "stream, tag, serves, visits, at, version"  # in the order of UnitSummary
_ADD = f"INSERT INTO event (id, {_LINK}) VALUES (?, ?, ?, ?, ?, ?)"
_LIST = f"""
INSERT INTO unit ({_UNIT}) VALUES (?, ?, ?, ?, ?, ?)
ON CONFLICT (stream) DO UPDATE
SET (tag, serves, visits, at, version)
  = (excluded.tag, excluded.serves, excluded.visits, excluded.at, excluded.version)
"""


class SqliteStore:
    """Keeps its streams in a file, which is made where there is none.

    When `append` returns, the events are on the disk. Several programs may share the file, and
    several threads the store: their writes wait for each other, at most `busy` seconds.
    """

    def __init__(self, path: str | PathLike[str], *, busy: float = BUSY) -> None:
        file = Path(path)
        self._name = file.name
        self._lock = Lock()
        with telling(self._name):
            self._connection = opened(file, busy)

    def append(
        self, stream: str, expected_version: int, events: Sequence[Event]
    ) -> tuple[Stored, ...]:
        with self._using(), transaction(self._connection):
            if kept := kept_before(stream, events, self._bearers(events)):
                return kept
            head = self._head(stream)
            if expected_version != (head.version if head else 0):
                raise Clash(expected_version, self._beyond(stream, expected_version))
            stored = linked(stream, head, events)
            self._list(stream, stored)
            rows = [(s.event.id, s.stream, s.version, s.text, s.previous, s.digest) for s in stored]
            self._connection.executemany(_ADD, rows)
            return stored

    def read(self, stream: str, after: int = 0) -> tuple[Stored, ...]:
        with self._using():
            return self._beyond(stream, after)

    def streams(self) -> tuple[UnitSummary, ...]:
        with self._using():
            return self._units("ORDER BY tag, stream")

    def close(self) -> None:
        with self._using():
            self._connection.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    @contextmanager
    def _using(self) -> Iterator[None]:
        with self._lock, telling(self._name):
            yield

    def _head(self, stream: str) -> Stored | None:
        rows = self._links("WHERE stream = ? ORDER BY version DESC LIMIT 1", stream)
        return next(iter(rows), None)

    def _beyond(self, stream: str, version: int) -> tuple[Stored, ...]:
        return self._links("WHERE stream = ? AND version > ? ORDER BY version", stream, version)

    def _bearers(self, events: Sequence[Event]) -> list[Stored]:
        return [link for event in events for link in self._links("WHERE id = ?", event.id)]

    def _links(self, where: str, *values: object) -> tuple[Stored, ...]:
        rows = self._connection.execute(f"SELECT {_LINK} FROM event {where}", values)
        return tuple(Stored(*row) for row in rows)

    def _list(self, stream: str, stored: Sequence[Stored]) -> None:
        """Bring the unit's line of the list up to date."""
        unit = next(iter(self._units("WHERE stream = ?", stream)), None)
        for link in stored:
            unit = summary(unit, link)
        if unit is not None:
            row = {**vars(unit), "at": unit.at.isoformat()}
            self._connection.execute(_LIST, tuple(row.values()))

    def _units(self, where: str, *values: object) -> tuple[UnitSummary, ...]:
        rows = self._connection.execute(f"SELECT {_UNIT} FROM unit {where}", values)
        return tuple(_unit(*row) for row in rows)


def _unit(*row: Any) -> UnitSummary:
    stream, tag, serves, visits, at, version = row
    return UnitSummary(stream, tag, serves, visits, datetime.fromisoformat(at), version)
