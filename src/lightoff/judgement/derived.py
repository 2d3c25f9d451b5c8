"""Quantities worked out from readings, in every run in which they can be."""

from collections.abc import Callable, Iterator

from lightoff.inference.estimate import Estimate, NoSuchStateError
from lightoff.judgement import airside, power
from lightoff.judgement.answer import DerivedRow
from lightoff.judgement.efficiency import efficiency
from lightoff.judgement.evidence import Evidence, Missing
from lightoff.judgement.flue import air_free_co
from lightoff.judgement.gas_input import Input, furnace_input, turndown
from lightoff.judgement.targets.where import at_high, at_low
from lightoff.judgement.together import Together
from lightoff.machine import Machine, fan_runs, firing, runs

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


OF_FURNACE = ("input", "rise", "output", "efficiency", "excess_air", "flue_dew_point")


def derived_rows(evidence: Evidence, together: Together | None) -> list[DerivedRow]:
    """Every derived quantity: as all readings together leave it, else as its own readings give it.

    The first only in runs that were read.
    """
    rows = {(row.run, row.id): row for row in _bare(evidence)}
    if together is not None:
        rows |= {(row.run, row.id): row for row in _told(evidence.machine, together)}
    order = {run: place for place, run in enumerate(runs(evidence.machine))}
    return [rows[key] for key in sorted(rows, key=lambda key: (order[key[0]], key[1]))]


def _told(machine: Machine, together: Together) -> Iterator[DerivedRow]:
    for run in together.found.runs:
        for name in _names(machine, run):
            told = together.told((name, run))
            if told is not None:
                yield DerivedRow(name, run, told.value, told.u)
    for furnace, _ in machine.numbered():
        yield from _turndown(machine, together, furnace)


def _names(machine: Machine, run: str) -> Iterator[str]:
    """What the model knows of a run beyond its points; a rise of the unit where all of it fires."""
    yield from ("airflow", "shaft_power", "voltage_unbalance", "current_unbalance")
    if run == "high":
        yield "rise.unit"
    for furnace in firing(machine, run) if fan_runs(run) else ():
        yield from (f"{name}.{furnace}" for name in OF_FURNACE)


def _turndown(machine: Machine, together: Together, furnace: int) -> Iterator[DerivedRow]:
    name, read = f"input.{furnace}", together.found.runs
    high = next((run for run in at_high(machine, furnace) if run in read), None)
    for low in at_low(machine, furnace):
        if high is None or low not in read:
            continue
        told = together.told((name, high), (name, low), by=lambda a, b: a / b)
        if told is not None:
            yield DerivedRow(f"turndown.{furnace}", low, told.value, told.u)


def _bare(evidence: Evidence) -> Iterator[DerivedRow]:
    """Every derived quantity that its own readings give."""
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
