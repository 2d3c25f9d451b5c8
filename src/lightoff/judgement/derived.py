"""Quantities worked out from readings, in every run in which they can be."""

from collections.abc import Callable, Iterator

from lightoff.inference.estimate import Estimate, combine
from lightoff.judgement import airside, power
from lightoff.judgement.answer import DerivedRow, PointRow
from lightoff.judgement.evidence import Evidence, Missing
from lightoff.judgement.flue import air_free_co
from lightoff.judgement.gas_input import Input, furnace_input, turndown
from lightoff.machine import firing, points, runs

Reckon = Callable[[Evidence, str], Estimate | Missing]

_OF_UNIT: dict[str, Reckon] = {
    "airflow": airside.airflow,
    "rise.unit": airside.unit_rise,
    "shaft_power": power.shaft_power,
}
_OF_THREE_PHASES: dict[str, Reckon] = {
    "voltage_unbalance": power.voltage_unbalance,
    "current_unbalance": power.current_unbalance,
}


def derived_rows(evidence: Evidence) -> Iterator[DerivedRow]:
    """Every derived quantity that the readings give."""
    machine = evidence.machine
    of_unit = dict(_OF_UNIT) | (_OF_THREE_PHASES if machine.three_phase else {})
    for run in runs(machine):
        for name, reckon in of_unit.items():
            if name != "rise.unit" or run == "high":
                yield from _row(name, run, reckon(evidence, run))
        for furnace, level in firing(machine, run).items():
            yield from _of_furnace(evidence, furnace, run, level)


def _of_furnace(evidence: Evidence, furnace: int, run: str, level: str) -> Iterator[DerivedRow]:
    burnt = furnace_input(evidence, furnace, run)
    estimate = burnt.estimate if isinstance(burnt, Input) else burnt
    heat = airside.output(evidence, furnace, run)
    yield from _row(f"input.{furnace}", run, estimate)
    yield from _row(f"rise.{furnace}", run, airside.rise(evidence, furnace, run))
    yield from _row(f"output.{furnace}", run, heat)
    if isinstance(heat, Estimate) and isinstance(estimate, Estimate):
        share = combine(lambda a, b: a / b, heat, estimate)
        yield from _row(f"efficiency.{furnace}", run, share)
    yield from _row(f"co_air_free.{furnace}", run, air_free_co(evidence, furnace, run))
    if level == "low":
        yield from _row(f"turndown.{furnace}", run, turndown(evidence, furnace, run))


def _row(name: str, run: str, found: Estimate | Missing) -> Iterator[DerivedRow]:
    if isinstance(found, Estimate):
        yield DerivedRow(name, run, found.value, found.u)


def point_rows(evidence: Evidence) -> Iterator[PointRow]:
    """Every point that was read, as left; what only the model could say stays None."""
    everything = evidence.with_stale()
    for point in points(evidence.machine):
        for run in runs(evidence.machine):
            if not evidence.has(point.id, run):
                continue
            found = _measured(everything, point.id, run)
            yield PointRow(
                id=point.id,
                run=run,
                measured=found.value,
                measured_uncertainty=found.u,
                stale=evidence.stale(point.id, run),
            )


def _measured(evidence: Evidence, point: str, run: str) -> Estimate:
    """The last reading; an airflow as it flowed."""
    last = evidence.readings(point, run)[-1]
    if last.traverse is not None or last.standard:
        return airside.actual_airflow(evidence, last, run)
    return evidence.of(last)
