"""The motor's amps after a change of fan speed: by its plate, or in proportion."""

from collections.abc import Mapping
from typing import Any

from lightoff.formula import Number
from lightoff.physics.fan_amps import (
    amps_in_proportion,
    frequency_after,
    load_by_fan_law,
    volts_ratio,
)
from lightoff.physics.frequency_drive import drive_volts, volts_in_step
from lightoff.physics.motor import input_at_load, load_of_input
from lightoff.physics.motor_current import motor_amps, motor_input, plate_power_factor

PLATE = ("motor_power", "motor_efficiency", "motor_volts", "full_load_amps")


def by_plate(given: Mapping[str, Any]) -> bool:
    """Whether the plate tells enough to part the amps that work from those that do not."""
    return all(given[name] is not None for name in PLATE)


def amps_after(given: Mapping[str, Any], n: Number, r: Number) -> dict[str, Any]:
    """Frequency and amps afterwards, as far as they follow from what they are before.

    On a drive the volts move with the hertz, unless the change is one of sheaves.
    """
    before, amps = given["frequency"], given["motor_amps"]
    after = before
    if given["new_frequency"] is not None:
        after = given["new_frequency"]
    elif before is not None and given["new_motor_sheave"] is None:
        after = frequency_after(before, n)
    found = {} if before is None or after is given["new_frequency"] else {"frequency_after": after}
    if amps is None:
        return found
    if by_plate(given):
        return found | {"amps_after": _by_plate(given, n, r, (before, after))}
    v = 1.0
    if before is not None:
        v = volts_ratio(before, after, base_frequency=given["base_frequency"])
    moved = amps_in_proportion(amps, speed_ratio=n, density_ratio=r, volts_ratio=v)
    return found | {"amps_after": moved}


def _by_plate(
    given: Mapping[str, Any], n: Number, r: Number, hertz: tuple[Number, Number]
) -> Number:
    """Amps to electric power to load; the load by the fan law; and the same way back."""
    motor = {"rated_power": given["motor_power"], "efficiency": given["motor_efficiency"]}
    line = {"rated_amps": given["full_load_amps"], "phases": given["phases"]}
    line["power_factor"] = plate_power_factor(**motor, rated_volts=given["motor_volts"], **line)
    old, new = (_volts(given, each) for each in hertz)
    load = load_of_input(motor_input(amps=given["motor_amps"], **line, **old), **motor)
    moved = load_by_fan_law(load, speed_ratio=n, density_ratio=r)
    return motor_amps(input_at_load(moved, **motor), **line, **new)


def _volts(given: Mapping[str, Any], frequency: Number) -> dict[str, Number]:
    """Volts at the motor, the plate's on the line too, and those that would keep its flux."""
    plate = given["motor_volts"]
    if frequency is None:
        return {"volts": plate, "rated_volts": plate}
    rated = {"rated_volts": plate, "rated_frequency": given["base_frequency"]}
    return {"volts": drive_volts(frequency, line_volts=plate, **rated),
            "rated_volts": volts_in_step(frequency, **rated)}  # fmt: skip
