"""A cause, and how it shows: as unknowns that lie off, as readings that are read wrong."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from lightoff.inference.pushes import Size


@dataclass(frozen=True)
class Effect:
    """One way in which a cause shows, for one of its size.

    Unknowns lie `off` by so much [their units], in one `run` only where it is named; while the unit
    is off they lie off as `at_rest` says, where it says anything. Readings at
    points that match `read`, of one `gauge` only where it is named, show so much more than there
    is: a share of it (`scale`), or [SI] (`adds`). What reaches `far` is foretold anew for a size of
    1: no straight line leads there.
    """

    sizes: tuple[Size, ...]
    off: Mapping[str, float] = field(default_factory=dict)
    at_rest: Mapping[str, float] | None = None
    run: str | None = None
    read: str = ""
    scale: float = 0.0
    adds: float = 0.0
    gauge: str | None = None
    far: bool = False


@dataclass(frozen=True)
class Cause:
    """Something that can be wrong, in a furnace or at a point where it belongs to one.

    Its effects are different ways it may show, the shares of their sizes adding up to 1. `aside`
    are points the model does not know, with how far each is off [SI].
    """

    id: str
    effects: tuple[Effect, ...] = ()
    furnace: int | None = None
    point: str | None = None
    aside: Mapping[str, tuple[Size, ...]] = field(default_factory=dict)


def shares(share: float, sizes: tuple[Size, ...]) -> tuple[Size, ...]:
    """The same sizes as part of all cases."""
    return tuple(each._replace(share=each.share * share) for each in sizes)
