"""Quantities worked out from readings, in every run in which they can be."""

from collections.abc import Callable, Iterator

from lightoff.inference.estimate import Estimate, NoSuchStateError
from lightoff.judgement import airside, power
from lightoff.judgement.answer import DerivedRow, PointRow
from lightoff.judgement.efficiency import efficiency
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
                yield from _row(name, run, evidence, reckon)
        for furnace, level in firing(machine, run).items():
            for name, reckon in _of_furnace(furnace, level).items():
                yield from _row(f"{name}.{furnace}", run, evidence, reckon)


def _of_furnace(furnace: int, level: str) -> dict[str, Reckon]:
    of: dict[str, Reckon] = {
        "input": lambda evidence, run: _input(evidence, furnace, run),
        "rise": lambda evidence, run: airside.rise(evidence, furnace, run),
        "output": lambda evidence, run: airside.output(evidence, furnace, run),
        "efficiency": lambda evidence, run: efficiency(evidence, furnace, run),
        "co_air_free": lambda evidence, run: air_free_co(evidence, furnace, run),
    }
    if level == "low":
        of["turndown"] = lambda evidence, run: turndown(evidence, furnace, run)
    return of


def _input(evidence: Evidence, furnace: int, run: str) -> Estimate | Missing:
    burnt = furnace_input(evidence, furnace, run)
    return burnt.estimate if isinstance(burnt, Input) else burnt


def _row(name: str, run: str, evidence: Evidence, reckon: Reckon) -> Iterator[DerivedRow]:
    """The quantity, unless something is missing or its readings describe no machine."""
    try:
        found = reckon(evidence, run)
    except NoSuchStateError:
        return
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
