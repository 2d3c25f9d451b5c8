"""As found, as left, stale: which readings speak for which state of the machine."""

import datetime as dt
from dataclasses import dataclass, field
from typing import Literal

from lightoff.judgement.stale import moves
from lightoff.machine import Machine, Visit, canonical
from lightoff.machine.visit import Reading

State = Literal["as found", "as left"]
Key = tuple[str, str]  # run, point

_BEGINNING = dt.datetime.min.replace(tzinfo=dt.UTC)


@dataclass(frozen=True)
class Held:
    """The readings of one point in one run that speak for a state, in time.

    `stale`: an adjustment has moved the point since the last of them.
    """

    readings: tuple[Reading, ...]
    stale: bool = False


@dataclass(frozen=True)
class History:
    """The two states of one visit. As found: before the first adjustment that can move a point.

    `order` gives each reading's place in time, by its place in the job.
    """

    found: dict[Key, Held] = field(default_factory=dict)
    left: dict[Key, Held] = field(default_factory=dict)
    order: dict[str, int] = field(default_factory=dict)

    def state(self, state: State) -> dict[Key, Held]:
        return self.found if state == "as found" else self.left


def history(machine: Machine, visit: Visit) -> History:
    """Sort a visit's readings into what was found and what was left."""
    groups: dict[Key, list[Reading]] = {}
    timed = in_time(visit.readings)
    for reading in timed:
        groups.setdefault((canonical(machine, reading.run), reading.point), []).append(reading)
    found: dict[Key, Held] = {}
    left: dict[Key, Held] = {}
    for (run, point), readings in groups.items():
        turned = sorted(
            a.at for a in visit.adjustments if moves(machine, a.what, a.run, point, run)
        )
        before, after = _split(readings, turned)
        if before:
            found[run, point] = Held(before)
        left[run, point] = after
    return History(found, left, {reading.place: at for at, reading in enumerate(timed)})


def in_time(readings: tuple[Reading, ...]) -> list[Reading]:
    """Readings in time; one without a time follows the line before it."""
    clock = _BEGINNING
    keyed = []
    for reading in readings:
        clock = reading.at or clock
        keyed.append((clock, reading.line, reading))
    return [reading for _, _, reading in sorted(keyed, key=lambda row: row[:2])]


def _split(readings: list[Reading], turned: list[dt.datetime]) -> tuple[tuple[Reading, ...], Held]:
    """Before the first adjustment, and after the last (or the last of all, stale)."""
    rank = {id(reading): _rank(reading, turned) for reading in readings}
    before = tuple(r for r in readings if rank[id(r)] == 0 and r.state != "as left")
    after = tuple(r for r in readings if rank[id(r)] == len(turned) and r.state != "as found")
    if after:
        return before, Held(after)
    latest = max(rank.values())
    return before, Held(tuple(r for r in readings if rank[id(r)] == latest), stale=bool(turned))


def _rank(reading: Reading, turned: list[dt.datetime]) -> int:
    """How many of the adjustments that move it came before this reading."""
    if reading.state == "as left":
        return len(turned)
    if reading.state == "as found" or reading.at is None:
        return 0
    return sum(at <= reading.at for at in turned)
