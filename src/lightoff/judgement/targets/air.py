"""Temperature rise, discharge, efficiency and the unit's own sensor."""

from collections.abc import Iterator

from lightoff.inference.estimate import Estimate, combine
from lightoff.judgement.airside import AIRFLOW_POINTS, rise, unit_rise
from lightoff.judgement.efficiency import efficiency
from lightoff.judgement.evidence import Missing
from lightoff.judgement.target import (
    COMMON_PRACTICE,
    UNIT_PLATE,
    Bounds,
    Case,
    Instance,
    Target,
    at_most,
    of_its_own,
    plate_range,
)
from lightoff.judgement.targets.where import at_high, fan_and_high
from lightoff.machine import Machine
from lightoff.quantity import si

SENSOR = si(2, "degF")  # [K] sensor against probe; [cp]
EFFICIENCY = 0.03  # [1] points of efficiency about the plate's; [cp]


def _rises(machine: Machine) -> Iterator[Instance]:
    last = len(machine.furnaces)
    for number, _ in machine.numbered():
        needs: tuple[str, ...] = (f"air.after.{number}.db",)
        if number == last:
            needs = (*needs, "air.discharge.db")
        yield Instance(f"rise.{number}", at_high(machine, number), needs, furnace=number)
    yield Instance("rise.unit", ("high",), ("air.discharge.db",))


def _rise(case: Case) -> Estimate | Missing:
    if case.instance.furnace is None:
        return unit_rise(case.evidence, case.run)
    return rise(case.evidence, case.furnace, case.run)


def _rise_bounds(case: Case) -> Bounds | None:
    """A furnace's own window; for the unit the sum of them all."""
    if case.instance.furnace is not None:
        return plate_range(case.machine.furnace(case.furnace).rise)
    windows = [f.rise for f in case.machine.furnaces if f.rise is not None]
    if len(windows) < len(case.machine.furnaces):
        return None
    return plate_range((sum(low for low, _ in windows), sum(high for _, high in windows)))


def _discharge_bounds(case: Case) -> Bounds | None:
    declared = [f.max_outlet for f in case.machine.furnaces if f.max_outlet is not None]
    return at_most(min(declared, default=None), "plate", UNIT_PLATE)


def _discharge(_: Machine) -> Iterator[Instance]:
    yield Instance("air.discharge.db", ("high",), ("air.discharge.db",))


def _hottest(case: Case) -> Estimate | Missing:
    """The hottest of the probe's positions: no part of the stream may pass the limit."""
    latest = case.evidence.latest("air.discharge.db", case.run)
    reads = [case.evidence.of(each) for each in latest]
    return max(reads, key=lambda each: each.value) if reads else Missing(("air.discharge.db",))


def _efficiencies(machine: Machine) -> Iterator[Instance]:
    for number, _ in machine.numbered():
        there = at_high(machine, number)
        needs = (*AIRFLOW_POINTS, f"flue.{number}.db")
        yield Instance(f"efficiency.{number}", there, needs, furnace=number)


def _efficiency_bounds(case: Case) -> Bounds | None:
    plate = case.machine.furnace(case.furnace).efficiency
    if plate is None:
        return None
    return Bounds(plate - EFFICIENCY, plate + EFFICIENCY, "plate", UNIT_PLATE)


def _sensor_instances(machine: Machine) -> Iterator[Instance]:
    point, beside = "air.discharge.sensor", ("air.discharge.db",)
    yield Instance(point, fan_and_high(machine), (point,), beside=beside)


def _sensor(case: Case) -> Estimate | Missing:
    """What the sensor shows less what a probe held beside it reads [K].

    The sensor's own error is what is sought, so only its last digit counts as uncertain; air that
    is not mixed is the same for both.
    """
    points = ("air.discharge.sensor", "air.discharge.db")
    sensor, probe = (case.evidence.get(point, case.run) for point in points)
    if sensor is None or probe is None:
        reads = zip(points, (sensor, probe), strict=True)
        return Missing(tuple(point for point, read in reads if read is None))
    return combine(
        lambda a, b: a - b, _only(sensor, {"resolution"}), _without(probe, {"unmixed air"})
    )


def _only(estimate: Estimate, causes: set[str]) -> Estimate:
    return Estimate(estimate.value, {p: u for p, u in estimate.parts.items() if p.cause in causes})


def _without(estimate: Estimate, causes: set[str]) -> Estimate:
    kept = {p: u for p, u in estimate.parts.items() if p.cause not in causes}
    return Estimate(estimate.value, kept)


TARGETS = (
    Target(
        id="temperature rise",
        severity="correct",
        kind="temperature difference",
        instances=_rises,
        estimate=_rise,
        bounds=_rise_bounds,
        caution="caution-hot",
    ),
    Target(
        id="discharge temperature",
        severity="stop",
        kind="temperature",
        instances=_discharge,
        estimate=_hottest,
        told=of_its_own,
        bounds=_discharge_bounds,
        caution="caution-hot",
    ),
    Target(
        id="thermal efficiency",
        severity="note",
        kind="fraction",
        instances=_efficiencies,
        estimate=lambda case: efficiency(case.evidence, case.furnace, case.run),
        bounds=_efficiency_bounds,
        by_model=True,
    ),
    Target(
        id="discharge sensor",
        severity="correct",
        kind="temperature difference",
        instances=_sensor_instances,
        estimate=_sensor,
        told=of_its_own,
        bounds=lambda _: Bounds(-SENSOR, SENSOR, "common practice", COMMON_PRACTICE),
    ),
)
