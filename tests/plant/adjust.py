"""Settings turned: what a screwdriver, a sheave or a key pad does to the machine."""

from dataclasses import replace
from typing import Any

from plant.machine import Machine


def adjusted(machine: Machine, setting: str, value: float, run: str) -> Machine:
    """One of job.md's settings at a new value [SI]; 1 for what is put right."""
    if setting.startswith("train."):
        return _train(machine, setting, value, run)
    if setting.startswith("furnace."):
        return _orifice(machine, int(setting.split(".")[1]) - 1, value)
    if setting.startswith("drive."):
        sheave: dict[str, Any] = {setting.removeprefix("drive."): value}
        return machine.but(drive=replace(machine.drive, **sheave))
    simple = {
        "vfd.hz": lambda: machine.but(hz=value),
        "damper.position": lambda: machine.but(
            airside=replace(machine.airside, angle=90.0 * value)
        ),
        "fan.rotation": lambda: machine.but(fan=replace(machine.fan, turned=1.0)),
        "gas.regulator": lambda: machine.but(line=replace(machine.line, setting=value)),
        "control.discharge": lambda: machine,
        "wiring": lambda: _rewired(machine),
    }
    return simple[setting]()


def _train(machine: Machine, setting: str, value: float, run: str) -> Machine:
    _, n, m, what = setting.split(".")
    furnace, index = machine.furnaces[int(n) - 1], int(m) - 1
    trains = list(furnace.trains)
    old = trains[index]
    if what == "outlet":
        new = replace(old, outlet=value)  # the manifold behind it moves along
    elif run.startswith("low"):
        new = replace(old, low=value)
    else:
        new = replace(old, high=value / old.outlet)
    trains[index] = new
    return machine.but_furnace(int(n) - 1, trains=tuple(trains))


def _orifice(machine: Machine, index: int, diameter: float) -> Machine:
    factor = (diameter / machine.orifice[index]) ** 2
    trains = tuple(replace(one, area=one.area * factor) for one in machine.furnaces[index].trains)
    sizes = list(machine.orifice)
    sizes[index] = diameter
    return machine.but(orifice=tuple(sizes)).but_furnace(index, trains=trains)


def _rewired(machine: Machine) -> Machine:
    """Every wire where the drawing has it."""
    furnaces = tuple(
        replace(one, swapped=False, signal=(0.0, 1.0), fires=True) for one in machine.furnaces
    )
    transformer = replace(machine.transformer, tap=1.0)
    return machine.but(furnaces=furnaces, transformer=transformer)
