"""At most one fault a plant: which it may be, and how it is put in."""

from dataclasses import replace
from random import Random

from plant import causes_air, causes_electric, causes_flue, causes_gas, causes_method
from plant.cause import Cause
from plant.machine import Fault, Machine
from plant.plate import Plate

CAUSES: dict[str, Cause] = {
    **causes_air.CAUSES,
    **causes_electric.CAUSES,
    **causes_gas.CAUSES,
    **causes_flue.CAUSES,
    **causes_method.CAUSES,
}
SOUND = 0.35


def possible(machine: Machine, plate: Plate) -> tuple[str, ...]:
    """What can befall this unit."""
    return tuple(name for name, cause in CAUSES.items() if _furnaces(cause, machine, plate))


def _furnaces(cause: Cause, machine: Machine, plate: Plate) -> list[int]:
    """Where it can be; a cause of the whole unit counts as in the first."""
    if not cause.fits(machine, plate):
        return []
    indices = range(len(machine.furnaces)) if cause.each_furnace else range(1)
    return [index for index in indices if cause.fits_furnace(machine, index)]


def afflicted(
    rng: Random, machine: Machine, plate: Plate, wanted: str | None
) -> tuple[Machine, Plate]:
    """With the fault wanted, or one drawn, or none; KeyError where it can't befall this unit."""
    name = wanted or ("none" if rng.random() < SOUND else rng.choice(possible(machine, plate)))
    if name == "none":
        return machine, plate
    cause = CAUSES[name]
    indices = _furnaces(cause, machine, plate)
    if not indices:
        raise KeyError(f"{name} can't befall this unit")
    index = rng.choice(indices)
    struck, severity = cause.strike(rng, machine, index)
    number = index + 1 if cause.each_furnace else None
    if name == "wrong meter dial" and rng.random() < 0.5:  # told wrong before the visit, too
        plate = replace(plate, site=replace(plate.site, dial=plate.site.dial * severity))
    return struck.but(fault=Fault(name, number, severity)), plate
