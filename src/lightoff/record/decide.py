"""May this be written, and as which events? Pure: state and command say it all."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime
from uuid import UUID, uuid5

from lightoff.job import Fault
from lightoff.quantity import LightoffError
from lightoff.record.canonical import plain
from lightoff.record.commands import (
    CloseVisit,
    Command,
    Correct,
    CorrectPlate,
    DeclareUnit,
    Note,
    OpenVisit,
    Withdraw,
)
from lightoff.record.events import (
    CLOSED,
    CORRECTED,
    NOTED,
    REDECLARED,
    WITHDRAWN,
    Event,
    text_of,
)
from lightoff.record.fold import State, fold
from lightoff.record.imported import Fact, job_facts, visit_facts
from lightoff.record.objections import misplaced, objections
from lightoff.record.validity import faults


class Refused(LightoffError):  # noqa: N818 - an answer, not a failure
    """A command that is not written, with every reason; places are within what it brings."""

    def __init__(self, reasons: Sequence[Fault]) -> None:
        self.reasons = tuple(reasons)
        super().__init__("\n".join(map(str, self.reasons)))


def decide(
    state: State, command: Command, *, by: str, at: datetime, event_id: str
) -> tuple[Event, ...]:
    """The events that `command` becomes; `Refused` tells every reason why it does not.

    The first event has `event_id`, and the ids of any others follow from it: the same command,
    decided again on the same state, is the same events.
    """
    lost = list(misplaced(state, command))
    reasons = [*lost, *objections(state, command, by)]
    events: tuple[Event, ...] = ()
    if not lost:
        events = tuple(_events(_facts(state, command), by=by, at=at, event_id=event_id))
        reasons += faults(fold(events, state), events) or _unkeepable(events)
    if reasons:
        raise Refused(reasons)
    return events


def _events(facts: Iterable[Fact], *, by: str, at: datetime, event_id: str) -> Iterator[Event]:
    for number, (name, body) in enumerate(facts):
        own = event_id if number == 0 else str(uuid5(UUID(event_id), str(number)))
        yield Event(own, name, at, by, body)


def _facts(state: State, command: Command) -> Iterable[Fact]:
    match command:
        case DeclareUnit(tree):
            return job_facts(plain(tree))
        case CorrectPlate(tree, reason):
            why = {"reason": reason} if reason.strip() else {}
            return [(REDECLARED, {"job": plain(tree), **why})]
        case OpenVisit(tree):
            return visit_facts(state.visits + 1, plain(tree))
        case Note(visit, kind, entry):
            return [(NOTED[kind], {"visit": visit, "entry": plain(entry)})]
        case Correct(entry_id, now, reason):
            return [(CORRECTED, {"entry_id": entry_id, "now": plain(now), "reason": reason})]
        case Withdraw(entry_id, reason):
            return [(WITHDRAWN, {"entry_id": entry_id, "reason": reason})]
        case CloseVisit(visit, left, told):
            closing = {"left": left} if told is None else {"told": told, "left": left}
            return [(CLOSED, {"visit": visit, "entry": closing})]


def _unkeepable(events: Iterable[Event]) -> list[Fault]:
    """What the job reader lets pass and canonical JSON cannot keep: huge whole numbers, say."""
    for event in events:
        try:
            text_of(event)
        except ValueError as error:
            return [Fault("entry", None, f"the record cannot keep this: {error}")]
    return []
