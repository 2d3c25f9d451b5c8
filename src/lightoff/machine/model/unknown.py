"""An unknown of the machine: what it is, how far it may lie from what is expected, and why."""

from dataclasses import dataclass
from typing import Literal

Origin = Literal[
    "published spread", "manufacturing tolerance", "common practice", "judgement", "declared"
]
# where it first matters: what burns, what balances, or only what is shown
Stage = Literal["fire", "balance", "show"]


@dataclass(frozen=True)
class Unknown:
    """One thing nobody knows exactly, in its SI unit; most are the share of what is expected.

    `spread` is the standard uncertainty before anything is read; `wander` how far it may move from
    one run of a visit to the next, which is also the error of its equation. `origin` and `source`
    say where they come from. What a start-up inspects is `free` as soon as it is read: no
    expectation may pass what was to be checked. `inspected` matches the points that tell it, and
    `beside` one that has to be read as well: of three leads the third makes up for the others.
    """

    id: str
    mean: float
    spread: float
    unit: str
    stage: Stage
    origin: Origin
    source: str
    wander: float = 0.0
    inspected: str = ""
    beside: str = ""
