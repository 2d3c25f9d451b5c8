"""What goes wrong with air, drive and building. Severity ranges are judgement unless said."""

from dataclasses import replace
from random import Random

from plant.cause import Cause, Struck, three_phase, with_airside
from plant.machine import Machine
from plant.state import solve


def reversed_rotation(rng: Random, machine: Machine, _: int) -> Struck:
    """A third to two thirds of the airflow is left (prevalence.toml): Euler's head, 0.35 to 0.6."""
    left = rng.uniform(0.35, 0.6)
    return machine.but(fan=replace(machine.fan, turned=left)), left


def belt_slip(rng: Random, machine: Machine, _: int) -> Struck:
    """Fan slow by 3 % or more (prevalence.toml): creep to 3 to 15 % at rated torque."""
    slip = rng.uniform(0.03, 0.15)
    torque = max(machine.drive.rated, 1e-6)
    load = _load(machine)  # so that it slips this much at the torque it has
    drive = replace(machine.drive, tension=0.45, creep=slip * 0.45 * torque / load)
    low = machine.belt[0] * rng.uniform(0.3, 0.6)
    return machine.but(drive=drive, belt=(low, *machine.belt[1:])), slip


def _load(machine: Machine) -> float:
    """The torque the motor gives with the fan alone [N m]."""
    state = solve(machine, "fan", machine.weather)
    return max(state.motor_power / max(state.motor.rpm * 0.10472, 1.0), 1e-3)


def wrong_sheave(rng: Random, machine: Machine, _: int) -> Struck:
    """Speed off by 10 % or more (prevalence.toml): one to five sizes of sheave."""
    factor = rng.choice((rng.uniform(0.78, 0.91), rng.uniform(1.09, 1.22)))
    drive = replace(machine.drive, motor_sheave=machine.drive.motor_sheave * factor)
    return machine.but(drive=drive), factor


def blocked_filter(rng: Random, machine: Machine, _: int) -> Struck:
    """Half as much again (prevalence.toml) to six times the clean drop: past its change value."""
    factor = rng.uniform(1.6, 6.0)
    return with_airside(machine, filters=machine.airside.filters * factor), factor


def missing_filter(rng: Random, machine: Machine, _: int) -> Struck:
    """A bank out, all bypass: 3 to 20 % of the drop; one layer of two: about half."""
    factor = rng.uniform(0.03, 0.2) if rng.random() < 0.6 else rng.uniform(0.4, 0.6)
    return with_airside(machine, filters=machine.airside.filters * factor), factor


def closed_damper(rng: Random, machine: Machine, _: int) -> Struck:
    """Linkage slipped: blades 25 to 70 degrees instead of 90."""
    angle = rng.uniform(25.0, 70.0)
    return with_airside(machine, angle=angle), angle


def open_duct(rng: Random, machine: Machine, _: int) -> Struck:
    """Resistance down by a third (prevalence.toml) to three quarters."""
    left = rng.uniform(0.25, 0.67)
    own = machine.airside.duct
    duct = replace(own, length=own.length * left, fittings=own.fittings * left)
    return machine.but(airside=replace(machine.airside, duct=duct)), left


def exhaust_off(rng: Random, machine: Machine, _: int) -> Struck:
    """Not running, or one of two or three fans: 0 to 60 % of it."""
    left = 0.0 if rng.random() < 0.6 else rng.uniform(0.2, 0.6)
    return machine.but(building=replace(machine.building, running=left)), left


def sensor_not_in_duct(rng: Random, machine: Machine, _: int) -> Struck:
    """Coiled in the casing or half pulled out: 30 to 95 % of its error to where it hangs."""
    share = rng.uniform(0.3, 0.95)
    return machine.but(sensor=replace(machine.sensor, outside=share)), share


def end_switch(rng: Random, machine: Machine, _: int) -> Struck:
    """Late: 90 to 240 s instead of 30 to 60; or never, and the fan stays off."""
    if rng.random() < 0.35:
        extras = replace(machine.extras, fan_held=True, damper_seconds=300.0)
        return machine.but(extras=extras), 1.0
    late = rng.uniform(90.0, 240.0)
    return machine.but(extras=replace(machine.extras, damper_seconds=late)), late


CAUSES = {
    "reversed rotation": Cause(reversed_rotation, fits=three_phase),
    "belt slip": Cause(belt_slip, fits=lambda machine, plate: plate.drive.belt),
    "wrong sheave": Cause(wrong_sheave, fits=lambda machine, plate: plate.drive.belt),
    "blocked filter": Cause(blocked_filter),
    "missing filter": Cause(missing_filter),
    "closed damper": Cause(closed_damper),
    "open duct": Cause(open_duct),
    "exhaust off": Cause(exhaust_off),
    "sensor not in duct": Cause(sensor_not_in_duct),
    "end switch": Cause(end_switch),
}
