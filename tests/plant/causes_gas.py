"""What goes wrong with gas. Severity ranges are judgement unless said."""

from dataclasses import replace
from random import Random

from plant.cause import Cause, Struck, modulates, two_step, with_extras, with_line, with_method
from plant.fuel import Fuel, diluted
from plant.machine import Machine
from plant.plate import Plate
from plant.plate_site import natural_gas, propane
from plant.si import INWC
from plant.state import solve

LEAST = {"natural gas": 5.5 * INWC, "propane": 10.75 * INWC}  # [Pa] plates ask for about this


def gas_supply_too_small(rng: Random, machine: Machine, _: int) -> Struck:
    """Pipe for the unit alone: 35 to 100 % of the plate's minimum with everything on."""
    line = machine.line
    wanted = LEAST[line.gas] * rng.uniform(0.35, 0.98)
    state = solve(machine, "all", machine.weather)
    load = (state.gas + state.others) / line.capacity
    before = line.setting * (1.0 - line.droop * load)
    factor = max((before - wanted) / max(before - state.supply, 1.0), 2.0)
    pipes = tuple(replace(pipe, true=pipe.true * factor) for pipe in line.pipes)
    return machine.but(line=replace(line, pipes=pipes)), factor


def regulator_creeps(rng: Random, machine: Machine, _: int) -> Struck:
    """Over 150 % of the setting at no flow (prevalence.toml), to 300 % behind 2 psi."""
    lockup = rng.uniform(0.5, 2.0)
    return with_line(machine, lockup=lockup), lockup


def blocked_regulator_vent(rng: Random, machine: Machine, _: int) -> Struck:
    """The diaphragm cannot breathe: droops by 30 to 60 %, locks up 25 to 60 % high."""
    droop = rng.uniform(0.3, 0.6)
    return with_line(machine, droop=droop, lockup=rng.uniform(0.25, 0.6)), droop


def cold_propane_tank(rng: Random, machine: Machine, _: int) -> Struck:
    """The liquid cools while it boils off: 20 to 60 % of the pressure gone at full draw."""
    tank = rng.uniform(0.2, 0.6)
    return with_line(machine, tank=tank), tank


def air_in_line(rng: Random, machine: Machine, _: int) -> Struck:
    """The first firing burns what was not purged: 8 to 35 % of air in it."""
    share = rng.uniform(0.08, 0.35)
    return with_extras(machine, air_in_line=share), share


def wrong_orifice(rng: Random, machine: Machine, index: int) -> Struck:
    """Input off by 8 % or more (prevalence.toml): three to ten drill sizes."""
    factor = rng.choice((rng.uniform(0.72, 0.92), rng.uniform(1.08, 1.32)))
    one = machine.furnaces[index]
    trains = tuple(replace(train, area=train.area * factor) for train in one.trains)
    sizes = list(machine.orifice)
    sizes[index] *= factor**0.5
    return machine.but(orifice=tuple(sizes)).but_furnace(index, trains=trains), factor


def wrong_gas(rng: Random, machine: Machine, _: int) -> Struck:
    """The other gas in the line; whoever delivered it set the regulator as the plate wants."""
    fuel = natural_gas(rng) if machine.line.gas == "propane" else propane(rng)
    return machine.but(fuel=fuel), 1.0


def setting_did_not_hold(rng: Random, machine: Machine, index: int) -> Struck:
    """4 % or more between runs (prevalence.toml), to 20: a cap put back, a lock nut, warmth."""
    moved = rng.choice((-1.0, 1.0)) * rng.uniform(0.04, 0.20)
    one = machine.furnaces[index]
    alone = f"high.{index + 1}"
    first = "high" if len(machine.furnaces) == 1 else alone
    trains = tuple(
        replace(train, settle=tuple((run, by if run == first else by * (1.0 + moved))
                                    for run, by in train.settle))
        for train in one.trains
    )  # fmt: skip
    return machine.but_furnace(index, trains=trains), moved


def stages_swapped(rng: Random, machine: Machine, index: int) -> Struck:
    """Two coils exchanged at the terminals."""
    indices = [i for i in range(len(machine.furnaces)) if two_step(machine, i)]
    return machine.but_furnace(rng.choice(indices), swapped=True), 1.0


def wrong_reference_port(rng: Random, machine: Machine, index: int) -> Struck:
    """The gauge's other side on the wrong port: what the reading shows is off by the box."""
    ports = tuple(i == index or there for i, there in enumerate(machine.method.reference))
    return with_method(machine, reference=ports), 1.0


def signal_range_mismatch(rng: Random, machine: Machine, index: int) -> Struck:
    """2 to 10 V into a 0 to 10 V valve: low fire is at a fifth; the reverse, 80 % at most."""
    signal = (0.2, 1.0) if rng.random() < 0.6 else (0.0, 0.8)
    return machine.but_furnace(index, signal=signal), signal[0] or signal[1]


def heating_value_off(rng: Random, machine: Machine, _: int) -> Struck:
    """2 to 8 % from what is declared: peak-shaving air and nitrogen, or rich gas."""
    if machine.line.gas == "propane":
        share = rng.uniform(0.2, 0.6)
        return machine.but(fuel=diluted(machine.fuel, "butane", share)), share
    if rng.random() < 0.5:
        share = rng.uniform(0.02, 0.08)
        return machine.but(fuel=diluted(machine.fuel, "nitrogen", share)), -share
    return machine.but(fuel=_richer(rng, machine.fuel)), 1.0


def _richer(rng: Random, fuel: Fuel) -> Fuel:
    return diluted(fuel, "ethane", rng.uniform(0.04, 0.11))


def propane_unit(machine: Machine, plate: Plate) -> bool:
    return plate.furnaces[0].gas == "propane"


def any_two_stage(machine: Machine, plate: Plate) -> bool:
    return "two-stage" in machine.controls


CAUSES = {
    "gas supply too small": Cause(gas_supply_too_small),
    "regulator creeps": Cause(regulator_creeps),
    "blocked regulator vent": Cause(blocked_regulator_vent),
    "cold propane tank": Cause(cold_propane_tank, fits=propane_unit),
    "air in line": Cause(air_in_line),
    "wrong orifice": Cause(wrong_orifice, each_furnace=True),
    "wrong gas": Cause(wrong_gas),
    "setting did not hold": Cause(
        setting_did_not_hold, each_furnace=True,
        fits_furnace=lambda machine, index: len(machine.furnaces) > 1 or modulates(machine, index),
    ),
    "stages swapped": Cause(stages_swapped, fits=any_two_stage),
    "wrong reference port": Cause(
        wrong_reference_port, each_furnace=True,
        fits_furnace=lambda machine, index: machine.furnaces[index].trains[0].boxed,
    ),
    "signal range mismatch": Cause(
        signal_range_mismatch, each_furnace=True, fits_furnace=modulates
    ),
    "heating value off": Cause(heating_value_off),
}  # fmt: skip
