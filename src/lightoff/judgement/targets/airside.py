"""Fan speed, airflow, static pressure, filters and belts."""

from collections.abc import Callable, Iterator

from lightoff.inference.estimate import Estimate, combine
from lightoff.judgement.airside import AIRFLOW_POINTS, airflow
from lightoff.judgement.evidence import Missing
from lightoff.judgement.target import (
    COMMON_PRACTICE,
    Case,
    Instance,
    Target,
    about,
    at_most,
    plate_range,
    reading,
)
from lightoff.judgement.targets.where import fan_and_high
from lightoff.machine import Machine

InstancesOf = Callable[[Machine], Iterator[Instance]]
DESIGN = "design schedule; tolerance common practice, no source"


def _simple(point: str) -> InstancesOf:
    return lambda machine: iter([Instance(point, fan_and_high(machine), (point,))])


def _airflow(machine: Machine) -> Iterator[Instance]:
    yield Instance("airflow", fan_and_high(machine), AIRFLOW_POINTS)


def _belt(point: str) -> InstancesOf:
    def instances(machine: Machine) -> Iterator[Instance]:
        if machine.drive.kind == "belt":
            yield Instance(point, ("off",), (point,))

    return instances


def filter_drop(case: Case) -> Estimate | Missing:
    """Drop across the filters [Pa]: before them less after them."""
    before = case.evidence.get("static.intake", case.run)
    after = case.evidence.get("static.filters", case.run)
    if before is None or after is None:
        names = {"static.intake": before, "static.filters": after}
        return Missing(tuple(name for name, read in names.items() if read is None))
    return combine(lambda a, b: a - b, before, after)


def _filter_instance(machine: Machine) -> Iterator[Instance]:
    yield Instance("static.filters", fan_and_high(machine), ("static.filters",))


TARGETS = (
    Target(
        id="fan speed",
        severity="note",
        kind="rotational speed",
        instances=_simple("fan.rpm"),
        estimate=reading,
        bounds=lambda case: about(case.machine.fan.speed, 0.05, "design", DESIGN),
        caution="caution-rotating",
    ),
    Target(
        id="fan speed maximum",
        severity="stop",
        kind="rotational speed",
        instances=_simple("fan.rpm"),
        estimate=reading,
        bounds=lambda case: at_most(case.machine.fan.max_speed, "plate", "fan plate"),
        caution="caution-rotating",
    ),
    Target(
        id="airflow",
        severity="correct",
        kind="airflow",
        instances=_airflow,
        estimate=lambda case: airflow(case.evidence, case.run),
        told=lambda case: case.told("airflow.standard"),
        bounds=lambda case: about(case.machine.design.airflow, 0.10, "design", DESIGN),
    ),
    Target(
        id="external static",
        severity="correct",
        kind="pressure",
        instances=_simple("static.duct"),
        estimate=reading,
        bounds=lambda case: about(case.machine.design.external_static, 0.10, "design", DESIGN),
    ),
    Target(
        id="filter drop",
        severity="correct",
        kind="pressure",
        instances=_filter_instance,
        estimate=filter_drop,
        told=lambda case: case.told("static.intake", "static.filters", by=lambda a, b: a - b),
        bounds=lambda case: at_most(
            case.machine.airside.filters_change, "plate", "filter change value"
        ),
    ),
    Target(
        id="belt tension",
        severity="correct",
        kind="force",
        instances=_belt("belt.force"),
        estimate=reading,
        bounds=lambda case: plate_range(case.machine.drive.belt_force),
        caution="caution-rotating",
    ),
    Target(
        id="belt alignment",
        severity="correct",
        kind="angle",
        instances=_belt("belt.angle"),
        estimate=reading,
        bounds=lambda _: at_most(0.5, "common practice", COMMON_PRACTICE),
        caution="caution-rotating",
    ),
)
