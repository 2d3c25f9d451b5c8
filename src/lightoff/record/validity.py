"""Is the job that would result a job, and may its unit be left running?

The whole tree is read again, as any job is; of what is wrong in it, what lies within the entries
just written speaks against them.
"""

from collections.abc import Sequence

from lightoff.job import Fault, Job, JobError, parse_tree
from lightoff.judgement import assess
from lightoff.record.events import DECLARED, REDECLARED, Event
from lightoff.record.fold import CLOSING, Entry, State

_NEVER = "not to be left running"


def faults(after: State, events: Sequence[Event]) -> list[Fault]:
    """What speaks against `events`, the last of those that made `after`.

    Places are within the entry; of a visit or a unit written as a whole, within that.
    """
    ids = {event.id for event in events}
    touched = [entry for entry in after.standing if entry.events[-1].id in ids]
    declares = any(event.name in (DECLARED, REDECLARED) for event in events)
    if not touched and not declares:
        return []
    homes = _homes(after, touched)
    running = [e for e in touched if e.kind == CLOSING and e.tree.get("left") == "running"]
    try:
        job = parse_tree(after.tree)
    except JobError as error:
        # a unit left running is judged, so its whole job must read; so must a job with more
        # faults than are listed, for they might lie anywhere
        all_count = declares or running or error.more
        found = [f for f in error.faults if all_count or _home(after, f.place) in homes]
    else:
        found = [_left_running(entry) for entry in running if _is_unsafe(job, entry.visit)]
    return [_within("" if declares else homes[0], fault) for fault in found]


def _homes(after: State, entries: Sequence[Entry]) -> list[str]:
    """The places of entries; of a visit's opening and closing, the visit."""
    places = {entry.id: place for place, entry in after.places.items()}
    return [places.get(entry.id, f"visit.{entry.visit}") for entry in entries]


def _home(after: State, place: str) -> str:
    """The place of the entry in which a fault lies."""
    steps = place.split(".")
    row = ".".join(steps[:4])
    return row if row in after.places else ".".join(steps[:2])


def _within(base: str, fault: Fault) -> Fault:
    place = "entry" if fault.place == base else fault.place.removeprefix(f"{base}.")
    return Fault(place, None, fault.message)


def _is_unsafe(job: Job, visit: int) -> bool:
    return assess(job.machine(), job.visit(visit), whole=False).verdict == _NEVER


def _left_running(closing: Entry) -> Fault:
    sentence = f'the verdict is "{_NEVER}": leave it off, or with its gas shut and tagged'
    return Fault(f"visit.{closing.visit}.left", None, sentence)
