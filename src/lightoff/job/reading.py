"""One reading: a point in a run, with its value or its traverse."""

import math
from typing import Annotated, Any, Literal, Self

from pydantic import Field, PlainValidator, ValidationInfo, WithJsonSchema, model_validator

from lightoff.job.moments import Moment
from lightoff.job.names import Carried, ReadPointId, Run
from lightoff.job.nearest import shown
from lightoff.job.possible import of_point
from lightoff.job.quantities import Number, Pressure, Size, Velocity, Volume
from lightoff.job.scope import scope_of
from lightoff.job.table import Note, Table, Text
from lightoff.machine.visit import State
from lightoff.quantity import Quantity

TRAVERSED = "duct.traverse"
Shape = Literal["rectangular", "round"]
_SIDES: dict[Shape, tuple[str, ...]] = {"rectangular": ("width", "height"), "round": ("diameter",)}


class Traverse(Table):
    """A duct traverse: the plane, and what the probe showed at each of its points."""

    shape: Annotated[Shape, Note("of the duct")]
    width: Annotated[Size | None, Note("of a rectangular duct, inside")] = None
    height: Annotated[Size | None, Note("of a rectangular duct, inside")] = None
    diameter: Annotated[Size | None, Note("of a round duct, inside")] = None
    pressures: Annotated[list[Pressure] | None, Field(min_length=1), Note("velocity pressures")] = (
        None
    )
    velocities: Annotated[
        list[Velocity] | None, Field(min_length=1), Note("instead of pressures")
    ] = None

    @model_validator(mode="after")
    def _is_one_plane(self) -> Self:
        given = tuple(
            side for side in ("width", "height", "diameter") if getattr(self, side) is not None
        )
        if given != _SIDES[self.shape]:
            due = " and ".join(_SIDES[self.shape])
            raise ValueError(f"a {self.shape} duct is given by its {due}, and by nothing else")
        if (self.pressures is None) == (self.velocities is None):
            raise ValueError(
                "a traverse holds either pressures or velocities: write one of the two"
            )
        return self

    @property
    def area(self) -> float:
        """The plane's area [m2]."""
        if self.diameter is not None:
            return math.pi / 4 * self.diameter**2
        return (self.width or 0.0) * (self.height or 0.0)


def _value(typed: object, info: ValidationInfo[Any]) -> Quantity | None:
    point = info.data.get("point", "")
    due = of_point(point)
    if due is None:  # a point that is itself faulty has been told already
        return None
    value = due.quantity(typed)
    plate = scope_of(info).flame_dimension(point)
    if plate is not None and value.dimension != plate:
        raise ValueError(
            f"{shown(typed)} is a {value.dimension}, but the plate gives this flame signal as a "
            f"{plate}: write it in the plate's unit"
        )
    return value


class Reading(Table):
    """One reading, as typed; the order of readings is the order in time where `at` is missing."""

    run: Run
    point: ReadPointId
    value: Annotated[
        Quantity | None,
        PlainValidator(_value),
        WithJsonSchema({"type": ["string", "number"], "examples": ["3.12 inwc", "7.2 %"]}),
        Note("a quantity of the point's kind, with its unit"),
    ] = None
    instrument: Carried | None = None
    at: Moment | None = None
    state: Annotated[State | None, Note("told from the adjustments when not declared")] = None
    position: Annotated[Text | None, Note("which of several probes")] = None
    dial: Annotated[Volume | None, Note("of gas.meter.seconds: what one turn passes")] = None
    revolutions: Annotated[Number | None, Note("of gas.meter.seconds: turns in all")] = None
    main_fan: Annotated[bool, Note("false when a flue was read with the main fan stopped")] = True
    traverse: Annotated[Traverse | None, Note(f"of {TRAVERSED}, instead of value")] = None
    note: Text | None = None

    @model_validator(mode="after")
    def _says_one_thing(self) -> Self:
        if self.traverse is not None and self.point != TRAVERSED:
            raise ValueError(f"only {TRAVERSED} is read by a traverse: write value instead")
        if (self.value is None) == (self.traverse is None):
            also = " or traverse, one of the two" if self.point == TRAVERSED else ""
            raise ValueError(f"a reading of {self.point} needs its value{also}")
        return self
