"""A plant in a run: air, fan, motor, fires and gas solved together."""

from dataclasses import dataclass, replace

from plant import air, furnace
from plant.airflow import Stations, Warmth, mass_flow, stations
from plant.fuel import Fuel, diluted
from plant.furnace import Fire, Stream, Surroundings
from plant.machine import Condition, Machine
from plant.motor import Running
from plant.motor import run as turn


@dataclass(frozen=True)
class State:
    """Everything that follows, before it is named."""

    run: str
    at: Condition
    flow: float  # [kg/s] moist air
    moisture: float
    intake: float  # [K]
    mixed: float
    entering: float
    after: tuple[float, ...]  # behind each furnace
    discharge: float
    stations: Stations
    fan_speed: float
    shaft: float  # [W] at the fan's shaft
    motor_power: float  # [W] the motor gives
    motor: Running
    volts: tuple[float, float, float]  # of the line
    motor_volts: float
    fires: tuple[Fire, ...]
    net: tuple[float, ...]  # [W] into the air from each furnace
    supply: float  # [Pa] gas at the unit
    gas: float  # [kg/s]
    others: float  # [kg/s] to other appliances
    fuel: Fuel
    reached: bool  # the iteration came to rest


def solve(plant: Machine, run: str, at: Condition) -> State:
    """The state of a run; the last answer is kept with the plant."""
    key = (run, at)
    if key not in plant.solved:
        still = run == "off" or plant.extras.fan_held
        plant.solved[key] = _still(plant, run, at) if still else _moving(plant, run, at)
    state = plant.solved[key]
    assert isinstance(state, State)
    return state


def fuel_of(plant: Machine, run: str) -> Fuel:
    """What burns: for the first fire after piping, gas with the line's air in it."""
    first = "high" if len(plant.furnaces) == 1 else f"high.{plant.leading + 1}"
    share = plant.extras.air_in_line if run == first else 0.0
    return diluted(plant.fuel, "air", share) if share > 0.0 else plant.fuel


def surroundings(plant: Machine, run: str, at: Condition, fuel: Fuel) -> Surroundings:
    source = at.room if plant.indoor else at.outdoor
    w = air.humidity_ratio(at.outdoor, at.humidity, at.barometer)
    return Surroundings(run, fuel, at.barometer, source, w, plant.gas_temperature, at.wind)


def line_volts(plant: Machine, running: bool) -> tuple[float, float, float]:
    factor = 1.0 - plant.sag if running else 1.0
    ab, bc, ca = (volts * factor for volts in plant.volts)
    dead = plant.extras.dead_leg  # leg a: a turning motor gives most of its volts back
    back = 1.0 - dead * (0.13 if running else 0.55)
    return ab * back, bc, ca * back


def gas_supply(plant: Machine, run: str, at: Condition, own: float, fuel: Fuel) -> float:
    density = fuel.density(at.barometer + 1500.0, plant.gas_temperature)
    others = 1.0 if run == "all" else 0.0
    return plant.line.at_unit(own, others, density) * at.supply


def _still(plant: Machine, run: str, at: Condition) -> State:
    """Nothing turns, nothing burns."""
    around = surroundings(plant, run, at, plant.fuel)
    p = plant.building.pressure(0.0) if run != "off" else 0.0
    fires = tuple(furnace.idle(one, around) for one in plant.furnaces)
    T, count = at.outdoor, len(fires)
    return State(
        run, at, 0.0, around.moisture, T, T, T, (T,) * count, T,
        Stations(0.0, 0.0, 0.0, 0.0, 0.0, 0.0, p), 0.0, 0.0, 0.0,
        Running(0.0, (0.0, 0.0, 0.0), 0.0), line_volts(plant, False), 0.0, fires,
        (0.0,) * count, gas_supply(plant, run, at, 0.0, plant.fuel), 0.0, 0.0, plant.fuel, True,
    )  # fmt: skip


def _moving(plant: Machine, run: str, at: Condition) -> State:
    state = _first(plant, run, at)
    for _ in range(80):
        before, state = state, _again(plant, state)
        moved = abs(state.flow / before.flow - 1.0) + abs(state.discharge - before.discharge) * 1e-2
        moved += abs(state.gas - before.gas) / max(state.gas, 1e-9)
        if moved < 2e-6:
            return state
    return replace(state, reached=moved < 1e-4)


def _first(plant: Machine, run: str, at: Condition) -> State:
    """A guess to begin with: design flow and cold air, no fire yet."""
    still = _still(plant, run, at)
    speed = plant.motor.synchronous * 0.98 * (plant.hz / 60.0 if plant.vfd else 1.0)
    return replace(
        still, flow=plant.airside.design, fan_speed=speed * plant.drive.ratio,
        fuel=fuel_of(plant, run), motor=Running(speed, (0.0,) * 3, 0.0),
        volts=line_volts(plant, True),
    )  # fmt: skip


def _again(plant: Machine, last: State) -> State:
    """One round: warmth, flow, fan and motor, fires."""
    at = last.at
    room = plant.building.pressure(last.flow)
    warmth = _warmth(plant, last)
    flow = mass_flow(plant, last.fan_speed, warmth, room, last.flow)
    volume, density = flow / warmth.fan[1], warmth.fan[1]
    shaft = plant.fan.power(volume, density, last.fan_speed)
    torque = last.motor_power / max(last.motor.rpm * 0.10472, 1.0)
    power = plant.drive.taken(shaft, torque, last.motor.rpm, plant.motor.synchronous)
    motor, volts = _turned(plant, power, last.volts)
    torque = power / max(motor.rpm * 0.10472, 1.0)
    speed = plant.drive.fan_speed(motor.rpm, torque)
    places = stations(plant, flow, speed, warmth, room)
    return _heated(plant, replace(
        last, flow=flow, fan_speed=speed, shaft=shaft, motor_power=power, motor=motor,
        motor_volts=volts, stations=places,
    ), at)  # fmt: skip


