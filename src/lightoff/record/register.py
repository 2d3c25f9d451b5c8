"""The record as the surfaces use it: units, what stands of each, and commands written to it."""

from collections.abc import Callable, Sequence
from datetime import UTC, datetime
from uuid import uuid4

from lightoff.job import Job, parse_tree
from lightoff.job.job import Tree
from lightoff.job.nearest import shown
from lightoff.record.chain import Broken, Stored, verify
from lightoff.record.commands import Command, DeclareUnit
from lightoff.record.decide import decide
from lightoff.record.events import RecordError
from lightoff.record.fold import State, fold
from lightoff.record.store import Clash, Store, UnitSummary

TRIES = 5  # when others write in between and nobody said which version was seen


class UnknownUnitError(RecordError):
    """A unit that is not in the record."""


def now() -> datetime:
    return datetime.now(UTC)


def new_id() -> str:
    return str(uuid4())


class Register:
    """Every unit of one store."""

    def __init__(
        self,
        store: Store,
        *,
        clock: Callable[[], datetime] = now,
        new_id: Callable[[], str] = new_id,
    ) -> None:
        self._store = store
        self._clock = clock
        self._new_id = new_id

    def units(self) -> tuple[UnitSummary, ...]:
        """All units, by tag."""
        return self._store.streams()

    def history(self, stream: str) -> tuple[Stored, ...]:
        """Every event of a unit, the first first."""
        stored = self._store.read(stream)
        if not stored:
            raise UnknownUnitError(f"there is no unit {shown(stream)} in this record")
        return stored

    def state(self, stream: str) -> State:
        """What stands of a unit now."""
        return _folded(self.history(stream))

    def job(self, stream: str) -> Job:
        """The same, read as a job."""
        return parse_tree(self.state(stream).tree)

    def verify(self, stream: str) -> Broken | None:
        """Where the unit's chain of events was altered, or None."""
        return verify(self.history(stream))

    def add_job(self, tree: Tree, *, by: str, event_id: str | None = None) -> str:
        """Begin the record of a unit with all that its job holds; the answer is its stream.

        A retry with the same `event_id` adds nothing.
        """
        stream = event_id or self._new_id()  # a stream is called by its first event
        self.do(stream, DeclareUnit(tree), by=by, event_id=stream)
        return stream

    def do(
        self,
        stream: str,
        command: Command,
        *,
        by: str,
        event_id: str | None = None,
        expected_version: int | None = None,
    ) -> tuple[Stored, ...]:
        """Write what `command` asks for; the answer is its events, kept.

        Raises `Refused` with every reason, and `Clash` with what others wrote since
        `expected_version`; where that is None, the command is decided on what stands now. The
        same command with the same `event_id` is written once, however often it is sent.
        """
        own_id = event_id or self._new_id()
        tries = TRIES if expected_version is None else 1
        for _ in range(tries - 1):
            try:
                return self._attempt(stream, command, by, own_id, expected_version)
            except Clash:
                continue  # decided again, on what others have just written
        return self._attempt(stream, command, by, own_id, expected_version)

    def _attempt(
        self, stream: str, command: Command, by: str, event_id: str, expected: int | None
    ) -> tuple[Stored, ...]:
        stored = self._store.read(stream)
        # a retry is decided where it was decided first; later events may have made it moot
        retried = (link.version - 1 for link in stored if link.event.id == event_id)
        version = next(retried, len(stored) if expected is None else expected)
        before = _folded(stored[:version])
        events = decide(before, command, by=by, at=self._clock(), event_id=event_id)
        return self._store.append(stream, version, events)


def _folded(stored: Sequence[Stored]) -> State:
    return fold(link.event for link in stored)
