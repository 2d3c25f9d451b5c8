"""Pressure indoors and the doors it pushes on."""

from collections.abc import Callable, Iterator

from lightoff.judgement.target import Bounds, Instance, Target, at_most, reading
from lightoff.machine import Machine

INCH = 249.08891  # [Pa]
POUND = 4.4482216  # [N]
LIFE_SAFETY = "NFPA 101 (from memory)"


def _at_high(point: str) -> Callable[[Machine], Iterator[Instance]]:
    return lambda _: iter([Instance(point, ("high",), (point,))])


def _door(name: str, pounds: float) -> Target:
    return Target(
        id=f"door: {name}",
        severity="correct",
        kind="force",
        instances=_at_high(f"door.{name}"),
        estimate=reading,
        bounds=lambda _: at_most(pounds * POUND, "code", LIFE_SAFETY),
    )


TARGETS = (
    Target(
        id="building pressure",
        severity="correct",
        kind="pressure",
        instances=_at_high("building.pressure"),
        estimate=reading,
        bounds=lambda _: Bounds(
            -0.02 * INCH, 0.05 * INCH, "code", "NFPA 96 (from memory); upper end common practice"
        ),
    ),
    _door("unlatch", 15),
    _door("start", 30),
    _door("open", 15),
)
