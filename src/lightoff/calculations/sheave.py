"""Which sheave gives the fan speed that is wanted."""

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
from lightoff.physics import sheave as sheaves

ADJUSTABLE = ("closed_diameter", "open_diameter", "open_turns")


def sheave(
    *,
    fan_speed: Number,
    wanted_fan_speed: Number,
    motor_sheave: Number,
    fan_sheave: Number,
    closed_diameter: Number,
    open_diameter: Number,
    open_turns: Number,
    max_fan_speed: Number,
) -> dict[str, Any]:
    """One sheave changed, the other staying; by the measured speed, so that slip is in it."""
    if motor_sheave is None and fan_sheave is None:
        raise CannotCalculateError("calc-missing", "motor_sheave")
    if max_fan_speed is not None and wanted_fan_speed > max_fan_speed:
        limit = float(max_fan_speed)
        raise CannotCalculateError("calc-wanted-over-wheel", "wanted_fan_speed", limit=limit)
    found: dict[str, Any] = {}
    speeds = {"speed": fan_speed, "wanted": wanted_fan_speed}
    if motor_sheave is not None:
        found["new_motor_sheave"] = sheaves.motor_sheave_for_speed(motor_sheave, **speeds)
        found |= _turned(found["new_motor_sheave"], closed_diameter, open_diameter, open_turns)
    if fan_sheave is not None:
        found["new_fan_sheave"] = sheaves.fan_sheave_for_speed(fan_sheave, **speeds)
    return found


def _turned(wanted: Number, closed: Number, opened: Number, turns: Number) -> dict[str, Any]:
    """Turns open, where the motor's sheave is an adjustable one."""
    missing = [name for name, value in zip(ADJUSTABLE, (closed, opened, turns), strict=True)
               if value is None]  # fmt: skip
    if len(missing) == len(ADJUSTABLE):
        return {}
    if missing:
        raise CannotCalculateError("calc-missing", missing[0])
    if not closed > opened:
        raise CannotCalculateError("calc-impossible", "open_diameter")
    per_turn = sheaves.diameter_per_turn(closed, opened, turns=turns)
    return {"turns_open": sheaves.turns_for_diameter(wanted, closed=closed, per_turn=per_turn)}


def remark(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """Out of the sheave's reach; locked in half turns; and what the motor will say."""
    turns = results.get("turns_open")
    notes = []
    if turns is not None and not 0 <= turns <= used["open_turns"]:
        notes.append(Note("calc-out-of-reach", {"least": used["open_diameter"],
                                                "most": used["closed_diameter"]}))  # fmt: skip
    elif turns is not None:
        notes.append(Note("calc-half-turns", {}, advice=True))
    if used["wanted_fan_speed"] > used["fan_speed"]:
        notes.append(Note("calc-amps-by-cube", {}, advice=True))
    return tuple(notes)


SHEAVE = Calculation(
    name="sheave",
    work=sheave,
    inputs=(
        Input("fan_speed", "rotational speed"),
        Input("wanted_fan_speed", "rotational speed"),
        Input("motor_sheave", "size", optional=True),
        Input("fan_sheave", "size", optional=True),
        Input("closed_diameter", "size", optional=True),
        Input("open_diameter", "size", optional=True),
        Input("open_turns", optional=True),
        Input("max_fan_speed", "rotational speed", optional=True),
    ),
    outputs=(
        Output("new_motor_sheave", "size"),
        Output("turns_open"),
        Output("new_fan_sheave", "size"),
    ),
    remark=remark,
)
