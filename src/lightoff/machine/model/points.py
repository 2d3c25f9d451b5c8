"""What each point shows in a run, and what is derived from them: the names of the job format."""

import re
from collections.abc import Mapping

from lightoff.formula import Number
from lightoff.formula.elementary import where
from lightoff.machine.model.air import Air, air_of
from lightoff.machine.model.burner import Fire, RatedBurner, combustion_air
from lightoff.machine.model.case import Case
from lightoff.machine.model.drive import amps_of_lines, volts_of_legs
from lightoff.machine.model.exchanger import Heat
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.running import Running
from lightoff.machine.model.supply import meter_pressure, meter_seconds, supply_pressure
from lightoff.physics.combustion import o2_from_excess_air
from lightoff.physics.constants import STANDARD_AIR_DENSITY
from lightoff.physics.electricity import unbalance
from lightoff.physics.flue_gas import dry_flue, dry_fraction, flue_vapour_pressure, water_fraction
from lightoff.physics.psychrometer import wet_bulb
from lightoff.physics.saturation import dew_point
from lightoff.physics.stoichiometry import AIR_OXYGEN

Shown = dict[str, Number]
Topics = frozenset[str]

_TOPICS = tuple(
    (topic, re.compile(pattern))
    for topic, pattern in (
        ("air", r"air\.(barometer|outdoor\.(db|rh)|return\.db)"),
        ("wet bulb", r"air\.outdoor\.wb"),
        ("temperatures", r"air\.((entering|discharge|after\.\d)\.db|discharge\.sensor)"),
        ("temperatures", r"rise\.(\d|unit)|discharge"),
        ("power", r"power\.volts(\.(ab|bc|ca))?|motor\.(amps(\.[abc])?|kw|rpm)|fan\.rpm"),
        ("power", r"vfd\.(hz|volts|amps|kw)|(voltage|current)_unbalance|(shaft|motor)_power"),
        ("gas", r"gas\.(supply|meter\.(seconds|pressure|db|other_flow))"),
        ("airside", r"static\.\w+|airflow(\.standard)?|duct\.(traverse|hood_total)"),
        ("airside", r"filter\.face_total|building\.pressure|exhaust\.airflow"),
        ("fire", r"train\.\d\.\d\.manifold|flue\.\d\.o2"),
        ("fire", r"(input|efficiency|output|excess_air)\.\d"),
        ("flue", r"flue\.\d\.(co2|db|combustion_air\.db)|flue_dew_point\.\d"),
    )
)
TOPICS: Topics = frozenset(topic for topic, _ in _TOPICS)
_AT_REST = re.compile(
    r"air\.(barometer|outdoor\.(db|rh|wb)|return\.db)|power\.volts(\.(ab|bc|ca))?"
    r"|gas\.(supply|meter\.(pressure|db))"
)


def topic_of(point: str) -> str | None:
    """Which topic a point or derived quantity belongs to; None where the model knows no such."""
    return next((topic for topic, pattern in _TOPICS if pattern.fullmatch(point)), None)


def shows_at_rest(point: str) -> bool:
    """Whether the model knows a point while the unit is off."""
    return bool(_AT_REST.fullmatch(point))


def resting_points(rated: Rated, values: Mapping[str, Number]) -> Shown:
    """Everything that shows while the unit is off."""
    air = air_of(rated.machine, values)
    open_circuit = values["power.volts"] * (1 + values["power.sag"])
    return {
        **_weather(rated, air, values),
        **_wet_bulb(air),
        **volts_of_legs(rated, {**values, "power.volts": open_circuit}),
        "gas.supply": supply_pressure(values, 0.0),
        "gas.meter.pressure": meter_pressure(values, 0.0),
        "gas.meter.db": air.of_pipes(values["gas.meter_warmer"]),
    }


def running_points(
    rated: Rated, values: Mapping[str, Number], case: Case, found: Running, topics: Topics = TOPICS
) -> Shown:
    """Everything that shows while the fan runs, of these topics."""
    shown: Shown = {}
    if "air" in topics:
        shown |= _weather(rated, found.air, values)
    if "wet bulb" in topics:
        shown |= _wet_bulb(found.air)
    if "power" in topics:
        shown |= _electrical(rated, values, found)
    if "airside" in topics:
        shown |= _airside(rated, values, found)
    if "temperatures" in topics:
        shown |= _temperatures(values, found)
    if "gas" in topics:
        shown |= _gas(rated, values, case, found)
    for burner in rated.burners:
        n = burner.number
        if n not in case.firing:
            shown |= {f"{train.name}.manifold": 0.0 for train in burner.trains}
            continue
        if "fire" in topics:
            shown |= _fire(burner, found.fires[n], found.warmth.heats[n], values)
        if "flue" in topics:
            shown |= _flue(burner, found.air, found.fires[n], found.warmth.heats[n], values)
    return shown


def _weather(rated: Rated, air: Air, values: Mapping[str, Number]) -> Shown:
    shown = {
        "air.barometer": air.barometer,
        "air.outdoor.db": air.outdoor,
        "air.outdoor.rh": values["air.outdoor.rh"],
    }
    if rated.machine.airside.recirculation > 0:
        shown["air.return.db"] = values["air.return.db"]
    return shown


def _wet_bulb(air: Air) -> Shown:
    wet = wet_bulb(air.outdoor, humidity_ratio=air.moisture, pressure=air.barometer)
    return {"air.outdoor.wb": wet}


