"""A belt drive as it stands: length, wrap, speeds, and the deflection that shows the tension."""

from collections.abc import Mapping
from typing import Any

from lightoff.calculations.calculation import (
    Calculation,
    CannotCalculateError,
    Input,
    Note,
    Output,
)
from lightoff.formula import Number
from lightoff.physics import belt as drive
from lightoff.physics.constants import FOOT
from lightoff.physics.sheave import belt_fan_speed

SMALLEST_WRAP = 120.0  # degrees on either sheave; common practice, no source
FASTEST = 6500 * FOOT / 60  # [m/s] for plain cast iron sheaves; RMA/MPTA manuals (from memory)


def belt(
    *,
    motor_sheave: Number,
    fan_sheave: Number,
    shaft_centres: Number,
    belt_length: Number,
    motor_speed: Number,
    belt_slip: Number,
    belt_force: Number,
) -> dict[str, Any]:
    """Geometry by the centres, or the centres by the belt's length."""
    sheaves = {"motor_sheave": motor_sheave, "fan_sheave": fan_sheave}
    apart, found = _centres(sheaves, shaft_centres, belt_length)
    lean = drive.belt_lean(centres=apart, **sheaves)
    span = drive.belt_span(centres=apart, **sheaves)
    deflection = drive.belt_deflection(span)
    found |= {
        "motor_wrap": drive.degrees(drive.wrap_angle(lean)),
        "fan_wrap": drive.degrees(drive.fan_wrap_angle(lean)),
        "span": span,
        "deflection": deflection,
    }
    if belt_force is not None:
        found["belt_pull"] = drive.belt_tension(belt_force, deflection=deflection, span=span)
    if motor_speed is not None:
        found["driven_speed"] = belt_fan_speed(motor_speed, slip=belt_slip, **sheaves)
        found["belt_speed"] = drive.belt_speed(motor_sheave, motor_speed)
    return found


def _centres(
    sheaves: dict[str, Number], centres: Number, length: Number
) -> tuple[Number, dict[str, Any]]:
    """The distance of the shafts, and what was found of it and the length."""
    if (centres is None) == (length is None):
        raise CannotCalculateError("calc-centres-or-length", "shaft_centres")
    apart, place = centres, "shaft_centres"
    if centres is None:
        apart, place = drive.centres_of_length(length, **sheaves), "belt_length"
    touching = sum(map(float, sheaves.values())) / 2
    if not apart > touching:
        raise CannotCalculateError("calc-sheaves-touch", place, least=touching)
    if centres is None:
        return apart, {"centre_distance": apart}
    return apart, {"pitch_length": drive.belt_length(centres=apart, **sheaves)}


def remark(_used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """What a belt does not stand, and when to look at it again."""
    wrap, speed = min(results["motor_wrap"], results["fan_wrap"]), results.get("belt_speed", 0.0)
    notes = []
    if wrap < SMALLEST_WRAP:
        notes.append(Note("calc-small-wrap", {"wrap": wrap, "least": SMALLEST_WRAP}))
    if speed > FASTEST:
        notes.append(Note("calc-fast-belt", {"speed": speed, "limit": FASTEST}))
    return (*notes, Note("calc-belt-locked-out", {}), Note("calc-belt-again", {}, advice=True))


BELT = Calculation(
    name="belt",
    work=belt,
    inputs=(
        Input("motor_sheave", "size"),
        Input("fan_sheave", "size"),
        Input("shaft_centres", "size", optional=True),
        Input("belt_length", "size", optional=True),
        Input("motor_speed", "rotational speed", optional=True),
        Input("belt_slip", "fraction", default=0.01, most=1.0),
        Input("belt_force", "force", optional=True),
    ),
    outputs=(
        Output("pitch_length", "size"),
        Output("centre_distance", "size"),
        Output("motor_wrap", "angle"),
        Output("fan_wrap", "angle"),
        Output("span", "size"),
        Output("deflection", "size"),
        Output("belt_pull", "force"),
        Output("driven_speed", "rotational speed"),
        Output("belt_speed", "velocity"),
    ),
    remark=remark,
)
