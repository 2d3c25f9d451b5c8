"""The plan of a visit: what to carry, what it should read, what is ready and what waits."""

import datetime as dt
from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass
from typing import Any

from lightoff.judgement.answer import Assessment
from lightoff.judgement.assess import ENGINE, assess
from lightoff.judgement.message import Message, message
from lightoff.judgement.plan.carry import Carry, carry
from lightoff.judgement.plan.expectation import expectation, is_weather, weather_read
from lightoff.judgement.plan.gauges import GaugeUse, gauge_uses
from lightoff.judgement.plan.rehearsal import Rehearsal, rehearsal
from lightoff.judgement.plan.taking import DUCT_VELOCITY, duct_area
from lightoff.judgement.plan.windows import Window, windows
from lightoff.judgement.tasks import Progress, progress
from lightoff.machine import Machine, Visit, runs
from lightoff.machine.visit import Purpose

FORMAT = 1


@dataclass(frozen=True)
class Plan:
    """One visit, looked at beforehand or on the way.

    `minutes` is what is left of the work; `weather` what the expected values were worked out for,
    as far as it was told; `unsettled` how many targets do not conform or are undecided so far.
    """

    format: int
    unit: str
    visit: int
    engine: str
    purpose: Purpose
    minutes: float
    weather: Mapping[str, float]
    carry: tuple[Carry, ...]
    gauges: tuple[GaugeUse, ...]
    windows: tuple[Window, ...]
    tasks: tuple[Progress, ...]
    unsettled: int
    remarks: tuple[Message, ...]

    def to_dict(self) -> dict[str, Any]:
        """The plan as plain lists and dictionaries."""
        return asdict(self)


def plan(
    machine: Machine,
    visit: Visit,
    *,
    on: dt.date | None = None,
    weather: Mapping[str, float] | None = None,
    answer: Assessment | None = None,
) -> Plan:
    """The plan of one visit to one machine; pure, and the same every time.

    `on` is the day of calibrations, the visit's own where it has one; `weather` is expected, by
    point, until it is read; `answer` the visit's answer where it is at hand.
    """
    rows = (answer or assess(machine, visit, whole=False)).targets
    told = progress(machine, visit, rows)
    every = [each.task for each in told]
    said = {point: value for point, value in (weather or {}).items() if is_weather(point, value)}
    outdoors = {**said, **weather_read(machine, visit)}
    expected = expectation(machine, runs(machine), outdoors)
    gone_through = rehearsal(machine, visit, every, expected)
    return Plan(
        format=FORMAT,
        unit=machine.unit.tag,
        visit=visit.number,
        engine=ENGINE,
        purpose=visit.purpose,
        minutes=sum(each.task.minutes for each in told if each.state != "done"),
        weather=outdoors,
        carry=carry(visit, every, visit.date or on),
        gauges=gauge_uses(gone_through),
        windows=windows(gone_through, expected),
        tasks=told,
        unsettled=sum(row.decision in ("does not conform", "undecided") for row in rows),
        remarks=(
            *(message("plan-no-balance", run=run) for run in expected.no_balance),
            *_assumed(visit, gone_through),
        ),
    )


def _assumed(visit: Visit, told: Rehearsal) -> Iterator[Message]:
    """The speed in a duct that nobody has measured."""
    if duct_area(visit) is None and any(each.reading.traverse for each in told.readings):
        yield message("plan-duct-velocity", speed=DUCT_VELOCITY)
