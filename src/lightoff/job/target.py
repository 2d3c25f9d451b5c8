"""Targets a job speaks of: limits it sets in place of the usual ones, and targets it puts off."""

from typing import Annotated, Any, Self

from pydantic import (
    AfterValidator,
    Field,
    PlainValidator,
    ValidationInfo,
    WithJsonSchema,
    model_validator,
)

from lightoff.job.names import PointId, Run
from lightoff.job.quantities import Of
from lightoff.job.table import Note, OneOf, Table, Text, unknown_word
from lightoff.judgement import TARGET_KINDS
from lightoff.machine.checks import CHECKS
from lightoff.machine.trips import TRIPS

DEFERRABLE = (
    *TARGET_KINDS,
    "tightness: joints",
    *(f"trip: {trip}" for trip in TRIPS),
    *(f"check: {check}" for check in CHECKS),
)
_ALSO_CALLED = {"rise": "temperature rise"}


def _target(name: str) -> str:
    found = _ALSO_CALLED.get(name, name)
    if found not in DEFERRABLE:
        raise unknown_word(name, "a target", [*DEFERRABLE, *_ALSO_CALLED])
    return found


def _bound(typed: object, info: ValidationInfo[Any]) -> float | None:
    target = info.data.get("target")
    if target is None:  # a target that is itself faulty has been told already
        return None
    return float(Of(TARGET_KINDS[target]).read(typed))


Target = Annotated[
    str,
    AfterValidator(_target),
    Field(examples=["temperature rise", "trip: high limit"]),
    Note("the id of a target"),
]
Bound = Annotated[
    float | None,
    PlainValidator(_bound),
    WithJsonSchema({"type": ["string", "number"], "examples": ["3.1 inwc", "7.2 %"]}),
    Note("a quantity of the target's kind"),
]


class Limit(Table):
    """A limit in place of the usual one."""

    target: Annotated[str, OneOf("a target with a limit in numbers", TARGET_KINDS)]
    point: Annotated[PointId | None, Note("every point of the target when not declared")] = None
    run: Annotated[Run | None, Note("every run of the target when not declared")] = None
    lower: Bound = None
    upper: Bound = None
    source: Annotated[Text | None, Note("who says so, such as the project specification")] = None

    @model_validator(mode="after")
    def _limits_something(self) -> Self:
        if self.lower is None and self.upper is None:
            raise ValueError("a limit needs lower, upper or both")
        if self.lower is not None and self.upper is not None and self.lower > self.upper:
            raise ValueError("lower is above upper: nothing could ever be within")
        return self
