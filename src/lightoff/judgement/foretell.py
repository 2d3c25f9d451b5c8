"""What every point would show in a run, on any day: by the plate alone, or as its readings say."""

from collections.abc import Iterator
from dataclasses import asdict, dataclass
from typing import Any

from lightoff.judgement.derived import OF_FURNACE
from lightoff.judgement.evidence import evidence
from lightoff.judgement.fits import Fits
from lightoff.judgement.history import history
from lightoff.judgement.named import kind_told
from lightoff.judgement.retaken import retaken
from lightoff.judgement.together import Together, together
from lightoff.machine import Machine, Visit, canonical, fan_runs, firing, foretells, points
from lightoff.machine.model.expect import expect
from lightoff.machine.model.predict import Condition, predict
from lightoff.machine.model.rated import rate
from lightoff.machine.model.unknowns import unknowns

OUTDOORS = "air.outdoor.db"


@dataclass(frozen=True)
class ForetoldRow:
    """A point or derived quantity [SI]; `standard_uncertainty` with what is not known yet."""

    id: str
    kind: str
    value: float
    standard_uncertainty: float


@dataclass(frozen=True)
class Foretold:
    """One run, foretold; `by_readings` where the readings of a visit speak for the machine.

    `outcome` says whether the machine works as it should there; where it cannot, there are no rows.
    """

    unit: str
    run: str
    outdoor: float | None
    by_readings: bool
    outcome: str
    rows: tuple[ForetoldRow, ...]

    def to_dict(self) -> dict[str, Any]:
        """As plain lists and dictionaries."""
        return asdict(self)


def foretell(
    machine: Machine,
    visit: Visit | None,
    run: str,
    outdoor: float | None = None,
    fits: Fits | None = None,
) -> Foretold:
    """What every point would show in a run at an outdoor temperature [K].

    The machine is as the readings of the visit leave it; without any, as its plate says.
    """
    name = canonical(machine, run)
    model = None if visit is None else as_left(machine, visit, fits)
    day = {} if outdoor is None else {OUTDOORS: outdoor}
    found, outcome = _values(machine, model, name, day)
    rows = tuple(
        ForetoldRow(each, kind_told(each), *found[each])
        for each in _names(machine, name)
        if each in found
    )
    return Foretold(machine.unit.tag, name, outdoor, model is not None, outcome, rows)


def as_left(machine: Machine, visit: Visit, fits: Fits | None = None) -> Together | None:
    """The machine as the readings of a visit leave it; None where they tell nothing of it."""
    told = evidence(machine, visit, history(machine, visit))
    return together(told, retaken(told), fits)


def _values(
    machine: Machine, model: Together | None, run: str, day: dict[str, float]
) -> tuple[dict[str, tuple[float, float]], str]:
    """Value and uncertainty of everything, and how the machine fares."""
    rated = rate(machine)
    expected = {each.id: each.mean for each in unknowns(rated)}
    fitted = model.found if model is not None else None
    known = fitted.values() if fitted else expected
    fares = predict(rated, known, Condition(run, day))
    if not fares.shown:
        return {}, fares.outcome
    if fitted is None:
        return {name: (e.value, e.u) for name, e in expect(rated, run, day).items()}, fares.outcome
    there = fitted.elsewhere(run, day)
    return {name: (q.value, fitted.u(q)) for name, q in there.items()}, fares.outcome


def _names(machine: Machine, run: str) -> Iterator[str]:
    """The points and derived quantities of a run."""
    for point in points(machine):
        if foretells(machine, point, run):
            yield point.id
    if fan_runs(run):
        yield from ("airflow.standard", "shaft_power", "rise.unit")
        for furnace in firing(machine, run):
            yield from (f"{name}.{furnace}" for name in OF_FURNACE)
