"""Dry run, first firing and everything read while it burns, furnace by furnace.

What puts the flame out comes before any long run: flame failure, airflow proving, high limit.
"""

from collections.abc import Iterator

from lightoff.judgement.airside import AIRFLOW_POINTS
from lightoff.judgement.tasks.records import (
    any_of,
    at_high,
    at_low,
    each_train,
    helping,
    in_which_high,
    read,
    seen,
    timed,
    tripped,
)
from lightoff.judgement.tasks.task import Leading, Record, Work
from lightoff.machine import Machine

FAN_READY = ("volts and amps", "static pressures", "airflow")


def _dry_run(machine: Machine, n: int) -> Iterator[Record]:
    steps = ("call for heat", "combustion fan starts", "combustion air proven")
    yield from helping(timed(machine, n, *steps))
    yield from timed(machine, n, "purge", "ignition trial")
    yield from tripped(machine, "combustion air proving", n)


def _first_firing(machine: Machine, n: int) -> Iterator[Record]:
    yield from helping(timed(machine, n, "flame proven", "burner off"))
    yield from tripped(machine, "flame failure", n)
    yield from timed(machine, n, "flame failure")


def _train_pressures(machine: Machine, n: int) -> Iterator[Record]:
    outlet, manifold, signal = (
        each_train(machine, n, f"train.{{n}}.{{m}}.{name}")
        for name in ("outlet", "manifold", "signal")
    )
    yield from read(machine, at_high(machine, n), *outlet, *manifold)
    if low := at_low(machine, n):
        yield from read(machine, low, *manifold)
    yield from helping(read(machine, at_high(machine, n), *signal))


def _clocking(machine: Machine, n: int) -> Iterator[Record]:
    """Waited for where a meter is declared; without one the manifold alone tells the input."""
    there = at_high(machine, n)
    dial = read(machine, there, "gas.meter.seconds")
    yield from dial if machine.site.meter_dial is not None else helping(dial)
    beside = ("gas.meter.pressure", "gas.meter.db", "gas.meter.other_flow")
    yield from helping(read(machine, there, *beside))


def _flue_at_high(machine: Machine, n: int) -> Iterator[Record]:
    there, plate = at_high(machine, n), machine.furnace(n)
    yield from read(machine, there, f"flue.{n}.o2", f"flue.{n}.co", f"flue.{n}.db")
    for point, limit in (
        (f"flue.{n}.draft", plate.flue_draft),
        (f"furnace.{n}.flame", plate.flame_signal),
        (f"furnace.{n}.proving_pressure", plate.proving_pressure),
    ):
        asked = read(machine, there, point)
        yield from asked if limit is not None else helping(asked)
    beside = (f"flue.{n}.combustion_air.db", f"furnace.{n}.combustion_fan.rpm", f"flue.{n}.co2")
    yield from helping(read(machine, there, *beside))


def _flue_at_low(machine: Machine, n: int) -> Iterator[Record]:
    if there := at_low(machine, n):
        yield from any_of(machine, there, f"flue.{n}.o2", f"flue.{n}.co2")
        yield from read(machine, there, f"flue.{n}.co")
        yield from helping(read(machine, there, f"flue.{n}.db"))


def _discharge_co(machine: Machine, n: int) -> Iterator[Record]:
    yield from read(machine, (), "air.intake.co")
    yield from read(machine, in_which_high(machine, n), "air.discharge.co")


def _temperatures(machine: Machine, _: int) -> Iterator[Record]:
    """Across each furnace with all of them at high fire; the discharge is after the last."""
    before = ["air.entering.db"]
    if machine.airside.recirculation == 0:
        before.append("air.outdoor.db")
    between = (f"air.after.{number}.db" for number, _ in machine.numbered()[:-1])
    yield from any_of(machine, ("high",), *before)
    yield from read(machine, ("high",), *between, "air.discharge.db")
    last = f"air.after.{len(machine.furnaces)}.db"
    yield from helping(read(machine, ("high",), last, "air.return.db"))
    yield from helping(any_of(machine, ("high",), *AIRFLOW_POINTS))


WORK = (
    Work(
        name="dry run",
        step=6,
        minutes=6,
        records=_dry_run,
        needs=(*FAN_READY[:1], "flues and combustion air", "condensate trap"),
        cautions=("caution-dry-run", "caution-trip"),
        tools=("stopwatch",),
        licence="gas",
        each_furnace=True,
    ),
    Work(
        name="first firing and flame failure",
        step=7,
        minutes=6,
        records=_first_firing,
        needs=("dry run", *FAN_READY, "lock-up", "piping tested and purged"),
        cautions=("caution-first-firing", "caution-gas", "caution-co", "caution-trip"),
        tools=("stopwatch", "leak detector"),
        licence="gas",
        each_furnace=True,
    ),
    Work(
        name="airflow proving",
        step=7,
        minutes=4,
        records=lambda machine, _: tripped(machine, "airflow proving"),
        needs=(Leading("first firing and flame failure"),),
        cautions=("caution-trip",),
    ),
    Work(
        name="high limit",
        step=7,
        minutes=6,
        records=lambda machine, n: tripped(machine, "high limit", n),
        needs=("first firing and flame failure",),
        cautions=("caution-high-limit", "caution-hot", "caution-trip"),
        tools=("thermometer",),
        each_furnace=True,
    ),
    Work(
        name="discharge carbon monoxide",
        step=7,
        minutes=3,
        records=_discharge_co,
        needs=("high limit", "airflow proving"),
        cautions=("caution-co",),
        each_furnace=True,
    ),
    Work(
        name="train pressures",
        step=7,
        minutes=10,
        records=_train_pressures,
        needs=("high limit", "airflow proving"),
        cautions=("caution-gas-port", "caution-turning-gas", "caution-gas"),
        licence="gas",
        each_furnace=True,
    ),
    Work(
        name="clocking",
        step=7,
        minutes=5,
        records=_clocking,
        needs=("train pressures",),
        cautions=("caution-pilots",),
        tools=("stopwatch",),
        each_furnace=True,
    ),
    Work(
        name="flue at high fire",
        step=7,
        minutes=10,
        records=_flue_at_high,
        needs=("train pressures",),
        cautions=("caution-co", "caution-hot"),
        each_furnace=True,
    ),
    Work(
        name="flue at low fire",
        step=7,
        minutes=6,
        records=_flue_at_low,
        needs=("train pressures",),
        cautions=("caution-co", "caution-hot"),
        each_furnace=True,
    ),
    Work(
        name="temperature rise",
        step=7,
        minutes=6,
        records=_temperatures,
        needs=("train pressures",),
        cautions=("caution-hot",),
    ),
    Work(
        name="pilots relit",
        step=8,
        minutes=4,
        records=lambda machine, _: seen(machine, "pilots.relit"),
        needs=("train pressures", "clocking"),
        cautions=("caution-pilots", "caution-gas"),
        licence="gas",
    ),
    Work(
        name="everything on",
        step=8,
        minutes=6,
        records=lambda machine, _: (
            *read(machine, ("high",), "gas.supply"),
            *read(machine, ("all",), "gas.supply"),
        ),
        needs=("pilots relit",),
        cautions=("caution-gas", "caution-gas-port"),
        licence="gas",
    ),
)
