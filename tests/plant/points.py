"""The true value of every point and derived id in a state, under the job file's names, in SI."""

from plant import air
from plant.flame import DRY_AIR
from plant.furnace import Fire
from plant.machine import Machine
from plant.si import GAS_BASE
from plant.state import State, solve

Values = dict[str, float]
COMBUSTION_RPM = 3300.0  # at full speed: a two-pole motor under load


def values(plant: Machine, state: State) -> Values:
    """Everything true in a run."""
    found = {**_power(plant, state), **_airside(plant, state), **_air(plant, state)}
    found.update({**_gas(plant, state), **_building(plant, state)})
    for index, fire in enumerate(state.fires):
        found.update(_furnace(plant, state, index, fire))
    return found


def _power(plant: Machine, state: State) -> Values:
    volts, amps, three = state.volts, state.motor.amps, plant.motor.phases == 3
    burners = sum(fire.gross > 0.0 for fire in state.fires)
    running = state.motor.rpm > 0.0
    control = plant.transformer
    found = {
        "power.control_volts": control.volts(volts[1], burners if running else None),
        "power.control_volts.unloaded": control.volts(volts[1], None),
        "motor.kw": state.motor.power,
        "motor.rpm": state.motor.rpm,
        "fan.rpm": state.fan_speed,
        "shaft_power": state.shaft,
    }
    if not three:
        return {**found, "power.volts": volts[0], "motor.amps": amps[0]}
    found |= {f"power.volts.{leg}": v for leg, v in zip(("ab", "bc", "ca"), volts, strict=True)}
    found |= {f"power.volts.{leg}g": v / 3.0**0.5 for leg, v in zip("abc", volts, strict=True)}
    found |= {f"motor.amps.{leg}": a for leg, a in zip("abc", amps, strict=True)}
    found["voltage_unbalance"] = _unbalance(volts)
    found["current_unbalance"] = _unbalance(amps) if running else 0.0
    if plant.vfd:
        found |= {"vfd.hz": plant.hz if running else 0.0, "vfd.volts": state.motor_volts,
                  "vfd.amps": sum(amps) / 3.0, "vfd.kw": state.motor.power}  # fmt: skip
    return found


def _unbalance(three: tuple[float, float, float]) -> float:
    mean = sum(three) / 3.0
    return max(abs(x - mean) for x in three) / mean


def _airside(plant: Machine, state: State) -> Values:
    at, place = state.at, state.stations
    density = air.density(state.discharge, state.moisture, at.barometer + place.duct)
    names = ("intake", "filters", "fan_in", "fan_out", "furnaces", "duct")
    found = {f"static.{name}": getattr(place, name) for name in names}
    volume = state.flow / density
    face = state.flow / air.density(state.mixed, state.moisture, at.barometer + place.intake)
    force, angle, span = plant.belt
    if plant.drive.belt:  # the deflection the force belongs to is a 64th of the span
        found |= {"belt.force": force, "belt.angle": angle, "belt.deflection": span / 64.0}
    return found | {
        "duct.traverse": volume, "duct.hood_total": volume, "airflow": volume,
        "filter.face_total": face,
        "density.duct": density,  # no point of the job file: what a pitot tube stands in
    }  # fmt: skip


def _air(plant: Machine, state: State) -> Values:
    at, w = state.at, state.moisture
    outdoor_w = air.humidity_ratio(at.outdoor, at.humidity, at.barometer)
    firing = sum(fire.gross > 0.0 for fire in state.fires) / len(state.fires)
    elsewhere = at.outdoor + 5.0  # a sensor coiled up in the casing
    found = {
        "air.barometer": at.barometer,
        "air.outdoor.db": at.outdoor,
        "air.outdoor.wb": air.wet_bulb(at.outdoor, outdoor_w, at.barometer),
        "air.outdoor.rh": at.humidity,
        "air.return.db": at.room,
        "air.entering.db": state.entering,
        "air.discharge.db": state.discharge,
        "air.discharge.sensor": plant.sensor.shows(
            state.discharge, state.entering, elsewhere, firing
        ),
        "air.intake.co": _intake_co(plant, state),
        "air.discharge.co": _intake_co(plant, state) + _leaked_co(state, w),
        "rise.unit": state.after[-1] - state.entering,
    }
    return found | {f"air.after.{i}.db": T for i, T in enumerate(state.after, 1)}


def raw_co(fire: Fire) -> float:
    """Carbon monoxide in the dry flue gas as it is."""
    return fire.co_air_free * (1.0 - oxygen(fire) / DRY_AIR["o2"])


def oxygen(fire: Fire) -> float:
    return fire.flue.o2 / fire.flue.dry if fire.flue else DRY_AIR["o2"]


