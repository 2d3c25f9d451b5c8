"""What happened: an event is a fact, told once, with what was typed and never a computed number.

A name is data, so that records outlive the code that wrote them. The bodies:

    unit declared, plate corrected     {"job": the job's tree without its visits}
    whatever is written into a visit   {"visit": its number, "entry": as in the job file}
    entry corrected                    {"entry_id": of its first event, "now": ..., "reason": ...}
    entry withdrawn                    {"entry_id": of its first event, "reason": ...}

What comes later (photos, signatures) has names of its own; whoever does not know a name says so.
"""

from dataclasses import dataclass, replace
from datetime import datetime
from uuid import UUID

from lightoff.job.job import Tree
from lightoff.job.nearest import shown
from lightoff.quantity import LightoffError
from lightoff.record.canonical import canonical, from_canonical

FORMAT = 1

DECLARED = "unit declared"
REDECLARED = "plate corrected"
CORRECTED = "entry corrected"
WITHDRAWN = "entry withdrawn"
OPENED = "visit opened"
CLOSED = "visit closed"

NOTED = {  # by the visit's tables in the job file
    "symptom": "symptom reported",
    "reading": "reading taken",
    "adjustment": "setting adjusted",
    "trip": "trip proven",
    "check": "check made",
    "step": "step timed",
    "joint": "joint tested",
    "decay": "decay tested",
    "setpoint": "set point left",
    "deficiency": "deficiency raised",
    "deferred": "target deferred",
}
_BODIES = {  # what each event says at least
    DECLARED: {"job"},
    REDECLARED: {"job"},
    CORRECTED: {"entry_id", "now", "reason"},
    WITHDRAWN: {"entry_id", "reason"},
    **{name: {"visit", "entry"} for name in (OPENED, *NOTED.values(), CLOSED)},
}


class RecordError(LightoffError):
    """The record cannot be read or written as asked; `str()` is one clear sentence."""


@dataclass(frozen=True)
class Event:
    """One fact: what happened, when it was written down (not when it was done), and by whom."""

    id: str
    name: str
    at: datetime
    by: str
    body: Tree
    format: int = FORMAT

    def __post_init__(self) -> None:
        if self.format != FORMAT:
            raise RecordError(
                f"event format {shown(self.format)} is not known here: a newer lightoff wrote it"
            )
        if self.name not in _BODIES:
            raise RecordError(
                f"{shown(self.name)} is not an event known here: a newer lightoff wrote it"
            )
        if missing := _BODIES[self.name] - self.body.keys():
            raise RecordError(f"the event {shown(self.name)} does not say its {min(missing)}")
        if self.at.tzinfo is None:
            raise RecordError(f"the time {self.at} has no offset: nobody can tell when it was")
        if not is_uuid(self.id):
            raise RecordError(f"{shown(self.id)} is no event id: an id is a UUID in lower case")

    def tells_the_same(self, other: "Event") -> bool:
        """Whether both tell one fact; a retry writes it down at another time."""
        return text_of(replace(self, at=other.at)) == text_of(other)


def text_of(event: Event) -> str:
    """The event as canonical JSON; a ValueError where JSON cannot keep it."""
    return canonical({**vars(event), "at": event.at.isoformat()})


def event_of(text: str) -> Event:
    """The event such a text tells."""
    try:
        tree = from_canonical(text)
        return Event(**{**tree, "at": datetime.fromisoformat(tree["at"])})
    except RecordError:
        raise
    except (ValueError, TypeError, KeyError, AttributeError) as error:
        raise RecordError("what is stored here is no event: the record was damaged") from error


def is_uuid(text: str) -> bool:
    """Whether this is a UUID, written as UUIDs are by default."""
    try:
        return str(UUID(text)) == text
    except (ValueError, AttributeError, TypeError):
        return False
