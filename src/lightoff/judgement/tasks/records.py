"""Shorthand for what tasks leave on record, so that the rows of work read as the trade speaks."""

from collections.abc import Iterator
from dataclasses import replace

from lightoff.judgement.tasks.task import Record
from lightoff.machine import Machine, checks, firing, points, runs, sequence, trips
from lightoff.machine.runs import high_run, low_run


def seen(machine: Machine, *names: str) -> Iterator[Record]:
    """Checks, as far as this unit has them."""
    here = checks(machine)
    return (Record("check", (name,)) for name in names if name in here)


def read(machine: Machine, runs_of: tuple[str, ...], *names: str) -> Iterator[Record]:
    """Points to read in the first of these runs, or in another of them, as far as there are any."""
    here = {point.id for point in points(machine)}
    there = tuple(run for run in dict.fromkeys(runs_of) if run in runs(machine))
    if there or not runs_of:
        yield from (Record("reading", (name,), there) for name in names if name in here)


def any_of(machine: Machine, runs_of: tuple[str, ...], *names: str) -> Iterator[Record]:
    """One reading, at whichever of these points it is taken."""
    found = list(read(machine, runs_of, *names))
    if found:
        yield replace(found[0], names=tuple(record.names[0] for record in found))


def tripped(machine: Machine, trip: str, furnace: int = 0) -> Iterator[Record]:
    """A trip made to act, where this unit has it."""
    for each in trips(machine):
        if (each.id, each.furnace or 0) == (trip, furnace):
            yield Record("trip", (trip,), furnace=each.furnace)


def timed(machine: Machine, furnace: int, *names: str) -> Iterator[Record]:
    """Steps under the stopwatch, as far as they belong to this unit's sequence."""
    here = {(step.id, step.furnace or 0) for step in sequence(machine)}
    for name in names:
        if (name, furnace) in here:
            yield Record("step", (name,), furnace=furnace or None)


def declared(machine: Machine, furnace: int, *names: str) -> Iterator[Record]:
    """The same, as far as the plate gives their seconds."""
    plate = {(step.id, step.furnace) for step in sequence(machine) if step.seconds is not None}
    for record in timed(machine, furnace, *names):
        if (record.names[0], record.furnace) in plate:
            yield record


def helping(records: Iterator[Record]) -> Iterator[Record]:
    """The same, of help where they are taken, and not waited for."""
    return (replace(record, due=False) for record in records)


def at_high(machine: Machine, furnace: int) -> tuple[str, ...]:
    """Runs with a furnace at high fire: alone first, so that it is known by itself."""
    return (high_run(machine, furnace), "high")


def at_low(machine: Machine, furnace: int) -> tuple[str, ...]:
    """Runs with a furnace at low fire; none where it has no low fire."""
    if not machine.furnace(furnace).has_low_fire:
        return ()
    return (low_run(machine, furnace), f"low.{furnace}")


def in_which_high(machine: Machine, furnace: int) -> tuple[str, ...]:
    """Every run in which a furnace is at high fire, alone first."""
    lit = [run for run in runs(machine) if firing(machine, run).get(furnace) == "high"]
    return tuple(dict.fromkeys((high_run(machine, furnace), *lit)))


def each_train(machine: Machine, furnace: int, point: str) -> tuple[str, ...]:
    """A point of each train of a furnace: {n} and {m} in its name are filled in."""
    trains = range(1, len(machine.furnace(furnace).trains) + 1)
    return tuple(point.format(n=furnace, m=m) for m in trains)
