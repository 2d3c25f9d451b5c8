"""Pressure indoors and the doors it pushes on."""

from collections.abc import Callable, Iterator

from lightoff.judgement.target import Bounds, Instance, Target, at_most, reading
from lightoff.machine import Machine
from lightoff.physics.building import (
    LEAST_PRESSURE,
    MOST_PRESSURE,
    OPEN_FORCE,
    START_FORCE,
    UNLATCH_FORCE,
)

LIFE_SAFETY = "NFPA 101 (from memory)"


def _at_high(point: str) -> Callable[[Machine], Iterator[Instance]]:
    return lambda _: iter([Instance(point, ("high",), (point,))])


def _door(name: str, force: float) -> Target:
    return Target(
        id=f"door: {name}",
        severity="correct",
        kind="force",
        instances=_at_high(f"door.{name}"),
        estimate=reading,
        bounds=lambda _: at_most(force, "code", LIFE_SAFETY),
    )


TARGETS = (
    Target(
        id="building pressure",
        severity="correct",
        kind="pressure",
        instances=_at_high("building.pressure"),
        estimate=reading,
        bounds=lambda _: Bounds(
            LEAST_PRESSURE,
            MOST_PRESSURE,
            "code",
            "NFPA 96 (from memory); upper end common practice",
        ),
    ),
    _door("unlatch", UNLATCH_FORCE),
    _door("start", START_FORCE),
    _door("open", OPEN_FORCE),
)
