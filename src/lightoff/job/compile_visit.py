"""One declared visit as the frozen visit the engine works on, with all that holds for it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import UTC, datetime, tzinfo
from typing import TYPE_CHECKING, Any, TypeVar

from lightoff.job.compile_machine import filled
from lightoff.job.reading import Reading, Traverse
from lightoff.job.table import Table
from lightoff.job.visit import Decay, Visit
from lightoff.machine import visit as seen

if TYPE_CHECKING:
    from lightoff.job.job import Job

T = TypeVar("T")
NO_SOURCE = "the job"
MINUTE = 60.0  # [s]


def visit(job: Job, number: int) -> seen.Visit:
    """Visit `number` of the job; before the first visit, a blank one."""
    declared = job.visits[number - 1] if job.visits else Visit()
    place = f"visit.{number}"
    zone = _zone(declared)
    return filled(
        seen.Visit,
        declared,
        number=number,
        rule=job.decision.rule,
        symptoms=_rows(seen.Symptom, declared.symptoms, f"{place}.symptom"),
        readings=tuple(_readings(declared.readings, place, zone)),
        adjustments=tuple(_adjustments(declared, place, zone)),
        trips=_rows(seen.TripProof, declared.trips, f"{place}.trip"),
        checks=_rows(seen.CheckMade, declared.checks, f"{place}.check"),
        steps=_rows(seen.StepTimed, declared.steps, f"{place}.step"),
        joints=_rows(seen.Joint, declared.joints, f"{place}.joint"),
        decays=tuple(_decays(declared.decays, place)),
        setpoints=_rows(seen.SetPoint, declared.setpoints, f"{place}.setpoint"),
        deficiencies=_rows(seen.Deficiency, declared.deficiencies, f"{place}.deficiency"),
        deferred=_rows(seen.Deferred, declared.deferred, f"{place}.deferred"),
        instruments=tuple(_instruments(job)),
        limits=tuple(_limits(job)),
    )


def _instruments(job: Job) -> Iterator[seen.Instrument]:
    for instrument in job.instruments:
        channels = tuple(filled(seen.Channel, channel) for channel in instrument.channels)
        yield filled(seen.Instrument, instrument, channels=channels)


def _limits(job: Job) -> Iterator[seen.Limit]:
    for number, limit in enumerate(job.limits, start=1):
        source = limit.source or NO_SOURCE
        yield filled(seen.Limit, limit, place=f"limit.{number}", source=source)


def _rows(kind: type[T], tables: Sequence[Table], place: str) -> tuple[T, ...]:
    return tuple(
        filled(kind, table, place=f"{place}.{n}") for n, table in enumerate(tables, start=1)
    )


def _readings(readings: Sequence[Reading], place: str, zone: tzinfo) -> Iterator[seen.Reading]:
    for line, reading in enumerate(readings, start=1):
        value, traverse = reading.value, reading.traverse
        yield filled(
            seen.Reading,
            reading,
            line=line,
            place=f"{place}.reading.{line}",
            at=_aware(reading.at, zone),
            value=None if value is None else value.value,
            standard=value is not None and value.unit == "scfm",
            step=0.0 if value is None else value.step,
            traverse=None if traverse is None else _traverse(traverse),
        )


def _traverse(traverse: Traverse) -> seen.Traverse:
    return seen.Traverse(
        shape=traverse.shape,
        area=traverse.area,
        pressures=tuple(traverse.pressures or ()),
        velocities=tuple(traverse.velocities or ()),
    )


def _decays(decays: Sequence[Decay], place: str) -> Iterator[seen.Decay]:
    for number, decay in enumerate(decays, start=1):
        yield filled(
            seen.Decay,
            decay,
            place=f"{place}.decay.{number}",
            start=decay.start.value,
            end=decay.end.value,
            duration=decay.minutes * MINUTE,
            resolution=min(decay.start.last_digit, decay.end.last_digit),
        )


def _adjustments(declared: Visit, place: str, zone: tzinfo) -> Iterator[seen.Adjustment]:
    for line, adjustment in enumerate(declared.adjustments, start=1):
        yield filled(
            seen.Adjustment,
            adjustment,
            line=line,
            place=f"{place}.adjustment.{line}",
            at=_aware(adjustment.at, zone),
        )


def _zone(declared: Visit) -> tzinfo:
    """The offset of the visit: of the first time that has one, else UTC."""
    timed: list[Any] = [*declared.readings, *declared.adjustments]
    zones = (row.at.tzinfo for row in timed if row.at is not None)
    return next((zone for zone in zones if zone is not None), UTC)


def _aware(at: datetime | None, zone: tzinfo) -> datetime | None:
    # all times of a visit must compare, whether their offset was typed or not
    return at if at is None or at.tzinfo is not None else at.replace(tzinfo=zone)
