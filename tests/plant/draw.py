"""Draws a unit at a site: what is declared of it, and what it truly is."""

from random import Random

from plant import plate_air, plate_electric, plate_furnaces, plate_site
from plant.air import atmosphere, saturation
from plant.fan import Fan
from plant.fuel import Fuel
from plant.gas_line import sized
from plant.machine import Condition, Fault, Machine
from plant.plate import AirPlate, FanPlate, FurnacePlate, MotorPlate, Plate, SitePlate, due
from plant.si import CFM, FOOT, KBTU_H, clip, kelvin
from plant.truth_air import airside, building, sensor, wheel
from plant.truth_electric import drive, line_volts, motor, transformer
from plant.truth_furnace import furnace, orifice
from plant.truth_gas import line, meter

OPTIONS = ("exhaust interlock", "low gas switch", "high gas switch", "door switch")


def unit(rng: Random) -> tuple[Plate, Fuel, Fan]:
    """A plate, the gas at its site, and the wheel as the maker's catalogue has it."""
    while True:
        drawn = _tried(rng)
        if drawn is not None:
            return drawn


def _tried(rng: Random) -> tuple[Plate, Fuel, Fan] | None:
    """None where the drawn furnaces want more or less air than such units move."""
    feet = plate_site.altitude(rng)
    gas = "propane" if rng.random() < 0.22 else "natural gas"
    fuel = plate_site.propane(rng) if gas == "propane" else plate_site.natural_gas(rng)
    winter, discharge = plate_site.climate(rng)
    warm = clip((discharge - winter) * rng.uniform(0.95, 1.1), 32.0, 105.0)
    furnaces = plate_furnaces.furnaces(rng, feet * FOOT, gas, warm)
    flow = _airflow(rng, furnaces, feet, warm)
    if not 1500.0 <= flow <= 20_000.0 or warm / len(furnaces) > 85.0:
        return None
    air = plate_air.airside(rng, flow)
    fan, fan_plate, motor_plate, direct = _moved(rng, air, len(furnaces), flow)
    load = sum(one.input for one in furnaces) * KBTU_H
    site = _site(rng, feet, fuel, gas, load, (winter, discharge))
    power = max(point[2] or 0.0 for point in fan_plate.curve) if fan_plate.curve else 1.0
    drive_plate = plate_electric.drive(
        rng, motor_plate.phases == 3, direct, fan_plate.speed, motor_plate.speed, max(power, 0.5)
    )
    plate = Plate(
        tag=f"MAU-{rng.randint(1, 12)}",
        arrangement=rng.choice(("blow-through", "draw-through")), indoor=rng.random() < 0.25,
        options=tuple(name for name in OPTIONS if rng.random() < 0.5),
        control_power=rng.choice((75.0, 100.0, 150.0)), motor=motor_plate, drive=drive_plate,
        fan=fan_plate, air=air, furnaces=furnaces, leading=0, site=site,
    )  # fmt: skip
    return plate, fuel, fan


def _airflow(rng: Random, furnaces: tuple[FurnacePlate, ...], feet: float, warm: float) -> float:
    """What these furnaces can warm, with the margin a designer happens to have [cfm]."""
    p = atmosphere(feet * FOOT)
    heat = sum(one.input * due(one.derate, feet * FOOT, p) * one.efficiency for one in furnaces)
    margin = rng.lognormvariate(0.08, 0.07)
    return 50.0 * round(heat * 1000.0 / (1.08 * warm * margin) / 50.0)


def _moved(
    rng: Random, air: AirPlate, furnaces: int, flow: float
) -> tuple[Fan, FanPlate, MotorPlate, bool]:
    """Fan and motor for the drops."""
    direct = rng.random() < (0.5 if flow < 6000 else 0.3)
    poles = 1200.0 if flow > 2600 else 1800.0
    if direct:
        fan, fan_plate = plate_air.fan(rng, air, furnaces, poles * 0.97)
        direct = fan.width < 2.4  # a wider wheel than a double one nobody makes
    if not direct:
        fan, fan_plate = plate_air.fan(rng, air, furnaces, None)
    brake = fan.power(air.airflow * CFM, 1.204, fan_plate.speed)
    motor_plate = plate_electric.motor(rng, brake * 1.03, poles if direct else 1800.0)
    return fan, fan_plate, motor_plate, direct


