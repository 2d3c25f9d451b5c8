"""The visit held against the unit: points it does not have, times, the barometer, the meter."""

import re
from collections.abc import Iterator
from math import hypot, isclose

from lightoff.inference.estimate import COVERAGE
from lightoff.judgement.answer import Verdict
from lightoff.judgement.evidence import Evidence
from lightoff.judgement.gas_input import turned as volume_turned
from lightoff.judgement.message import Remark
from lightoff.machine import Machine, Visit, checks, points, sequence, settings, trips
from lightoff.physics.atmosphere import altitude_of_pressure, barometric_pressure

BAROMETER = 0.035  # [1] further from the altitude's pressure than any weather; five stations
SAME = 1e-3  # [1] two dials that are one
LEAST_CLOCKING = 60.0  # [s] a meter is timed over; [cp]


def on_visit(
    machine: Machine, visit: Visit, evidence: Evidence, verdict: Verdict
) -> Iterator[Remark]:
    """Remarks on what was done."""
    yield from _not_of_this_unit(machine, visit)
    yield from _times(visit)
    yield from _barometer(machine, visit)
    yield from _meter(visit, evidence)
    yield from _uphill(evidence)
    if visit.left == "running" and verdict == "not to be left running":
        yield Remark(f"visit.{visit.number}.left", "left-running-refused", {})


def _not_of_this_unit(machine: Machine, visit: Visit) -> Iterator[Remark]:
    """Points, settings, checks, trips and steps this unit does not have."""
    here = {point.id for point in points(machine)}
    for reading in visit.readings:
        if reading.point not in here:
            yield Remark(f"{reading.place}.point", "not-of-this-unit", {"name": reading.point})
    turned_here = settings(machine)
    for turned in visit.adjustments:
        if turned.what not in turned_here:
            yield Remark(f"{turned.place}.what", "not-of-this-unit", {"name": turned.what})
    made = {
        **{check.place: check.id for check in visit.checks if check.id not in checks(machine)},
        **{
            proof.place: proof.id
            for proof in visit.trips
            if proof.id not in {trip.id for trip in trips(machine)}
        },
        **{
            timed.place: timed.id
            for timed in visit.steps
            if timed.id not in {step.id for step in sequence(machine)}
        },
    }
    for place, name in made.items():
        yield Remark(f"{place}.id", "not-of-this-unit", {"name": name})


def _times(visit: Visit) -> Iterator[Remark]:
    """Times that run backwards, or fall on another day than the visit's."""
    clock = None
    for reading in visit.readings:
        if reading.at is None:
            continue
        if clock is not None and reading.at < clock:
            yield Remark(f"{reading.place}.at", "times-out-of-order", {"before": clock.isoformat()})
        clock = reading.at
    for reading in visit.readings:
        early = [a for a in visit.adjustments if reading.at is not None and a.at < reading.at]
        if reading.state == "as found" and any(a.what == reading.point for a in early):
            yield Remark(f"{reading.place}.state", "found-after-adjustment", {})


def _barometer(machine: Machine, visit: Visit) -> Iterator[Remark]:
    """Altitude against barometer: most often a weather report, reduced to sea level."""
    expected = float(barometric_pressure(machine.site.altitude))
    for reading in visit.readings:
        if reading.point != "air.barometer" or not reading.value:
            continue
        if abs(reading.value - expected) > BAROMETER * expected:
            values = {
                "read": reading.value,
                "expected": expected,
                "altitude": machine.site.altitude,
                "as_altitude": float(altitude_of_pressure(reading.value)),
            }
            yield Remark(f"{reading.place}.value", "altitude-against-barometer", values)


def _meter(visit: Visit, evidence: Evidence) -> Iterator[Remark]:
    """A meter is clocked over whole turns and at least a minute."""
    for reading in visit.readings:
        if reading.point != "gas.meter.seconds" or reading.value is None:
            continue
        if reading.revolutions is not None and reading.revolutions % 1:
            yield Remark(f"{reading.place}.revolutions", "not-whole-turns", {})
        if reading.value < LEAST_CLOCKING:
            yield Remark(f"{reading.place}.value", "clocked-briefly", {"seconds": reading.value})
        if volume_turned(evidence, reading) is None:
            yield Remark(f"{reading.place}.dial", "no-dial", {})
        dial, said = reading.dial, evidence.machine.site.meter_dial
        if dial is not None and said is not None and not isclose(dial, said, rel_tol=SAME):
            values = {"dial": dial, "site": said, "times": said / dial}
            yield Remark(f"{reading.place}.dial", "another-dial", values)


def _uphill(evidence: Evidence) -> Iterator[Remark]:
    """Gas goes from the supply through the valve to the orifice, each pressure below the last."""
    for run, point in evidence.history.state(evidence.state):
        furnace, train = _train(point)
        if train is None:
            continue
        above = ("gas.supply", f"train.{furnace}.{train}.outlet")
        here = evidence.get(point, run)
        for other in above[: 1 if point.endswith("outlet") else 2]:
            there = evidence.get(other, run)
            if here is None or there is None:
                continue
            if here.value - there.value > COVERAGE * hypot(here.u, there.u):
                values = {"point": point, "run": run, "value": here.value, "other": other,
                          "above": there.value}  # fmt: skip
                place = evidence.readings(point, run)[-1].place
                yield Remark(f"{place}.value", "gas-uphill", values)
                break


def _train(point: str) -> tuple[int | None, int | None]:
    """The furnace and train whose pressure a point is."""
    found = re.fullmatch(r"train\.(\d)\.(\d)\.(outlet|manifold)", point)
    return (int(found[1]), int(found[2])) if found else (None, None)
