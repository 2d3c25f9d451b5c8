"""What goes wrong with combustion. Severity ranges are judgement unless said."""

from dataclasses import replace
from random import Random

from plant.cause import Cause, Struck, with_blower, with_extras
from plant.machine import Machine


def blocked_vent(rng: Random, machine: Machine, index: int) -> Struck:
    """The passage cut by a quarter or more (prevalence.toml): resistance 4 to 40 times."""
    factor = rng.uniform(4.0, 40.0)
    vent = machine.furnaces[index].blower.vent
    return with_blower(machine, index, vent=vent * factor), factor


def blocked_drain_or_tube(rng: Random, machine: Machine, index: int) -> Struck:
    """Water in the tubes or a plug left in: their resistance 1.5 to 4 times."""
    factor = rng.uniform(1.5, 4.0)
    tubes = machine.furnaces[index].blower.tubes
    return with_blower(machine, index, tubes=tubes * factor), factor


def flue_gas_reentrained(rng: Random, machine: Machine, _: int) -> Struck:
    """A terminal in a roof well: 5 to 50 % of the plume into the intake, some to the burners."""
    share = rng.uniform(0.05, 0.5)
    own = rng.uniform(0.0, 0.12)
    furnaces = tuple(replace(one, reentrained=own) for one in machine.furnaces)
    return with_extras(machine.but(furnaces=furnaces), intake_flue=share), share


def excess_combustion_air(rng: Random, machine: Machine, index: int) -> Struck:
    """O2 over the plate's band: a shutter or speed that passes 15 to 60 % more."""
    factor = rng.uniform(1.15, 1.6)
    speed = machine.furnaces[index].blower.speed
    return with_blower(machine, index, speed=speed * factor), factor


def leaking_heat_exchanger(rng: Random, machine: Machine, index: int) -> Struck:
    """A crack or a gasket of 0.5 to 12 cm2."""
    area = 5e-5 * 24.0 ** rng.random()
    return machine.but_furnace(index, leak=area), area


def fouled_heat_exchanger(rng: Random, machine: Machine, index: int) -> Struck:
    """Conductance down by a tenth (prevalence.toml) to a half, where soot has closed half of it."""
    clean = rng.uniform(0.5, 0.9)
    one = machine.furnaces[index]
    exchanger = replace(one.exchanger, clean=clean)
    return machine.but_furnace(index, exchanger=exchanger), clean


def weak_flame_signal(rng: Random, machine: Machine, index: int) -> Struck:
    """Under twice the drop-out (prevalence.toml): 0.3 to 1.4 uA."""
    signal = rng.uniform(0.3e-6, 1.4e-6)
    return machine.but_furnace(index, flame_signal=signal), signal


CAUSES = {
    "blocked vent": Cause(blocked_vent, each_furnace=True),
    "blocked drain or tube": Cause(blocked_drain_or_tube, each_furnace=True),
    "flue gas re-entrained": Cause(flue_gas_reentrained),
    "excess combustion air": Cause(excess_combustion_air, each_furnace=True),
    "leaking heat exchanger": Cause(leaking_heat_exchanger, each_furnace=True),
    "fouled heat exchanger": Cause(fouled_heat_exchanger, each_furnace=True),
    "weak flame signal": Cause(weak_flame_signal, each_furnace=True),
}
