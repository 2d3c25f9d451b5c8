"""Points: every place a probe is put, generated from the configuration.

A point's id is fixed by the job format; its kind says how it is asked for and shown.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from lightoff.machine.machine import Machine
from lightoff.machine.runs import firing

GROUPS = ("power", "airside", "air", "gas supply", "furnace", "building")


@dataclass(frozen=True)
class Point:
    """One place to measure: id, kind of quantity, group, and the furnace and train it is of."""

    id: str
    kind: str
    group: str
    furnace: int | None = None
    train: int | None = None


# id, kind; furnace points carry {n}, train points {m} as well
_POWER = {
    "power.control_volts": "voltage",
    "power.control_volts.unloaded": "voltage",
    "motor.kw": "electric power",
    "motor.rpm": "rotational speed",
}
_THREE_PHASE = {f"power.volts.{leg}": "voltage" for leg in ("ab", "bc", "ca", "ag", "bg", "cg")} | {
    f"motor.amps.{leg}": "current" for leg in ("a", "b", "c")
}
_LEAD = re.compile(r"(?<=^power\.volts)\.[abcg]{2}$|(?<=^motor\.amps)\.[abc]$")
_SINGLE_PHASE = {"power.volts": "voltage", "motor.amps": "current"}
_VFD = {
    "vfd.hz": "frequency",
    "vfd.volts": "voltage",
    "vfd.amps": "current",
    "vfd.kw": "electric power",
}
_AIRSIDE = {
    "fan.rpm": "rotational speed",
    "static.intake": "pressure",
    "static.filters": "pressure",
    "static.fan_in": "pressure",
    "static.fan_out": "pressure",
    "static.furnaces": "pressure",
    "static.duct": "pressure",
    "duct.traverse": "airflow",
    "duct.hood_total": "airflow",
    "filter.face_total": "airflow",
}
_BELT = {"belt.force": "force", "belt.deflection": "size", "belt.angle": "angle"}
_AIR = {
    "air.barometer": "absolute pressure",
    "air.outdoor.db": "temperature",
    "air.outdoor.wb": "temperature",
    "air.outdoor.rh": "fraction",
    "air.return.db": "temperature",
    "air.entering.db": "temperature",
    "air.discharge.db": "temperature",
    "air.discharge.sensor": "temperature",
    "air.intake.co": "concentration",
    "air.discharge.co": "concentration",
}
_AFTER = {"air.after.{n}.db": "temperature"}
_GAS = {
    "gas.supply": "pressure",
    "gas.meter.seconds": "time",
    "gas.meter.pressure": "pressure",
    "gas.meter.db": "temperature",
    "gas.meter.other_flow": "gas flow",
}
_TRAIN = {
    "train.{n}.{m}.outlet": "pressure",
    "train.{n}.{m}.manifold": "pressure",
    "train.{n}.{m}.signal": "fraction",
}
_FURNACE = {
    "furnace.{n}.orifice": "size",
    "flue.{n}.o2": "fraction",
    "flue.{n}.co2": "fraction",
    "flue.{n}.co": "concentration",
    "flue.{n}.db": "temperature",
    "flue.{n}.draft": "pressure",
    "flue.{n}.combustion_air.db": "temperature",
    "furnace.{n}.combustion_fan.rpm": "rotational speed",
    "furnace.{n}.proving_pressure": "pressure",
    "furnace.{n}.flame": "flame signal",
}
_BUILDING = {
    "building.pressure": "pressure",
    "door.unlatch": "force",
    "door.start": "force",
    "door.open": "force",
    "exhaust.airflow": "airflow",
}

_TABLES = (
    _POWER, _THREE_PHASE, _SINGLE_PHASE, _VFD, _AIRSIDE, _BELT, _AIR, _AFTER, _GAS, _TRAIN,
    _FURNACE, _BUILDING,
)  # fmt: skip

# what may be read of a furnace that is not firing
_READ_COLD = re.compile(
    r"flue\.\d\.db|train\.\d\.\d\.manifold|furnace\.\d\.combustion_fan\.rpm|furnace\.\d\.orifice"
)


def points(machine: Machine) -> tuple[Point, ...]:
    """Every point this unit has, in the order of the groups."""
    return tuple(_generate(machine))


def _generate(machine: Machine) -> Iterator[Point]:
    yield from _rows(_THREE_PHASE if machine.three_phase else _SINGLE_PHASE, "power")
    yield from _rows(_POWER, "power")
    if machine.drive.vfd:
        yield from _rows(_VFD, "power")
    yield from _rows(_AIRSIDE, "airside")
    if machine.drive.kind == "belt":
        yield from _rows(_BELT, "airside")
    for point in _rows(_AIR, "air"):
        if point.id != "air.return.db" or machine.airside.recirculation > 0:
            yield point
    yield from _rows(_GAS, "gas supply")
    for number, furnace in machine.numbered():
        yield from _rows(_AFTER, "air", number)
        for train in range(1, len(furnace.trains) + 1):
            yield from _rows(_TRAIN, "furnace", number, train)
        yield from _rows(_FURNACE, "furnace", number)
    yield from _rows(_BUILDING, "building")


def _rows(
    table: dict[str, str], group: str, furnace: int | None = None, train: int | None = None
) -> Iterator[Point]:
    for pattern, kind in table.items():
        yield Point(pattern.format(n=furnace, m=train), kind, group, furnace, train)


@lru_cache(maxsize=512)  # asked of every reading, many times over
def kind_of(point_id: str) -> str | None:
    """The kind of a point any unit could have, or None when no unit has such a point."""
    if "{" in point_id:  # a pattern of the tables, not an id
        return None
    generic = re.sub(r"^(train)\.[1-9]\.[1-9]\.", r"\1.{n}.{m}.", point_id)
    generic = re.sub(r"^(flue|furnace|air\.after)\.[1-9]\.", r"\1.{n}.", generic)
    return next((table[generic] for table in _TABLES if generic in table), None)


def of_any_lead(point_id: str) -> str:
    """The point itself, but one id for all leads of one supply or one motor."""
    return _LEAD.sub("", point_id)


def known_ids() -> list[str]:
    """Every point id of units with up to three furnaces of two trains, to find the nearest."""
    return [
        pattern.format(n=n, m=m)
        for table in _TABLES
        for pattern in table
        for n in ((1, 2, 3) if "{n}" in pattern else (1,))
        for m in ((1, 2) if "{m}" in pattern else (1,))
    ]


def readable(machine: Machine, point: Point, run: str) -> bool:
    """Whether `point` means anything in `run`: a cold furnace has no flame to read."""
    if point.furnace is None or point.id.startswith("air.after"):
        return True
    return point.furnace in firing(machine, run) or bool(_READ_COLD.fullmatch(point.id))


def foretells(machine: Machine, point: Point, run: str) -> bool:
    """Whether `point` has a value to foretell in `run`: a meter that stands still has none."""
    if point.id == "gas.meter.seconds":
        return bool(firing(machine, run))
    return readable(machine, point, run)
