"""What stands now: the events of one unit, folded into the tree of a job file."""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from functools import cached_property

from lightoff.job.job import Tree
from lightoff.record.events import (
    CLOSED,
    CORRECTED,
    DECLARED,
    NOTED,
    OPENED,
    REDECLARED,
    WITHDRAWN,
    Event,
    RecordError,
)

OPENING = "opening"
CLOSING = "closing"
_KINDS = {OPENED: OPENING, CLOSED: CLOSING, **{name: kind for kind, name in NOTED.items()}}


@dataclass(frozen=True)
class Entry:
    """One entry of a visit as it stands, with every event that made it so, the first first.

    `kind` is its table in the job file, or `opening` or `closing`; `id` is that of its first event.
    """

    id: str
    visit: int
    kind: str
    tree: Tree
    events: tuple[Event, ...]
    withdrawn: bool = False


@dataclass(frozen=True)
class State:
    """The record of one unit as it stands at `version`; nothing is declared at version 0."""

    version: int = 0
    declared: Tree = field(default_factory=dict)
    entries: tuple[Entry, ...] = ()

    @cached_property
    def tree(self) -> Tree:
        """The job's tree. Not a copy: entries are those of the events."""
        visits: list[Tree] = []
        for entry in self.standing:
            if entry.kind == OPENING:
                visits.append(dict(entry.tree))
            elif entry.kind == CLOSING:
                visits[entry.visit - 1].update(entry.tree)
            else:
                visit = visits[entry.visit - 1]
                visit[entry.kind] = [*visit.get(entry.kind, ()), entry.tree]
        return {**self.declared, "visit": visits} if visits else self.declared

    @cached_property
    def standing(self) -> tuple[Entry, ...]:
        """The entries that were not withdrawn."""
        return tuple(entry for entry in self.entries if not entry.withdrawn)

    @cached_property
    def places(self) -> dict[str, Entry]:
        """The standing entries by their place in the tree, as `visit.1.reading.12`.

        A visit itself is the place of its opening.
        """
        places: dict[str, Entry] = {}
        counts: dict[str, int] = {}
        for entry in self.standing:
            if entry.kind == OPENING:
                places[f"visit.{entry.visit}"] = entry
            elif entry.kind != CLOSING:
                table = f"visit.{entry.visit}.{entry.kind}"
                counts[table] = counts.get(table, 0) + 1
                places[f"{table}.{counts[table]}"] = entry
        return places

    @property
    def visits(self) -> int:
        """How many visits were opened."""
        return sum(entry.kind == OPENING for entry in self.entries)

    def entry(self, entry_id: str) -> Entry | None:
        """The entry whose first event has this id."""
        return next((entry for entry in self.entries if entry.id == entry_id), None)

    def closing(self, visit: int) -> Entry | None:
        """The entry that closed a visit, or None while it is open."""
        closings = (e for e in self.standing if (e.visit, e.kind) == (visit, CLOSING))
        return next(closings, None)


NOTHING = State()


def fold(events: Iterable[Event], onto: State = NOTHING) -> State:
    """What stands after `events`, told in their order after all that made `onto`."""
    version, declared = onto.version, onto.declared
    entries = {entry.id: entry for entry in onto.entries}
    for event in events:
        version += 1
        if event.name in (DECLARED, REDECLARED):
            declared = event.body["job"]
        elif event.name in (CORRECTED, WITHDRAWN):
            changed = _changed(entries, event)
            entries[changed.id] = changed
        else:
            entries[event.id] = _entry(event)
    return State(version, declared, tuple(entries.values()))


def _entry(event: Event) -> Entry:
    body = event.body
    return Entry(event.id, body["visit"], _KINDS[event.name], body["entry"], (event,))


def _changed(entries: dict[str, Entry], event: Event) -> Entry:
    before = entries.get(event.body["entry_id"])
    if before is None:
        raise RecordError(f"event {event.id} speaks of an entry that is not in the record")
    history = (*before.events, event)
    if event.name == WITHDRAWN:
        return replace(before, events=history, withdrawn=True)
    return replace(before, events=history, tree=event.body["now"])
