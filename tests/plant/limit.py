"""The high limit: where it opens, a run lasts a minute, and only what is quick gets read."""

from typing import Any

from plant.machine import Machine
from plant.plate import Plate
from plant.si import kelvin

Tree = dict[str, Any]
MARGIN = 15.0  # [degF] of the limit's setting over the plate's greatest outlet temperature
QUICK = ("train.", "gas.supply", "power.", "motor.amps", "static.", "fan.rpm", "vfd.", "furnace.")


def opens(machine: Machine, plate: Plate, true: dict[str, float]) -> bool:
    """Whether the air behind a furnace that fires would be hotter than its limit stands."""
    return any(
        true.get(f"input.{n}", 0.0) > 0.0
        and true[f"air.after.{n}.db"] > kelvin(plate.furnaces[n - 1].max_outlet + MARGIN)
        for n in range(1, len(machine.furnaces) + 1)
    )


def readable(point: str) -> bool:
    """Before it opens: pressures, volts and amps; no flue, no temperature, no turn of a meter."""
    return point.startswith(QUICK)


def deferred() -> list[Tree]:
    """What is told of a high fire that did not last."""
    return [{"target": "temperature rise", "why": "the high limit opens before it is steady"}]
