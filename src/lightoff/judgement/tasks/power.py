"""Power: volts before closing, then each thing by itself, then the fan."""

from collections.abc import Iterator

from lightoff.judgement import power
from lightoff.judgement.tasks.records import helping, read, seen, timed
from lightoff.judgement.tasks.task import Record, Work
from lightoff.machine import Machine

LOCKED_OUT_WORK = (
    "wheel and housing",
    "belts",
    "filters and cabinet",
    "flues and combustion air",
    "condensate trap",
    "gas and orifices",
    "field wiring",
)


def _line_volts(machine: Machine, _: int) -> Iterator[Record]:
    ground = (f"power.volts.{leg}" for leg in ("ag", "bg", "cg"))
    yield from read(machine, ("off",), *power.volt_points(machine.three_phase))
    yield from helping(read(machine, ("off",), *ground))


def _fan_call(machine: Machine, _: int) -> Iterator[Record]:
    steps = ("call for fan", "damper opens", "end switch", "fan starts", "airflow proven")
    yield from seen(machine, "call.fan")
    yield from helping(timed(machine, 0, *steps, "fan runs on"))


def _volts_and_amps(machine: Machine, _: int) -> Iterator[Record]:
    """In the run with the fan alone; the same at high fire shows what warm air changes."""
    legs = (
        *power.volt_points(machine.three_phase),
        "power.control_volts",
        *power.amp_points(machine.three_phase),
    )
    yield from read(machine, ("fan", "high"), *legs, "vfd.hz", "vfd.volts")
    yield from helping(read(machine, ("fan", "high"), "motor.kw", "vfd.amps", "vfd.kw"))


WORK = (
    Work(
        name="line volts",
        step=3,
        minutes=6,
        records=_line_volts,
        needs=LOCKED_OUT_WORK,
        cautions=("caution-live",),
        licence="electrical",
    ),
    Work(
        name="overloads and transformer tap",
        step=3,
        minutes=4,
        records=lambda machine, _: seen(machine, "transformer.tap", "motor.overload_setting"),
        needs=("line volts",),
        cautions=("caution-lock-out",),
        licence="electrical",
    ),
    Work(
        name="control volts",
        step=3,
        minutes=3,
        records=lambda machine, _: read(machine, ("off",), "power.control_volts.unloaded"),
        needs=("overloads and transformer tap",),
        cautions=("caution-live",),
        licence="electrical",
    ),
    Work(
        name="damper",
        step=3,
        minutes=4,
        records=lambda machine, _: seen(machine, "damper.opens"),
        needs=("control volts",),
        cautions=("caution-rotating",),
    ),
    Work(
        name="rotation",
        step=3,
        minutes=5,
        records=lambda machine, _: seen(machine, "fan.rotation", "combustion_fan.rotation"),
        needs=("control volts",),
        cautions=("caution-bump", "caution-live"),
        licence="electrical",
    ),
    Work(
        name="call for fan",
        step=3,
        minutes=4,
        records=_fan_call,
        needs=("damper", "rotation"),
        cautions=("caution-rotating",),
    ),
    Work(
        name="volts and amps",
        step=3,
        minutes=8,
        records=_volts_and_amps,
        needs=("call for fan",),
        cautions=("caution-live", "caution-rotating"),
        licence="electrical",
    ),
)
