"""The technician before us: how speed and gas were left."""

from dataclasses import replace
from random import Random

from plant import air
from plant.airflow import Warmth, surplus
from plant.machine import Machine
from plant.plate import FurnacePlate, Plate
from plant.root import between
from plant.si import HP, INWC, STANDARD_AIR, clip
from plant.train import Train


def set_up(rng: Random, machine: Machine, plate: Plate) -> tuple[Machine, Plate]:
    """Gas and speed as somebody set them, well or not so well."""
    furnaces = tuple(
        replace(one, trains=tuple(_set(rng, machine, train, declared, m)
                                  for m, train in enumerate(one.trains)))
        for one, declared in zip(machine.furnaces, plate.furnaces, strict=True)
    )  # fmt: skip
    return _at_speed(rng, machine.but(furnaces=furnaces), plate)


def _set(rng: Random, machine: Machine, train: Train, declared: FurnacePlate, m: int) -> Train:
    """Manifold within 1.5 % by most hands; a poor one leaves 8 %, rather high: it makes heat.

    sp-manifold-found says 6 % for a unit nobody has touched yet.
    """
    says = declared.trains[m]
    careless = rng.random() < 0.13
    high = says.high * INWC * (1.0 + (rng.gauss(0.02, 0.08) if careless else rng.gauss(0.0, 0.014)))
    outlet = says.outlet * INWC + rng.gauss(0.0, 0.5 if rng.random() < 0.12 else 0.08) * INWC
    outlet = max(outlet, 1.02 * high)
    low = None
    if says.low is not None:
        spread = 0.2 if rng.random() < 0.17 else 0.035
        low = clip(says.low * INWC * (1.0 + rng.gauss(0.0, spread)), 15.0, 0.97 * high)
    runs = (*machine.runs(),)
    settle = tuple((run, 1.0 + rng.gauss(0.0, 0.006)) for run in runs)
    return replace(train, outlet=outlet, high=high / outlet, low=low, settle=settle)


def _at_speed(rng: Random, machine: Machine, plate: Plate) -> tuple[Machine, Plate]:
    """The speed for the airflow wanted, as far as drive and sheaves can be turned."""
    careless = rng.random() < 0.16
    share = clip(1.0 + rng.gauss(0.025, 0.14 if careless else 0.035), 0.7, 1.25)
    needed = speed_for(machine, machine.airside.design * share)
    needed = min(needed, plate.fan.max_speed * (1.03 if careless else 0.995))
    if not careless:
        needed = min(needed, _most(machine, plate, needed))
    full = _full_speed(machine)
    if machine.vfd:
        hz = round(clip(60.0 * needed / full, 25.0, 80.0), 1)
        return machine.but(hz=hz), plate
    if not machine.drive.belt:
        return _throttled(machine, machine.airside.design * share, full), plate
    ratio = needed / full
    if plate.drive.adjustable:
        ratio = clip(ratio, 0.75, 1.3)
    else:  # the sheaves on the shelf come in steps of some 4 %
        ratio = 1.0 + 0.04 * round((ratio - 1.0) / 0.04)
    return _with_sheave(machine, plate, ratio)


def _most(machine: Machine, plate: Plate, needed: float) -> float:
    """The speed past which the motor would be over its plate: a competent hand stops there."""
    volume = machine.airside.design / STANDARD_AIR
    at_needed = machine.fan.power(volume, STANDARD_AIR, needed)
    return needed * (1.05 * plate.motor.power * HP / at_needed) ** (1.0 / 3.0)


def _with_sheave(machine: Machine, plate: Plate, ratio: float) -> tuple[Machine, Plate]:
    drive = replace(machine.drive, motor_sheave=machine.drive.motor_sheave * ratio)
    says = round(plate.drive.motor_sheave * ratio, 1)
    return machine.but(drive=drive), replace(plate, drive=replace(plate.drive, motor_sheave=says))


def _full_speed(machine: Machine) -> float:
    """About what the fan turns at full frequency with the sheaves it has [rpm]."""
    motor = machine.motor
    return motor.synchronous * 0.978 * machine.drive.ratio * (0.992 if machine.drive.belt else 1.0)


def _throttled(machine: Machine, m: float, speed: float) -> Machine:
    """A balancing damper takes what a fan of one speed has too much at `m`."""
    warmth = _unfired(machine)
    left = surplus(machine, m, speed, warmth, machine.building.pressure(m))
    duct = machine.airside.duct
    numbers = max(left, 0.0) / duct.velocity_pressure(m, warmth.discharge[1])
    duct = replace(duct, fittings=duct.fittings + numbers)
    return machine.but(airside=replace(machine.airside, duct=duct))


def speed_for(machine: Machine, m: float) -> float:
    """The fan speed that moves `m` with no fire on the day of the visit [rpm]."""
    warmth, room = _unfired(machine), machine.building.pressure(m)
    return between(lambda n: surplus(machine, m, n, warmth, room), 100.0, 6000.0, 0.01)


def _unfired(machine: Machine) -> Warmth:
    """With no fire, on the day of the visit."""
    at = machine.weather
    w = air.humidity_ratio(at.outdoor, at.humidity, at.barometer)
    warm = at.outdoor + 1.5
    outdoor = (at.outdoor, air.density(at.outdoor, w, at.barometer))
    inside = (warm, air.density(warm, w, at.barometer))
    tubes = (inside[1],) * len(machine.furnaces)
    return Warmth(outdoor, outdoor, outdoor, tubes, inside)
