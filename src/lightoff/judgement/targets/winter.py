"""The coldest day, foretold by the machine as its readings leave it."""

from collections.abc import Iterator

from lightoff.inference.told import Told
from lightoff.judgement import power
from lightoff.judgement.evidence import Missing
from lightoff.judgement.target import Case, Instance, Target, at_least, at_most
from lightoff.judgement.targets.electrical import amps_limit
from lightoff.machine import WINTER, Machine


def _amps(machine: Machine) -> Iterator[Instance]:
    for point in power.amp_points(machine.three_phase):
        yield Instance(point, (WINTER,), (point,), foretold=True)


def _discharge(machine: Machine) -> Iterator[Instance]:
    if machine.design.discharge is not None:
        yield Instance("air.discharge.db", (WINTER,), ("air.discharge.db",), foretold=True)


def _missing(case: Case) -> Missing:
    return Missing(case.instance.needs)


def _most_amps(case: Case) -> Told | None:
    """The worse of fan alone and all burners on: behind the furnaces cold air is the denser."""
    if case.together is None:
        return None
    point, outdoor = case.instance.point, case.machine.design.winter_outdoor
    both = (case.together.on_a_day(point, run, outdoor) for run in ("fan", "high"))
    return max((each for each in both if each), key=lambda told: told.value, default=None)


def _warmest(case: Case) -> Told | None:
    """The discharge with every burner at high fire."""
    if case.together is None:
        return None
    return case.together.on_a_day("discharge", "high", case.machine.design.winter_outdoor)


TARGETS = (
    Target(
        id="motor current",
        severity="note",
        kind="current",
        instances=_amps,
        estimate=_missing,
        told=_most_amps,
        by_model=True,
        bounds=lambda case: at_most(case.machine.motor.full_load_amps, "plate", "motor plate"),
    ),
    Target(
        id="motor current limit",
        severity="correct",
        kind="current",
        instances=_amps,
        estimate=_missing,
        told=_most_amps,
        by_model=True,
        bounds=amps_limit,
    ),
    Target(
        id="set point reached",
        severity="correct",
        kind="temperature",
        instances=_discharge,
        estimate=_missing,
        told=_warmest,
        by_model=True,
        bounds=lambda case: at_least(case.machine.design.discharge, "design", "design schedule"),
    ),
)
