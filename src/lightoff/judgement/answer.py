"""The answer: everything one assessment says, frozen and ready for JSON.

SI without prefixes; None where nothing is known or the engine does not reach yet.
"""

from dataclasses import asdict, dataclass, replace
from typing import Any, Literal

from lightoff.inference.conformity import Acceptance, Decision
from lightoff.inference.told import Uncertain
from lightoff.judgement.message import Message, Remark
from lightoff.judgement.target import LimitFrom
from lightoff.machine.visit import Severity

Verdict = Literal["not to be left running", "not ready", "ready, undecided points", "ready"]


@dataclass(frozen=True)
class BudgetLine:
    """One part of an uncertainty [SI]: its cause and what it belongs to."""

    cause: str
    of: str
    standard_uncertainty: float


@dataclass(frozen=True, kw_only=True)
class Row:
    """One target in one run.

    `measured` is what its own readings say, `estimate` what the decision was taken on; `kind` is
    the quantity of its numbers; `required` whether this visit's purpose asks for it;
    `unchecked` that nothing else stands behind it.
    """

    id: str
    point: str | None = None
    run: str | None = None
    decision: Decision
    measured: float | None = None
    estimate: float | None = None
    standard_uncertainty: float | None = None
    lower: float | None = None
    upper: float | None = None
    probability: float | None = None
    rule: Acceptance | None = None
    severity: Severity
    limit_from: LimitFrom | None = None
    source: str | None = None
    stale: bool = False
    why: Message
    furnace: int | None = None
    kind: str | None = None
    required: bool = True
    unchecked: bool = False
    caution: str | None = None
    budget: tuple[BudgetLine, ...] = ()

    @property
    def key(self) -> str:
        """What tells this row from every other of the same assessment."""
        return "|".join(str(x or "") for x in (self.id, self.point, self.run, self.furnace))


@dataclass(frozen=True)
class Judged:
    """A row, and the remark its limit called for."""

    row: Row
    remark: Remark | None = None


def with_estimate(row: Row, found: Uncertain | None, *, budgets: bool = True) -> Row:
    """The row with what was found, its uncertainty, and what that is made of."""
    if found is None:
        return row
    parts = found.budget() if budgets else ()
    return replace(
        row,
        estimate=found.value,
        standard_uncertainty=found.u,
        budget=tuple(BudgetLine(part.cause, part.of, size) for part, size in parts),
    )


@dataclass(frozen=True, kw_only=True)
class PointRow:
    """One point in one run that was read, by itself and by all readings together.

    `foretold` is what all other readings say of it. `read` is False where only they do.
    """

    id: str
    run: str
    measured: float | None = None
    estimate: float | None = None
    standard_uncertainty: float | None = None
    predicted_before: float | None = None
    standardised_residual: float | None = None
    redundancy: float | None = None
    detectable_bias: float | None = None
    checked_by: tuple[str, ...] | None = None
    suspect: bool | None = None
    foretold: float | None = None
    foretold_uncertainty: float | None = None
    measured_uncertainty: float | None = None
    stale: bool = False
    read: bool = True


@dataclass(frozen=True)
class DerivedRow:
    """A quantity worked out from readings."""

    id: str
    run: str
    estimate: float
    standard_uncertainty: float


@dataclass(frozen=True)
class UnknownRow:
    """One unknown of the machine, before and after, in its SI unit.

    `prior_sigma` is None where a start-up inspects it: nothing but the readings speaks then.
    """

    id: str
    unit: str
    prior: float
    prior_sigma: float | None
    estimate: float
    standard_uncertainty: float
    origin: str
    source: str


@dataclass(frozen=True)
class Fit:
    """How well one machine explains all readings; uncertainties are `widened` so many times.

    `condition` is 1 where every unknown moves readings by itself, large where some go together.
    """

    chi_square: float
    degrees_of_freedom: int
    p_value: float
    widened: float
    iterations: int
    converged: bool
    condition: float


@dataclass(frozen=True)
class CauseRow:
    """A cause with its probability; `speaks_for` and `against` are readings, as point and run, and
    signs, the weightiest first. `size` is how large it would be, in the cause's own measure.
    """

    id: str
    furnace: int | None
    point: str | None
    probability: float
    speaks_for: tuple[str, ...] = ()
    against: tuple[str, ...] = ()
    size: float | None = None


@dataclass(frozen=True)
class Assessment:
    """One visit, judged. `None` marks what the engine does not answer yet."""

    format: int
    unit: str
    visit: int
    engine: str
    verdict: Verdict
    remarks: tuple[Remark, ...]
    targets: tuple[Row, ...]
    points: tuple[PointRow, ...]
    as_found: tuple[Row, ...]
    derived: tuple[DerivedRow, ...]
    unknowns: tuple[UnknownRow, ...] | None = None
    fit: Fit | None = None
    causes: tuple[CauseRow, ...] | None = None
    next: None = None
    advice: None = None
    season: None = None

    def to_dict(self) -> dict[str, Any]:
        """The answer as plain lists and dictionaries."""
        told = asdict(self)
        for cause in told["causes"] or ():
            cause["for"] = cause.pop("speaks_for")
        return told
