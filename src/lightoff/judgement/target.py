"""What a target is: what it applies to, what is allowed, what was found, how it is decided."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from typing import Literal

from lightoff.inference.conformity import Acceptance, Decision
from lightoff.inference.estimate import Estimate
from lightoff.judgement.evidence import Evidence, Missing
from lightoff.judgement.message import Message
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
    `needs` the points whose reading makes a row.
    """

    point: str
    runs: tuple[str, ...]
    needs: tuple[str, ...]
    furnace: int | None = None
    train: int | None = None


@dataclass(frozen=True)
class Case:
    """One instance in one run, with the evidence of one state."""

    machine: Machine
    instance: Instance
    run: str
    evidence: Evidence

    @property
    def furnace(self) -> int:
        return self.instance.furnace or 1


@dataclass(frozen=True)
class Ruling:
    """A decision, the rule it was taken by, and why."""

    decision: Decision
    rule: Acceptance
    why: Message
    unchecked: bool = False


Judge = Callable[[Case, Bounds, list[Estimate]], Ruling | None]


@dataclass(frozen=True)
class Target:
    """One row of the trade's table. A new target is one of these, in the file of its topic.

    `estimate` says what was found in a case, `bounds` what is allowed (None where only the maker
    could say, and does not). `judge` replaces the usual rule where it returns a ruling.
    """

    id: str
    severity: Severity
    kind: str
    instances: Callable[[Machine], Iterator[Instance]]
    estimate: Callable[[Case], Estimate | Missing]
    bounds: Callable[[Case], Bounds | None]
    caution: str | None = None
    judge: Judge | None = None
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