def _moles_of_co(fire: Fire) -> float:
    """By second [mol/s]."""
    return fire.fuel_flow * fire.flue.dry * raw_co(fire) if fire.flue else 0.0


def _intake_co(plant: Machine, state: State) -> float:
    outdoors = state.at.monoxide
    if state.flow <= 0.0:
        return outdoors
    taken = sum(_moles_of_co(fire) for fire in state.fires) * plant.extras.intake_flue
    return outdoors + taken / (state.flow / 0.02885)


def _leaked_co(state: State, w: float) -> float:
    if state.flow <= 0.0:
        return 0.0
    leaked = sum(max(fire.leak, 0.0) / 0.0281 * raw_co(fire) for fire in state.fires if fire.flue)
    return leaked / (state.flow / 0.02885)


def _gas(plant: Machine, state: State) -> Values:
    found = {"gas.supply": state.supply, "gas.meter.db": plant.gas_temperature}
    through = state.gas + state.others
    full = plant.line.capacity
    pressure = state.supply + plant.meter.upstream * (through / full) ** 2
    found["gas.meter.pressure"] = pressure
    actual = state.fuel.density(state.at.barometer + pressure, plant.gas_temperature)
    found["gas.meter.other_flow"] = state.others / actual
    if through > 0.0:
        level = state.fuel.density(state.at.barometer + pressure, GAS_BASE[1])
        found["gas.meter.seconds"] = plant.meter.seconds(through / actual, through / level)
    return found


def _building(plant: Machine, state: State) -> Values:
    p = state.stations.room
    unlatch, start, full = plant.building.doors(p)
    return {
        "building.pressure": p,
        "exhaust.airflow": plant.building.exhausted(p),
        "door.unlatch": unlatch,
        "door.start": start,
        "door.open": full,
    }


def _furnace(plant: Machine, state: State, index: int, fire: Fire) -> Values:
    n, one = index + 1, plant.furnaces[index]
    found = {
        f"flue.{n}.db": fire.flue_temperature,
        f"furnace.{n}.combustion_fan.rpm": COMBUSTION_RPM * fire.speed,
        f"furnace.{n}.orifice": plant.orifice[index],
        f"box.{n}": fire.draught.box,  # no point of the job file: the burner compartment
    }
    for m, (train, p) in enumerate(zip(one.trains, fire.manifolds, strict=True), 1):
        found[f"train.{n}.{m}.manifold"] = p
        if fire.gross > 0.0:
            found[f"train.{n}.{m}.outlet"] = train.outlet_at(state.supply, fire.flows[m - 1])
    level = plant.levels(state.run)[index]
    if level is None:
        return found
    found |= {f"train.{n}.{m}.signal": _signal(one.signal, level)
              for m in range(1, len(one.trains) + 1)}  # fmt: skip
    found |= {
        f"flue.{n}.o2": oxygen(fire),
        f"flue.{n}.co2": fire.flue.co2 / fire.flue.dry if fire.flue else 0.0004,
        f"flue.{n}.co": raw_co(fire),
        f"flue.{n}.draft": fire.draught.draft,
        f"flue.{n}.combustion_air.db": _source(plant, state) + (one.preheat if fire.flue else 0.0),
        f"furnace.{n}.proving_pressure": fire.draught.proving,
        f"furnace.{n}.flame": one.flame_signal * (1.0 if level == "high" else 0.8)
        * (fire.gross > 0.0),
        f"input.{n}": fire.gross,
        f"output.{n}": state.net[index],
    }  # fmt: skip
    return found | (_burning(plant, state, index, fire) if fire.flue else {})


def _signal(made: tuple[float, float], level: str) -> float:
    return made[1] if level == "high" else made[0]


def _source(plant: Machine, state: State) -> float:
    return state.at.room if plant.indoor else state.at.outdoor


def _burning(plant: Machine, state: State, index: int, fire: Fire) -> Values:
    n = index + 1
    before = state.after[index - 1] if index else state.entering
    assert fire.flue is not None
    found = {
        f"efficiency.{n}": state.net[index] / fire.gross,
        f"rise.{n}": state.after[index] - before,
        f"excess_air.{n}": fire.excess,
        f"co_air_free.{n}": fire.co_air_free,
        f"flue_dew_point.{n}": fire.flue.dew_point(state.at.barometer),
    }
    if plant.levels(state.run)[index] == "low":
        high = "high" if len(plant.furnaces) == 1 else f"high.{n}"
        most = solve(plant, high, state.at).fires[index].gross
        found[f"turndown.{n}"] = most / fire.gross
    return found
