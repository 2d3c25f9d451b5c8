"""The remaining trips, each by the maker's method, attended, nothing bypassed."""

from collections.abc import Iterator
from functools import partial

from lightoff.judgement.tasks.records import tripped
from lightoff.judgement.tasks.task import Leading, Licence, Record, Work
from lightoff.machine import Machine


def _tripped(trip: str, machine: Machine, _: int) -> Iterator[Record]:
    return tripped(machine, trip)


def _trip(
    name: str, minutes: float, need: str | Leading, caution: str, licence: Licence | None = None
) -> Work:
    return Work(
        name=name,
        step=9,
        minutes=minutes,
        records=partial(_tripped, name),
        needs=(need,),
        cautions=(caution, "caution-trip") if caution else ("caution-trip",),
        licence=licence,
    )


FIRING = Leading("train pressures")

WORK = (
    _trip("low gas", 4, FIRING, "caution-gas", "gas"),
    _trip("high gas", 4, FIRING, "caution-high-gas", "gas"),
    _trip("door switch", 2, "call for fan", "caution-rotating"),
    _trip("disconnect", 2, "call for fan", "caution-live"),
    _trip("freeze", 4, "call for fan", "caution-freeze"),
    _trip("smoke", 4, "call for fan", "caution-panel"),
    _trip("hood fire", 4, "call for fan", "caution-hood-fire"),
    _trip("exhaust interlock", 4, "call for fan", ""),
)
NAMES = tuple(work.name for work in WORK)
