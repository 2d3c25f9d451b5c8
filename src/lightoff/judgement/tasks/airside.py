"""Airside: the fan's speed, the pressures along the unit, and the airflow."""

from collections.abc import Iterator

from lightoff.judgement.airside import AIRFLOW_POINTS
from lightoff.judgement.tasks.records import any_of, helping, read
from lightoff.judgement.tasks.task import Record, Work
from lightoff.machine import Machine

RUNS = ("fan", "high")


def _static(machine: Machine, _: int) -> Iterator[Record]:
    yield from read(machine, RUNS, "static.intake", "static.filters", "static.duct")
    yield from helping(read(machine, RUNS, "static.fan_in", "static.fan_out", "static.furnaces"))


def _airflow(machine: Machine, _: int) -> Iterator[Record]:
    """With what its density rests on."""
    yield from any_of(machine, RUNS, *AIRFLOW_POINTS)
    yield from read(machine, (), "air.outdoor.db")
    yield from helping(any_of(machine, (), "air.outdoor.rh", "air.outdoor.wb"))
    yield from helping(read(machine, (), "air.barometer"))


WORK = (
    Work(
        name="fan speed",
        step=4,
        minutes=4,
        records=lambda machine, _: (
            *read(machine, RUNS, "fan.rpm"),
            *helping(read(machine, RUNS, "motor.rpm")),
        ),
        needs=("volts and amps",),
        cautions=("caution-rotating",),
    ),
    Work(
        name="static pressures",
        step=4,
        minutes=8,
        records=_static,
        needs=("fan speed",),
        cautions=("caution-rotating", "caution-roof"),
    ),
    Work(
        name="airflow",
        step=4,
        minutes=20,
        records=_airflow,
        needs=("fan speed",),
        cautions=("caution-roof",),
    ),
)
