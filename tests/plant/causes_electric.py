"""What goes wrong with power and controls. Severity ranges are judgement unless said."""

from dataclasses import replace
from math import pi
from random import Random

from plant.cause import Cause, Struck, across_the_line, three_phase, with_extras
from plant.machine import Machine
from plant.motor import three_volts


def supply_unbalance(rng: Random, machine: Machine, _: int) -> Struck:
    """Over 2 % (prevalence.toml), seldom over 6."""
    unbalance = rng.uniform(0.02, 0.06)
    mean = sum(machine.volts) / 3.0
    return machine.but(volts=three_volts(mean, unbalance, rng.uniform(0.0, 2.0 * pi))), unbalance


def single_phasing(rng: Random, machine: Machine, _: int) -> Struck:
    """A fuse gone, or a lug that carries a part."""
    lost = 1.0 if rng.random() < 0.7 else rng.uniform(0.4, 0.9)
    return with_extras(machine, dead_leg=lost), lost


def drive_parameters(rng: Random, machine: Machine, _: int) -> Struck:
    """Volts by hertz 12 to 30 % low, or a frequency limit left at 70 to 90 % of what is needed."""
    if rng.random() < 0.5:
        part = rng.uniform(0.70, 0.88)
        return with_extras(machine, drive_volts=part), part
    part = rng.uniform(0.70, 0.90)
    return machine.but(hz=round(machine.hz * part, 1)), part


def control_volts_sag(rng: Random, machine: Machine, _: int) -> Struck:
    """Under 21 V with the load on (prevalence.toml): wire that loses 15 to 35 %."""
    wire = rng.uniform(0.15, 0.35)
    return machine.but(transformer=replace(machine.transformer, wire=wire, idle=0.45)), wire


def wrong_voltage_tap(rng: Random, machine: Machine, _: int) -> Struck:
    """The next tap: 208 on 240, 240 on 208, 480 on 460 to 575, and so on."""
    taps = {208.0: 240.0 / 208.0, 230.0: 208.0 / 230.0, 240.0: 208.0 / 240.0, 120.0: 1.1}
    supply = machine.transformer.nominal
    tap = taps.get(supply, rng.choice((575.0 / supply, 416.0 / supply)))
    tap = 480.0 / 600.0 if supply == 600.0 else tap
    return machine.but(transformer=replace(machine.transformer, tap=tap)), tap


def open_safety(rng: Random, machine: Machine, index: int) -> Struck:
    """One furnace's limit, or a switch that all of them wait for."""
    if rng.random() < 0.5:
        return machine.but_furnace(index, fires=False), 0.5
    return with_extras(machine, heat_held=True), 1.0


def stage_does_not_fire(rng: Random, machine: Machine, index: int) -> Struck:
    """Its cock is shut or its wire off; a second stage that stays out leaves low fire."""
    furnace = machine.furnaces[index]
    if machine.controls[index] == "two-stage" and rng.random() < 0.6:
        trains = tuple(
            replace(one, high=(one.low or one.outlet) / one.outlet) for one in furnace.trains
        )
        return machine.but_furnace(index, trains=trains), 0.5
    return machine.but_furnace(index, fires=False), 1.0


CAUSES = {
    "supply unbalance": Cause(supply_unbalance, fits=three_phase),
    "single phasing": Cause(single_phasing, fits=across_the_line),
    "drive parameters": Cause(drive_parameters, fits=lambda machine, plate: machine.vfd),
    "control volts sag": Cause(control_volts_sag),
    "wrong voltage tap": Cause(wrong_voltage_tap),
    "open safety": Cause(open_safety),
    "stage does not fire": Cause(
        stage_does_not_fire, each_furnace=True,
        fits_furnace=lambda machine, index: len(machine.furnaces) > 1
        or machine.controls[index] == "two-stage",
    ),
}  # fmt: skip
