"""Controls, the building, and everything before one leaves."""

from collections.abc import Iterator

from lightoff.judgement.tasks import trips
from lightoff.judgement.tasks.airside import RUNS
from lightoff.judgement.tasks.records import declared, helping, read, seen
from lightoff.judgement.tasks.task import Record, Work
from lightoff.machine import Machine

DOORS = ("door.unlatch", "door.start", "door.open")


def _calls(machine: Machine, _: int) -> Iterator[Record]:
    yield from seen(machine, "call.heat", "call.cool", "call.exhaust")
    yield Record("set point", ("discharge",), due=False)


WORK = (
    Work(
        name="discharge sensor",
        step=10,
        minutes=4,
        records=lambda machine, _: (
            *seen(machine, "sensor.in_duct"),
            *read(machine, RUNS, "air.discharge.sensor", "air.discharge.db"),
        ),
        needs=("airflow",),
        cautions=("caution-roof",),
    ),
    Work(
        name="calls and set points",
        step=10,
        minutes=8,
        records=_calls,
        needs=("train pressures", "discharge sensor"),
    ),
    Work(
        name="stage delay and post-purge",
        step=10,
        minutes=3,
        records=lambda machine, n: declared(machine, n, "stage delay", "post purge"),
        needs=("train pressures",),
        tools=("stopwatch",),
        each_furnace=True,
    ),
    Work(
        name="building pressure and doors",
        step=11,
        minutes=12,
        records=lambda machine, _: (
            *read(machine, ("high",), "building.pressure", *DOORS),
            *helping(read(machine, ("high",), "exhaust.airflow")),
        ),
        needs=("airflow", "everything on"),
    ),
    Work(
        name="spillage",
        step=11,
        minutes=6,
        records=lambda machine, _: seen(machine, "spillage.none"),
        needs=("pilots relit",),
        cautions=("caution-co",),
    ),
    Work(
        name="joints again",
        step=12,
        minutes=5,
        records=lambda _, n: (Record("joint", (), furnace=n),),
        needs=("train pressures", "flue at high fire", "flue at low fire", "clocking",
               "high gas", "low gas", "everything on"),
        cautions=("caution-soap", "caution-gas"),
        licence="gas",
        tools=("leak detector",),
        each_furnace=True,
        last=True,
    ),
    Work(
        name="covers and seals",
        step=12,
        minutes=6,
        records=lambda machine, _: seen(machine, "covers.on", "adjusters.sealed"),
        needs=("joints again", "temperature rise", "discharge carbon monoxide", *trips.NAMES,
               "calls and set points", "stage delay and post-purge",
               "building pressure and doors", "spillage"),
        cautions=("caution-rotating", "caution-first"),
        last=True,
    ),
    Work(
        name="handover",
        step=12,
        minutes=12,
        records=lambda _machine, _n: (Record("handover", ("told",)), Record("handover", ("left",))),
        needs=("covers and seals",),
        cautions=("caution-first",),
        last=True,
    ),
)  # fmt: skip