def _site(
    rng: Random, feet: float, fuel: Fuel, gas: str, load: float, climate: tuple[float, float]
) -> SitePlate:
    metres, shares = plate_site.lengths(rng)
    others = tuple(share * load for share in shares)
    density = fuel.density(atmosphere(feet * FOOT) + 1700.0, 285.0)
    heat = fuel.gross / fuel.molar_mass
    pipes = sized(load, metres, others, plate_site.ALLOWED, density, gas, heat)
    return plate_site.site(rng, feet, fuel, gas, load, pipes, *climate)


def machine(rng: Random, seed: int, plate: Plate, fuel: Fuel, catalogue: Fan) -> Machine:
    """What truly stands there, before anybody turned a screw."""
    weather = _weather(rng, plate)
    gas_temperature = clip(0.5 * weather.outdoor + 0.5 * 285.0 + rng.gauss(0.0, 4.0), 255.0, 310.0)
    side, fan = airside(rng, plate, catalogue), wheel(rng, plate, catalogue)
    true_motor = motor(rng, plate.motor)
    true_drive = drive(rng, plate, true_motor)
    volts, sag = line_volts(rng, plate.motor)
    furnaces = tuple(
        furnace(rng, plate, one, fuel, gas_temperature, weather) for one in plate.furnaces
    )
    return Machine(
        seed=seed, arrangement=plate.arrangement, indoor=plate.indoor, fan=fan,
        airside=side, motor=true_motor, drive=true_drive, vfd=plate.drive.vfd, hz=60.0,
        volts=volts, sag=sag, transformer=transformer(rng, plate), furnaces=furnaces,
        controls=tuple(one.control for one in plate.furnaces), leading=plate.leading, fuel=fuel,
        line=line(rng, plate, fuel), meter=meter(rng, plate), gas_temperature=gas_temperature,
        building=building(rng, plate), sensor=sensor(rng),
        belt=_belt(rng, plate), orifice=tuple(orifice(rng, one) for one in furnaces),
        intake_warmth=max(rng.gauss(0.3, 0.6), -0.3), weather=weather, fault=Fault("none"),
    )  # fmt: skip


def _belt(rng: Random, plate: Plate) -> tuple[float, float, float]:
    """Force [N] and angle [deg] as the last man left them, and the span [m]."""
    low, high = plate.drive.force
    inside = rng.uniform(low, high) if rng.random() < 0.8 else rng.uniform(0.6 * low, 1.2 * high)
    angle = abs(rng.gauss(0.15, 0.2 if rng.random() < 0.88 else 0.6))
    return inside * 4.4482, angle, plate.drive.span * 0.0254


def _warmest(plate: Plate) -> float:
    """Outdoors at which high fire just reaches the plate's greatest outlet temperature [K]."""
    p = atmosphere(plate.site.altitude * FOOT)
    heat = sum(
        one.input * due(one.derate, plate.site.altitude * FOOT, p) * one.efficiency
        for one in plate.furnaces
    )
    rise = heat * 1000.0 / (1.08 * plate.air.airflow)
    return kelvin(plate.furnaces[0].max_outlet - rise)


def _weather(rng: Random, plate: Plate) -> Condition:
    """A day between the design day and high summer, most often one that lets high fire last."""
    winter = kelvin(plate.site.winter)
    warmest = 306.0 if rng.random() < 0.15 else min(306.0, _warmest(plate))
    outdoor = clip(winter + rng.betavariate(1.8, 1.5) * (warmest - winter), 248.2, 308.0)
    wettest = saturation(295.0) / saturation(outdoor)  # dew points seldom pass 22 degC
    humidity = clip(rng.gauss(0.62, 0.16), 0.15, min(0.98, wettest))
    p = atmosphere(plate.site.altitude * FOOT) * (1.0 + rng.gauss(0.0027, 0.0063))
    return Condition(outdoor, humidity, p, room=rng.uniform(290.0, 298.0),
                     wind=abs(rng.gauss(0.0, 2.0)),
                     monoxide=rng.lognormvariate(-14.7, 0.7))  # fmt: skip