def _electrical(rated: Rated, values: Mapping[str, Number], found: Running) -> Shown:
    turn = found.turning
    volts = volts_of_legs(rated, values)
    amps = amps_of_lines(rated, values, turn.amps)
    shown = {**volts, **amps, "motor.kw": turn.power, "motor.rpm": turn.motor_speed}
    if rated.machine.drive.vfd:
        shown |= {
            "vfd.hz": turn.frequency, "vfd.volts": turn.volts,
            "vfd.amps": turn.amps, "vfd.kw": turn.power,
        }  # fmt: skip
    shown |= {
        "fan.rpm": turn.fan_speed, "shaft_power": found.shaft_power,
        "motor_power": found.state.load * rated.motor.power,
    }  # fmt: skip
    if rated.machine.three_phase:
        shown["voltage_unbalance"] = unbalance(*volts.values())
        shown["current_unbalance"] = unbalance(*amps.values())
    return shown


def _airside(rated: Rated, values: Mapping[str, Number], found: Running) -> Shown:
    """Static pressures against outdoors, from the duct back to the hood, and the airflow."""
    drops, moist = found.pressures, found.state.flow * (1 + found.air.moisture)
    duct = drops.duct + found.building
    intake = -drops.intake
    filters = intake - drops.filters
    if rated.blow_through:
        furnaces = duct + drops.outlet + drops.coil
        fan_in, fan_out = filters, furnaces + drops.furnaces
    else:
        furnaces = filters - drops.furnaces
        fan_in, fan_out = furnaces - drops.coil, duct + drops.outlet
    actual = moist / found.air.density(found.warmth.discharge)
    return {
        "static.intake": intake, "static.filters": filters, "static.fan_in": fan_in,
        "static.fan_out": fan_out, "static.furnaces": furnaces, "static.duct": duct,
        "airflow": actual, "airflow.standard": moist / STANDARD_AIR_DENSITY,
        "duct.traverse": actual, "duct.hood_total": actual,
        "filter.face_total": moist / found.air.density(found.air.mixed),
        "building.pressure": found.building,
        "exhaust.airflow": values["exhaust.airflow"],
    }  # fmt: skip


def _temperatures(values: Mapping[str, Number], found: Running) -> Shown:
    """Probes; where the air is not mixed each stands off by a share of the rise behind it."""
    warm = found.warmth
    entering = warm.entering
    shown = {"air.entering.db": entering}
    before = entering
    for number, after in enumerate(warm.after, start=1):
        off = values[f"probe.after.{number}"] * (after - entering)
        shown[f"air.after.{number}.db"] = after + off
        shown[f"rise.{number}"] = after - before
        before = after
    discharge = warm.discharge + values["probe.discharge"] * (warm.discharge - entering)
    shown["air.discharge.db"] = discharge
    shown["discharge"] = warm.discharge
    misplaced = values["sensor.place"] * (warm.discharge - entering)
    shown["air.discharge.sensor"] = warm.discharge + misplaced + values["sensor.offset"]
    shown["rise.unit"] = warm.after[-1] - entering
    return shown


def _gas(rated: Rated, values: Mapping[str, Number], case: Case, found: Running) -> Shown:
    heat = sum(flame.hot.heat for flame in found.fires.values())
    whole = sum(burner.input for burner in rated.burners)
    others = where(case.others, values["gas.others"] ** 2, 0.0)
    load = heat / whole + others
    return {
        "gas.supply": supply_pressure(values, load),
        "gas.meter.pressure": meter_pressure(values, load),
        "gas.meter.db": found.air.of_pipes(values["gas.meter_warmer"]),
        "gas.meter.other_flow": values["gas.meter.other_flow"],
        "gas.meter.seconds": meter_seconds(
            rated, values, found.air, rated.machine.site.meter_dial or 1.0, load * whole
        ),
    }


def _fire(burner: RatedBurner, flame: Fire, heat: Heat, values: Mapping[str, Number]) -> Shown:
    """What burns, and what it gives; an analyser also draws a little false air."""
    n = burner.number
    o2 = o2_from_excess_air(flame.excess_air, burner.air_ratio)
    trains = zip(burner.trains, flame.manifolds, strict=True)
    return {
        **{f"{train.name}.manifold": manifold for train, manifold in trains},
        f"flue.{n}.o2": o2 + values[f"flue.{n}.false_air"] * (AIR_OXYGEN - o2),
        f"excess_air.{n}": flame.excess_air,
        f"input.{n}": flame.hot.heat,
        f"efficiency.{n}": heat.efficiency,
        f"output.{n}": heat.output,
    }


def _flue(
    burner: RatedBurner, air: Air, flame: Fire, heat: Heat, values: Mapping[str, Number]
) -> Shown:
    """What goes up the flue."""
    n, flue = burner.number, flame.hot.flue
    dry = dry_flue(carbon_dioxide=flue.carbon_dioxide, nitrogen=flue.nitrogen, oxygen=flue.oxygen)
    vapour = flue_vapour_pressure(water_fraction(flue.water, dry), air.barometer)
    return {
        f"flue.{n}.co2": (1 - values[f"flue.{n}.false_air"])
        * dry_fraction(flue.carbon_dioxide, dry),
        f"flue.{n}.db": heat.flue,
        f"flue.{n}.combustion_air.db": combustion_air(burner, air, values),
        f"flue_dew_point.{n}": dew_point(vapour),
    }
