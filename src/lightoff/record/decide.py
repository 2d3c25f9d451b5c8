"""May this be written, and as which events? Pure: state and command say it all."""

from collections.abc import Iterator, Sequence
from datetime import datetime
from uuid import UUID, uuid5

from lightoff.job import Fault, JobError, parse_tree
from lightoff.job.nearest import shown
from lightoff.judgement import assess
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
from lightoff.record.fold import CLOSING, OPENING, Entry, State, fold
from lightoff.record.imported import Fact, job_facts, visit_facts
from lightoff.record.objections import misplaced, objections


class Refused(LightoffError):
    """A command that is not written, with every reason at once; places are within its entry."""

    def __init__(self, reasons: Sequence[Fault]) -> None:
        self.reasons = tuple(reasons)
        super().__init__("\n".join(map(str, self.reasons)))


def decide(
    state: State, command: Command, *, by: str, at: datetime, event_id: str
) -> tuple[Event, ...]:
    """The events that `command` becomes; `Refused` tells every reason why it does not.

    The first event has `event_id`, the ids of others follow from it: the same command decided
    again is the same events.
    """
    lost = list(misplaced(state, command))
    reasons = [*lost, *objections(state, command, by)]
    ...
