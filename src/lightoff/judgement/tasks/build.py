"""The tasks of one machine: the rows of work that apply to it, tied to one another."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from lightoff.judgement.tasks.instruments import readers
from lightoff.judgement.tasks.order import nearest
from lightoff.judgement.tasks.task import Leading, Record, Task, Work
from lightoff.machine import Machine

Key = tuple[str, int]  # name of a row, furnace (0 of the whole unit)
_ONLY_ON = {"caution-roof": "rooftop", "caution-room": "indoor"}


@dataclass(frozen=True)
class _Placed:
    """A row for a furnace, with what it records and the keys it is tied to."""

    row: Work
    records: tuple[Record, ...]
    needs: tuple[Key, ...]

    @property
    def is_waited_for(self) -> bool:
        return any(record.due for record in self.records)


def built(machine: Machine, work: Iterable[Work]) -> tuple[Task, ...]:
    """Every task of a machine; a row may need only rows above it."""
    placed: dict[Key, _Placed] = {}
    for row in work:
        for furnace in _furnaces(machine, row):
            records = tuple(row.records(machine, furnace))
            needs = _standing(placed, _needs(machine, placed, row, furnace))
            placed[row.name, furnace] = _Placed(row, records, needs)
    ties = {key: each.needs for key, each in placed.items()}
    return tuple(
        _task(machine, key, each, nearest(ties, each.needs))
        for key, each in placed.items()
        if each.records
    )


def _furnaces(machine: Machine, row: Work) -> tuple[int, ...]:
    """The furnaces a row is repeated for."""
    return tuple(number for number, _ in machine.numbered()) if row.each_furnace else (0,)


def _needs(
    machine: Machine, placed: Mapping[Key, _Placed], row: Work, furnace: int
) -> Iterator[Key]:
    """The rows that a row names, by furnace."""
    for need in row.needs:
        if isinstance(need, Leading):
            yield need.name, machine.leading
        elif (need, 0) in placed:
            yield need, 0
        else:
            every = tuple(number for number, _ in machine.numbered())
            yield from ((need, number) for number in ((furnace,) if furnace else every))


def _standing(placed: Mapping[Key, _Placed], needs: Iterable[Key]) -> tuple[Key, ...]:
    """Needs, each once; in place of what nobody waits for, what that one needs."""
    found: dict[Key, None] = {}
    for need in needs:
        there = placed[need]
        found.update(dict.fromkeys((need,) if there.is_waited_for else there.needs))
    return tuple(found)


def _task(machine: Machine, key: Key, placed: _Placed, needs: Iterable[Key]) -> Task:
    row = placed.row
    return Task(
        id=_id(key),
        name=row.name,
        step=row.step,
        furnace=key[1] or None,
        needs=tuple(map(_id, needs)),
        records=placed.records,
        cautions=_cautions(machine, row),
        minutes=row.minutes,
        licence=row.licence,
        instruments=_instruments(placed),
        last=row.last,
    )


def _id(key: Key) -> str:
    name, furnace = key
    return f"{name}, furnace {furnace}" if furnace else name


def _cautions(machine: Machine, row: Work) -> tuple[str, ...]:
    here = machine.unit.mounting
    return tuple(each for each in row.cautions if _ONLY_ON.get(each, here) == here)


def _instruments(placed: _Placed) -> tuple[str, ...]:
    """The kinds it takes: for each reading that is due the usual one, and its own tools."""
    due = (each for each in placed.records if each.kind == "reading" and each.due)
    usual = (kinds[0] for record in due if (kinds := readers(record.names[0])))
    return tuple(dict.fromkeys((*usual, *placed.row.tools)))
