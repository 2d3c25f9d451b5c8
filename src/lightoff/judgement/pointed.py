"""Every point of every run that was read: by its own reading, and by all of them together."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace

from lightoff.inference.estimate import Estimate, NoSuchStateError
from lightoff.inference.reconcile import Reconciled, Taken
from lightoff.inference.reliability import noncentrality
from lightoff.inference.suspects import level
from lightoff.judgement import airside
from lightoff.judgement.answer import PointRow
from lightoff.judgement.evidence import Evidence
from lightoff.judgement.together import UNCHECKED, Together
from lightoff.machine import foretells, points, runs

CHECKS = 0.2  # [1] correlation of two readings' residuals from which on one checks the other
MOST = 3  # readings named as a check

Key = tuple[str, str]  # run, point


def point_rows(evidence: Evidence, together: Together | None, *, whole: bool) -> list[PointRow]:
    """A row for each point read, as left; where `whole`, also for each that was not read."""
    rows = {(row.run, row.id): row for row in _read(evidence)}
    if together is not None:
        rows |= {key: _told(together, row) for key, row in rows.items() if not row.stale}
        rows |= _checked(together, rows)
        if whole:
            rows |= _unread(evidence, together, rows)
            rows = _foreseen(together, rows)
    order = [
        (run, point.id) for point in points(evidence.machine) for run in runs(evidence.machine)
    ]
    return [rows[key] for key in order if key in rows]


def _read(evidence: Evidence) -> Iterator[PointRow]:
    everything = evidence.with_stale()
    for point in points(evidence.machine):
        for run in runs(evidence.machine):
            if evidence.has(point.id, run):
                found = _measured(everything, point.id, run)
                yield PointRow(
                    id=point.id,
                    run=run,
                    measured=None if found is None else found.value,
                    measured_uncertainty=None if found is None else found.u,
                    stale=evidence.stale(point.id, run),
                )


def _measured(evidence: Evidence, point: str, run: str) -> Estimate | None:
    """The last reading; an airflow as it flowed."""
    last = evidence.readings(point, run)[-1]
    try:
        if last.traverse is not None or last.standard:
            return airside.actual_airflow(evidence, last, run)
        return evidence.of(last)
    except NoSuchStateError:
        return None


def _told(together: Together, row: PointRow) -> PointRow:
    """The row with what all readings say of its point."""
    told = together.told((row.id, row.run))
    if told is None:
        return row
    turns = together.turns(row.id, row.run)
    return replace(row, estimate=turns * told.value, standard_uncertainty=turns * told.u)


def _checked(together: Together, rows: Mapping[Key, PointRow]) -> dict[Key, PointRow]:
    """Rows of what the fit looked at, with how well the other readings check each."""
    found = {}
    for i, taken in enumerate(together.found.taken):  # of repeats the last one speaks
        key = (taken.run, together.point_of(taken))
        if key in rows:
            found[key] = _check(together.found, i, rows[key], together)
    for misfit in together.misfits:
        for taken in misfit.taken:
            key = (taken.run, together.point_of(taken))
            if key in rows:
                found[key] = _suspect(together, taken, rows[key])
    return found


def _check(found: Reconciled, place: int, row: PointRow, together: Together) -> PointRow:
    """A reading held against all others, all of them being of this fit."""
    taken, posterior = found.taken[place], found.posterior
    checked, redundancy = posterior.checked(place), posterior.redundancy(place)
    if redundancy < UNCHECKED:
        return replace(row, redundancy=redundancy, checked_by=(), suspect=False)
    scale = _scale(row, taken)
    return replace(
        row,
        standardised_residual=posterior.standardised(place),
        redundancy=redundancy,
        detectable_bias=scale * noncentrality(level(len(found.taken))) / checked**0.5,
        checked_by=_checks(found, place, together),
        suspect=False,
        foretold=scale * (taken.estimate.value - found.solution.pull[place] / checked),
        foretold_uncertainty=abs(scale)
        * max(1 / checked - found.readings.u[place] ** 2, 0.0) ** 0.5,
    )


def _suspect(together: Together, taken: Taken, row: PointRow) -> PointRow:
    """A reading that does not fit: what those say that do, without it."""
    place = next(i for i, each in enumerate(together.whole.taken) if each == taken)
    row = replace(_check(together.whole, place, row, together), suspect=True)
    told = together.found.told((taken.point, taken.run))
    if told is None:
        return row
    scale = _scale(row, taken)
    return replace(
        row, foretold=scale * told.value, foretold_uncertainty=abs(scale) * told.u,
        standardised_residual=(taken.estimate.value - told.value)
        / math.hypot(told.u, taken.estimate.u),
    )  # fmt: skip


def _scale(row: PointRow, taken: Taken) -> float:
    """A reading as it was read over the same in the model's terms."""
    value = taken.estimate.value
    return (row.measured or 0.0) / value if _rescaled(row) and value else 1.0


def _rescaled(row: PointRow) -> bool:
    """Whether the model takes a reading in other terms: standard airflow, one turn of a dial."""
    return row.id in (*airside.AIRFLOW_POINTS, "gas.meter.seconds")


def _checks(found: Reconciled, place: int, together: Together) -> tuple[str, ...]:
    """The other readings that check one, the strongest first: point and run."""
    posterior, own = found.posterior, found.taken[place]
    shares: dict[str, float] = {}
    for other, taken in enumerate(found.taken):
        whole = (posterior.checked(place) * posterior.checked(other)) ** 0.5
        share = abs(posterior.weight(place, other)) / whole if whole > 0 else 0.0
        if share > CHECKS and (taken.run, taken.point) != (own.run, own.point):
            name = f"{together.point_of(taken)} {taken.run}"
            shares[name] = max(share, shares.get(name, 0.0))
    # rounded, so that no last digit puts one before another
    order = sorted(shares, key=lambda name: (-round(shares[name], 6), name))
    return tuple(order[:MOST])


def _unread(
    evidence: Evidence, together: Together, rows: Mapping[Key, PointRow]
) -> dict[Key, PointRow]:
    """What all readings say of the points that were not read, in every run that was."""
    found = {}
    for run in together.found.runs:
        for point in points(evidence.machine):
            known = (run, point.id) in rows or not foretells(evidence.machine, point, run)
            told = None if known else together.told((point.id, run))
            if told is not None:
                found[run, point.id] = PointRow(
                    id=point.id, run=run, estimate=told.value, standard_uncertainty=told.u,
                    read=False,
                )  # fmt: skip
    return found


def _foreseen(together: Together, rows: Mapping[Key, PointRow]) -> dict[Key, PointRow]:
    """The rows with what each point should have shown in the weather of the day."""
    foreseen = {run: together.foreseen(run) for run in together.found.runs}
    return {
        (run, point): replace(row, predicted_before=foreseen.get(run, {}).get(point))
        for (run, point), row in rows.items()
    }