def _warmth(plant: Machine, last: State) -> Warmth:
    w, p = last.moisture, last.at.barometer

    def pair(T: float, gauge: float = 0.0) -> tuple[float, float]:
        return T, air.density(T, w, p + gauge)

    befores = (last.entering, *last.after[:-1])
    tubes = tuple(
        air.density(0.5 * (before + after), w, p + last.stations.furnaces)
        for before, after in zip(befores, last.after, strict=True)
    )
    at_fan = last.mixed if plant.arrangement == "blow-through" else last.after[-1]
    return Warmth(
        pair(last.intake), pair(last.mixed, last.stations.intake),
        pair(at_fan, last.stations.fan_in), tubes, pair(last.discharge, last.stations.duct),
    )  # fmt: skip


def _turned(
    plant: Machine, power: float, volts: tuple[float, float, float]
) -> tuple[Running, float]:
    """The motor at a power, and the volts it is on."""
    if plant.vfd:
        f = plant.hz / plant.motor.frequency
        most = sum(plant.volts) / 3.0
        given = min(plant.motor.volts * f * plant.extras.drive_volts, most)
        return turn(plant.motor, power, (given,) * 3, f), given
    running = turn(plant.motor, power, volts)
    dead = plant.extras.dead_leg
    if dead > 0.0:  # two legs carry what three did, and the slip doubles
        a, b, c = running.amps
        more = 1.0 + 0.85 * dead
        synchronous = plant.motor.synchronous
        rpm = synchronous - (synchronous - running.rpm) * (1.0 + dead)
        running = Running(rpm, (a * (1.0 - dead), b * more, c * more), running.power)
    return running, sum(volts) / 3.0 if plant.motor.phases == 3 else volts[0]


def _heated(plant: Machine, now: State, at: Condition) -> State:
    """Fires and temperatures for the flow just found."""
    around = surroundings(plant, now.run, at, now.fuel)
    intake, outdoor_w = _intake(plant, now, around)
    recirculated = plant.airside.recirculation
    w = outdoor_w  # the return air is taken as dry as outdoors: it was outdoors
    dry = now.flow / (1.0 + w)
    h = air.enthalpy(intake, w) * (1.0 - recirculated) + air.enthalpy(at.room, w) * recirculated
    mixed = air.temperature(h, w)
    blow = plant.arrangement == "blow-through"
    h += now.motor.power / dry if blow else 0.0
    entering = air.temperature(h, w)
    supply = gas_supply(plant, now.run, at, now.gas, now.fuel)
    fires, net, after = [], [], []
    levels = plant.levels(now.run)
    for one, level, last in zip(plant.furnaces, levels, now.fires, strict=True):
        before = air.temperature(h, w)
        cp = (1005.2 + 0.052 * (before - 273.15) + w * 1850.0) / (1.0 + w)
        stream = Stream(now.flow, cp, before, now.stations.furnaces)
        lit = level is not None and not plant.extras.heat_held
        burnt = (furnace.fire(one, around, stream, level or "", supply, last) if lit
                 else furnace.idle(one, around))  # fmt: skip
        guess = air.temperature(h + burnt.to_air / dry, w)
        given = burnt.to_air - one.casing * (0.5 * (before + guess) - at.outdoor)
        h += given / dry
        fires.append(burnt)
        net.append(given)
        after.append(air.temperature(h, w))
    h += 0.0 if blow else now.motor.power / dry
    own = sum(burnt.gas for burnt in fires)
    return replace(
        now, moisture=w, intake=intake, mixed=mixed, entering=entering, after=tuple(after),
        discharge=air.temperature(h, w), fires=tuple(fires), net=tuple(net), supply=supply,
        gas=_next_gas(plant, now, supply, own),
        others=sum(pipe.other for pipe in plant.line.pipes) / 50e6 if now.run == "all" else 0.0,
    )  # fmt: skip


def _next_gas(plant: Machine, now: State, supply: float, own: float) -> float:
    """Where the line gives way under its own flow, the step that a root law would need.

    With flow as the root of what the pipe leaves over, Newton's step is that part of the whole;
    a little less, for regulators and burners that come and go on the way.
    """
    left = supply / (plant.line.setting * now.at.supply)
    step = max(0.7 * left, 0.02) if left < 0.75 and now.gas > 0.0 else 1.0
    return step * own + (1.0 - step) * now.gas


def _intake(plant: Machine, now: State, around: Surroundings) -> tuple[float, float]:
    """Temperature and moisture behind the louvre: a warm roof, flue gas blown back."""
    at, share = now.at, plant.extras.intake_flue
    T, w = at.outdoor + plant.intake_warmth, around.moisture
    for burnt in now.fires:
        if share > 0.0 and burnt.flue is not None:
            part = share * burnt.fuel_flow * burnt.flue.mass / now.flow
            T += part * (burnt.flue_temperature - T)
            w += part * 0.018015 * burnt.flue.h2o / burnt.flue.mass
    return T, w
