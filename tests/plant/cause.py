"""What every cause is made of: when it can befall a unit, and what it then does."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from random import Random
from typing import Any

from plant.machine import Machine
from plant.plate import Plate

Struck = tuple[Machine, float]  # the machine with the fault in it, and how bad it is


@dataclass(frozen=True)
class Cause:
    """`strike` gets the index of a furnace; causes of the whole unit leave it alone."""

    strike: Callable[[Random, Machine, int], Struck]
    each_furnace: bool = False
    fits: Callable[[Machine, Plate], bool] = lambda machine, plate: True
    fits_furnace: Callable[[Machine, int], bool] = lambda machine, index: True


def with_airside(machine: Machine, **changes: Any) -> Machine:
    return machine.but(airside=replace(machine.airside, **changes))


def with_line(machine: Machine, **changes: Any) -> Machine:
    return machine.but(line=replace(machine.line, **changes))


def with_extras(machine: Machine, **changes: Any) -> Machine:
    return machine.but(extras=replace(machine.extras, **changes))


def with_method(machine: Machine, **changes: Any) -> Machine:
    return machine.but(method=replace(machine.method, **changes))


def with_blower(machine: Machine, index: int, **changes: Any) -> Machine:
    blower = replace(machine.furnaces[index].blower, **changes)
    return machine.but_furnace(index, blower=blower)


def three_phase(machine: Machine, plate: Plate) -> bool:
    return plate.motor.phases == 3


def across_the_line(machine: Machine, plate: Plate) -> bool:
    return plate.motor.phases == 3 and not machine.vfd


def two_step(machine: Machine, index: int) -> bool:
    return machine.controls[index] == "two-stage"


def modulates(machine: Machine, index: int) -> bool:
    return machine.controls[index] == "modulating"
