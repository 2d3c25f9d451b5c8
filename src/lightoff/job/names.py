"""Fields that name something of the unit: runs, points, settings, trips, checks, steps."""

from typing import Annotated, Any

from pydantic import AfterValidator, Field, ValidationInfo

from lightoff.job.possible import of_point
from lightoff.job.scope import scope_of
from lightoff.job.table import Note, OneOf, unknown_word
from lightoff.machine import setting_kind
from lightoff.machine.checks import CHECKS
from lightoff.machine.points import known_ids
from lightoff.machine.sequence import STEPS
from lightoff.machine.settings import known_settings
from lightoff.machine.trips import TRIPS

Info = ValidationInfo[Any]


def _run(name: str, info: Info) -> str:
    return scope_of(info).run(name)


def _point(point_id: str) -> str:
    # a point that only other units have is kept: that is a remark, not a fault
    if of_point(point_id) is None:
        raise unknown_word(point_id, "a point", known_ids())
    return point_id


def _read_point(point_id: str, info: Info) -> str:
    if run := info.data.get("run"):
        scope_of(info).readable(point_id, run)
    return point_id


def _setting(setting: str) -> str:
    try:
        setting_kind(setting)
    except KeyError:
        raise unknown_word(setting, "a setting", known_settings()) from None
    return setting


def _carried(name: str, info: Info) -> str:
    return scope_of(info).instrument(name)


def _furnace(number: int, info: Info) -> int:
    return scope_of(info).furnace(number)


def _trip_furnace(number: int | None, info: Info) -> int | None:
    trip = info.data.get("id")
    if trip is None:
        return number
    return scope_of(info).own_furnace(number, trip) if TRIPS[trip][0] else None


def _step_furnace(number: int | None, info: Info) -> int | None:
    step, scope = info.data.get("id"), scope_of(info)
    if step is None:
        return number
    return None if scope.is_unit_step(step) else scope.own_furnace(number, step)


Run = Annotated[
    str, AfterValidator(_run), Field(examples=["high", "low.2"]), Note("a run of this unit")
]
PointId = Annotated[
    str,
    AfterValidator(_point),
    Field(examples=["gas.supply", "train.1.1.manifold"]),
    Note("the id of a point"),
]
ReadPointId = Annotated[PointId, AfterValidator(_read_point)]
SettingId = Annotated[
    str,
    AfterValidator(_setting),
    Field(examples=["train.1.1.manifold", "vfd.hz"]),
    Note("the id of a setting"),
]
Carried = Annotated[str, AfterValidator(_carried), Note("the id of a declared instrument")]
FurnaceNumber = Annotated[int, AfterValidator(_furnace), Note("the number of a furnace, from 1")]
TripFurnace = Annotated[FurnaceNumber | None, AfterValidator(_trip_furnace)]
StepFurnace = Annotated[FurnaceNumber | None, AfterValidator(_step_furnace)]
TripId = Annotated[str, OneOf("a trip", TRIPS)]
CheckId = Annotated[str, OneOf("a check", CHECKS)]
StepId = Annotated[str, OneOf("a step of the sequence", STEPS)]
