"""What a furnace truly is: orifices, combustion fan, exchanger, as its maker's works left it."""

from math import pi
from random import Random

from plant import flame
from plant.air import atmosphere
from plant.blower import Blower, fitted
from plant.exchanger import Exchanger, sized
from plant.flame import Flue, burn
from plant.fuel import AIR_MASS, Fuel, normal
from plant.furnace import Furnace
from plant.machine import Condition
from plant.plate import FurnacePlate, Plate, TrainPlate, due
from plant.root import between
from plant.si import (
    BTU,
    CFM,
    CUBIC_FOOT,
    FOOT,
    INWC,
    KBTU_H,
    SEA_LEVEL,
    STANDARD_AIR,
    UNIVERSAL,
    clip,
)
from plant.train import Train, mass_flow

ROOM = 293.15  # [K] of a works' test
MOIST = 0.0075  # [kg/kg] the same


def rated_fuel(plate: FurnacePlate) -> Fuel:
    """A gas of the heating value and relative density the plate was stated for."""
    if plate.gas == "propane":
        return normal(propane=0.955, propylene=0.02, butane=0.025)
    heat, density = plate.heating_value, plate.relative_density
    ethane, nitrogen = 0.04, 0.01
    for _ in range(4):
        gas = normal(methane=1.0 - ethane - nitrogen, ethane=ethane, nitrogen=nitrogen)
        short = heat - gas.heating_value / BTU * CUBIC_FOOT
        light = density - gas.relative_density
        # by part: ethane 770 Btu/ft3 and 0.49, nitrogen -1012 and 0.41 over methane
        determinant = 770.0 * 0.41 + 1012.0 * 0.49
        ethane += (short * 0.41 + 1012.0 * light) / determinant
        nitrogen += (770.0 * light - 0.49 * short) / determinant
    return gas


def furnace(
    rng: Random,
    plate: Plate,
    one: FurnacePlate,
    fuel: Fuel,
    gas_temperature: float,
    weather: Condition,
) -> Furnace:
    """Rated in the works at sea level, then carried to its height."""
    rated = rated_fuel(one)
    air = plate.air.airflow * CFM * STANDARD_AIR
    oxygen = rng.gauss(0.48 * one.oxygen[0] + 0.52 * one.oxygen[1], 0.008)
    excess = _excess(rated, oxygen)
    flue = burn(rated, excess, MOIST * AIR_MASS / 0.018015)
    input_ = one.input * KBTU_H
    jacket = rng.uniform(0.002, 0.007)
    casing = input_ * rng.uniform(0.002, 0.008) / 45.0
    efficiency = one.efficiency + rng.gauss(0.004, 0.009)
    exchanger, leaving, hot = _exchanger(rng, one, rated, flue, air, input_, efficiency, jacket)
    blower = _blower(rng, one, flue, input_ / rated.gross, hot, leaving, excess, rated)
    poor = rng.random() < 0.10
    return Furnace(
        gas=one.gas,
        trains=tuple(_train(rng, plate, one, train, rated, weather) for train in one.trains),
        blower=blower, exchanger=exchanger, jacket=jacket, casing=casing,
        preheat=abs(rng.gauss(2.0, 2.0)), vent_loss=rng.uniform(0.0, 0.02),
        co=rng.lognormvariate(-10.4, 0.5),
        impingement=rng.lognormvariate(-8.6, 0.8) if poor else 0.0,
        flame_signal=rng.lognormvariate(1.35, 0.35) * 1e-6,
    )  # fmt: skip


def _excess(fuel: Fuel, oxygen: float) -> float:
    """The excess air that leaves this much oxygen in the dry flue."""

    def over(excess: float) -> float:
        flue = burn(fuel, excess, 0.0)
        return flue.o2 / flue.dry - oxygen

    return between(over, 0.0, 6.0, 1e-7)


