"""What a target is: what it applies to, what is allowed, what was found, how it is decided."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any, Literal

from lightoff.inference.conformity import Acceptance, Decision
from lightoff.inference.estimate import Estimate
from lightoff.inference.told import Told, Uncertain
from lightoff.judgement.evidence import Evidence, Missing
from lightoff.judgement.message import Message
from lightoff.judgement.together import Together, itself
from lightoff.machine import Machine
from lightoff.machine.visit import Severity

LimitFrom = Literal[
    "plate", "design", "site", "specification", "code", "standard", "common practice", "physics"
]
COMMON_PRACTICE = "common practice, no source"
UNIT_PLATE = "unit plate"


@dataclass(frozen=True)
class Bounds:
    """Lower and upper limit [SI], None where open, and where they come from."""

    lower: float | None
    upper: float | None
    limit_from: LimitFrom
    source: str


@dataclass(frozen=True)
class Instance:
    """One thing a target applies to.

    `point` is what its rows name; `runs` those it is judged in, the first being where it is missed;
    `needs` the points whose reading makes a row, `beside` others that it rests on. `foretold`: no
    reading can be taken in its run, a reading in any other makes a row.
    """

    point: str
    runs: tuple[str, ...]
    needs: tuple[str, ...]
    beside: tuple[str, ...] = ()
    furnace: int | None = None
    train: int | None = None
    foretold: bool = False


@dataclass(frozen=True)
class Case:
    """One instance in one run, with the evidence of one state."""

    machine: Machine
    instance: Instance
    run: str
    evidence: Evidence
    together: Together | None = None

    @property
    def furnace(self) -> int:
        return self.instance.furnace or 1

    def told(self, *names: str, by: Callable[..., Any] = itself) -> Told | None:
        """What all readings together say of something in this run; None where they say nothing."""
        if self.together is None:
            return None
        return self.together.told(*((name, self.run) for name in names), by=by)


@dataclass(frozen=True)
class Ruling:
    """A decision, the rule it was taken by, and why."""

    decision: Decision
    rule: Acceptance
    why: Message
    unchecked: bool = False


Judge = Callable[[Case, Bounds, Sequence[Uncertain]], Ruling | None]


def by_name(case: Case) -> Told | None:
    """What all readings together say of the point itself; nothing where no other has a say."""
    point = case.instance.point
    if case.together is None or case.together.is_alone(point, case.run):
        return None
    return case.told(point)


def of_its_own(_: Case) -> None:
    """Nothing: what is judged is what was read, and no other reading has a say in it."""


@dataclass(frozen=True)
class Target:
    """One row of the trade's table. A new target is one of these, in the file of its topic.

    `estimate` says what its own readings found in a case, `told` what all readings together say of
    the same; `bounds` what is allowed (None where only the maker could say, and does not). `judge`
    replaces the usual rule where it returns a ruling. Where `by_model`, what all readings say is
    enough, once any point it needs was read.
    """

    id: str
    severity: Severity
    kind: str
    instances: Callable[[Machine], Iterator[Instance]]
    estimate: Callable[[Case], Estimate | Missing]
    bounds: Callable[[Case], Bounds | None]
    told: Callable[[Case], Told | None] = by_name
    caution: str | None = None
    judge: Judge | None = None
    by_model: bool = False
    wanted: Callable[[Machine, Instance], bool] = field(default=lambda _machine, _instance: True)


def reading(case: Case) -> Estimate | Missing:
    """The estimate of a target that is simply a reading of its own point."""
    point = case.instance.point
    return case.evidence.get(point, case.run) or Missing((point,))


def plate_range(limits: tuple[float, float] | None) -> Bounds | None:
    """The plate's window, None where it declares none."""
    return None if limits is None else Bounds(*limits, "plate", UNIT_PLATE)


def at_most(limit: float | None, limit_from: LimitFrom, source: str) -> Bounds | None:
    """An upper limit, None where it is not declared."""
    return None if limit is None else Bounds(None, limit, limit_from, source)


def at_least(limit: float | None, limit_from: LimitFrom, source: str) -> Bounds | None:
    """A lower limit, None where it is not declared."""
    return None if limit is None else Bounds(limit, None, limit_from, source)


def about(value: float | None, share: float, limit_from: LimitFrom, source: str) -> Bounds | None:
    """A window of a share of the value on either side, None where it is not declared."""
    if value is None:
        return None
    half = abs(value) * share
    return Bounds(value - half, value + half, limit_from, source)
