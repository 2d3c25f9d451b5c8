"""What a reading would say if it were kept."""

from dataclasses import dataclass

from lightoff.judgement import Assessment
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.told import Told, told


@dataclass(frozen=True)
class Trying:
    """The answer to what is being typed, or what is wrong with it; empty before anything is."""

    told: Told | None
    faults: tuple[str, ...]


def trying(tried: Bench, place: str, before: Assessment) -> Trying:
    """What the reading at `place` would change of the answer `before` it."""
    return Trying(told(tried, place, before, mood="would"), ())
