"""A decision against the truth: whether what was judged truly lies within the row's own limits."""

from collections.abc import Callable, Iterator, Mapping
from typing import NamedTuple

from lightoff.inference.estimate import COVERAGE
from lightoff.judgement.answer import Row
from plant.plant import Plant
from plant.si import STANDARD_AIR

True_ = Mapping[str, float]
WINTER = "winter"
UNLESS_PROVEN = ("input",)  # it conforms with the manifold at plate, unless it is provably off
MADE = ("conforms", "does not conform", "undecided")
# what is not simply the true value at the row's point
OTHERWISE: dict[str, Callable[[True_], float]] = {
    "airflow": lambda true: true["airflow"] * true["density.duct"] / STANDARD_AIR,
    "filter drop": lambda true: true["static.intake"] - true["static.filters"],
    "discharge sensor": lambda true: true["air.discharge.sensor"] - true["air.discharge.db"],
    "CO in the discharge": lambda true: true["air.discharge.co"] - true["air.intake.co"],
}


class Decided(NamedTuple):
    """One decision. `past` is the limit that the truth lies beyond, of a simply accepted target by
    more than the expanded uncertainty; `off` its distance from the estimate in standard ones.
    """

    target: str
    point: str
    run: str
    severity: str
    rule: str
    decision: str
    past: str
    off: float

    @property
    def outside(self) -> bool:
        return self.past != ""

    @property
    def false(self) -> bool:
        """Said to conform, and does not."""
        return self.outside and self.decision == "conforms"


def decisions(rows: tuple[Row, ...], plant: Plant, runs: Mapping[str, True_]) -> Iterator[Decided]:
    """Every decision of which the truth is told."""
    told = {**runs, WINTER: winter(plant)}
    for row in rows:
        true = _true(row, plant, told.get(row.run or "", {}))
        if true is None or row.decision not in MADE:
            continue
        assert row.estimate is not None
        assert row.standard_uncertainty is not None
        u = row.standard_uncertainty
        off = (true - row.estimate) / u if u else 0.0
        yield Decided(
            row.id, row.point or "", row.run or "", row.severity, row.rule or "", row.decision,
            _past(row, true, u), off,
        )  # fmt: skip


def _true(row: Row, plant: Plant, true: True_) -> float | None:
    """None where the plant does not tell it: the share of belts in a motor's power it keeps."""
    if row.id == "shaft power" and plant.declared.drive.belt:
        return None
    try:
        return OTHERWISE[row.id](true) if row.id in OTHERWISE else true.get(row.point or "")
    except KeyError:
        return None


def _past(row: Row, true: float, u: float) -> str:
    """Which limit; a target accepted with its whole uncertainty is past it by more than that."""
    accepted = row.rule == "simple" or row.id in UNLESS_PROVEN
    more = COVERAGE * u if accepted else 0.0
    if row.upper is not None and true > row.upper + more:
        return "upper"
    return "lower" if row.lower is not None and true < row.lower - more else ""


def winter(plant: Plant) -> dict[str, float]:
    """The design day: high fire's discharge, the most amps of high fire and fan alone."""
    high, fan = (plant.state(run, plant.winter()) for run in ("high", "fan"))
    amps = {name: max(high[name], fan[name]) for name in high if name.startswith("motor.amps")}
    return {"air.discharge.db": high["air.discharge.db"], **amps}