def _exchanger(
    rng: Random,
    one: FurnacePlate,
    fuel: Fuel,
    flue: Flue,
    air: float,
    input_: float,
    efficiency: float,
    jacket: float,
) -> tuple[Exchanger, float, float]:
    """Scaled so that the flue leaves with what the efficiency does not account for."""
    hot = flame.temperature(flue, flue.heat - jacket * fuel.gross, 1900.0)
    to_air = (efficiency + 0.004) * fuel.gross  # casing losses come off later
    leaving = _leaving(flue, flue.sensible(hot) - to_air)
    flow = input_ / fuel.gross
    rough = Exchanger(
        inside=1.0, outside=rng.uniform(1.6, 3.0), radiant=rng.uniform(0.1, 0.3),
        gas=flow * flue.mass, air=air, mean=1000.0, exponent=rng.uniform(0.72, 0.92),
    )  # fmt: skip
    return sized(rough, flue, flow, hot, 1010.0, ROOM, SEA_LEVEL, leaving), leaving, hot


def _leaving(flue: Flue, heat: float) -> float:
    """The temperature at which the products hold this heat, condensed water counted [K]."""
    return between(lambda T: flue.enthalpy(T, SEA_LEVEL) - heat, 285.0, 1500.0, 1e-5)


def _blower(
    rng: Random,
    one: FurnacePlate,
    flue: Flue,
    fuel_flow: float,
    hot: float,
    leaving: float,
    excess: float,
    fuel: Fuel,
) -> Blower:
    constant = SEA_LEVEL * 0.0281 / UNIVERSAL
    boxed = one.trains[0].reference == "burner compartment"
    inlet = rng.uniform(0.10, 0.28) if boxed else rng.uniform(0.01, 0.05)
    vent = rng.uniform(0.02, 0.10)
    return fitted(
        fuel_flow * flue.mass, SEA_LEVEL * AIR_MASS / UNIVERSAL / ROOM,
        constant / (0.5 * (hot + leaving)), constant / leaving,
        head=rng.uniform(300.0, 650.0), shares=(inlet, 1.0 - inlet - vent, vent),
        droop=rng.uniform(0.1, 0.35), rise=rng.uniform(0.8, 2.5), speed=1.0,
        low=_low_speed(rng, one, excess),
    )  # fmt: skip


def _low_speed(rng: Random, one: FurnacePlate, excess: float) -> float:
    """A fan that follows the fire keeps its excess air within reason; a constant one does not."""
    low = one.trains[0].low
    if low is None:
        return 1.0
    share = (low / one.trains[0].high) ** 0.5
    if share > 0.45 and rng.random() < 0.3:
        return 1.0
    ratio = (1.0 + excess * rng.uniform(1.0, 2.6)) / (1.0 + excess) * share
    return clip(ratio, 0.25, 1.0)


def _train(
    rng: Random,
    plate: Plate,
    one: FurnacePlate,
    train: TrainPlate,
    rated: Fuel,
    weather: Condition,
) -> Train:
    """Orifices that give what is due here at the plate's manifold, 1.2 % about 97 % of it.

    Makers aim a little under the plate (judgement): a unit above it fails its test.
    """
    altitude = plate.site.altitude * FOOT
    p = atmosphere(altitude)
    wanted = one.input * KBTU_H * train.share * due(one.derate, altitude, p)
    mass = wanted / rated.gross * rated.molar_mass * rng.gauss(0.970, 0.012)
    coefficient = rng.uniform(0.80, 0.92)
    area = 1e-4
    for _ in range(3):
        given = mass_flow(
            Train(1.0, 0.0, 0.0, 1.0, None, area, coefficient, False, mass), rated,
            train.high * INWC, p, 288.7,
        )  # fmt: skip
        area *= mass / given
    return Train(
        outlet=train.outlet * INWC, droop=rng.uniform(0.01, 0.05),
        valve=rng.uniform(0.25, 0.8) * INWC, high=train.high / train.outlet,
        low=None if train.low is None else train.low * INWC, area=area, coefficient=coefficient,
        boxed=train.reference == "burner compartment", rated=mass,
    )  # fmt: skip


def orifice(rng: Random, one: Furnace) -> float:
    """The drilled size of one burner's orifice [m]."""
    count = max(round(one.trains[0].rated * 50e6 / 12_000.0), 2)
    return (4.0 * one.trains[0].area / (pi * count)) ** 0.5
