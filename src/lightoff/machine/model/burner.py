"""One furnace: gas through its orifices, air through its fire, heat through its exchanger."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from lightoff.formula import Number
from lightoff.formula.elementary import maximum
from lightoff.machine.gas import orifice_pressure, orifice_rating, rated_wobbe
from lightoff.machine.machine import Machine
from lightoff.machine.model.air import INDOORS, Air
from lightoff.machine.model.case import Firing
from lightoff.machine.model.exchanger import Hot, heat_capacity, rated_transfer_units
from lightoff.machine.runs import Level
from lightoff.physics.combustion import excess_air_from_o2
from lightoff.physics.constants import GAS_BASE_TEMPERATURE
from lightoff.physics.flue_gas import FlueGas, flue_gas
from lightoff.physics.flue_loss import flue_enthalpy
from lightoff.physics.fuel_gas import wobbe
from lightoff.physics.gas_components import TYPICAL
from lightoff.physics.heat_exchanger import transfer_units_at_flow
from lightoff.physics.orifice import orifice_input
from lightoff.physics.stoichiometry import Stoichiometry, flue_air_ratio, stoichiometry

LEVELS: tuple[Level, Level] = ("high", "low")
EFFICIENCY = 0.80  # [1] gross, where the plate is silent; engineering judgement
FLUE_O2 = 0.075  # [1] dry, at high fire, where the plate is silent; engineering judgement
MANIFOLD = {"natural gas": 872.0, "propane": 2491.0}  # [Pa] 3.5 and 10 in. w.c.; common practice
LOW_SHARE = 0.25  # [1] of the manifold pressure at low fire, where the plate is silent; judgement
NO_PRESSURE = 1e-3  # [Pa] of a manifold: less is reckoned as that much
DRAWN = 450.0  # [K] flue gas at the combustion fan, with air of a room; engineering judgement
LEAST_AIR = -0.6  # [1] excess: below none the fire lacks air; the equations go on for a while


@dataclass(frozen=True)
class RatedTrain:
    """One train: input [W] at its manifold pressures [Pa]."""

    name: str
    input: float
    high: float
    low: float
    has_low_fire: bool

    @property
    def orifice(self) -> str:
        return f"{self.name}.orifice"

    def manifold(self, level: Level) -> str:
        """The unknown of its manifold pressure; without a low fire it is always that of high."""
        return f"{self.name}.manifold.{level if self.has_low_fire else 'high'}"


@dataclass(frozen=True)
class RatedBurner:
    """One furnace: input [W], its fuel, transfer units at a flue flow [mol/s]."""

    number: int
    trains: tuple[RatedTrain, ...]
    input: float
    input_low: float
    wobbe: float
    orifice_pressure: float
    fuel: Stoichiometry
    air_ratio: float
    o2: float
    has_low_fire: bool
    indoor: bool
    transfer_units: float
    flue_flow: float

    def air(self, level: Level) -> str:
        """The unknown of its combustion air, as the O2 it would leave at that level's rated input,
        with air of a room.

        What an analyser shows is nearly a straight line of it, as it is not of the air itself.
        """
        known = level if self.has_low_fire else "high"
        return f"furnace.{self.number}.combustion_air.{known}"

    @property
    def warmer(self) -> str:
        """The unknown of how much warmer its combustion air is than that around the unit."""
        return f"furnace.{self.number}.air_warmer"


class Fire(NamedTuple):
    """What burns, whatever the airstream: manifold of each train [Pa], excess air [1]."""

    manifolds: tuple[Number, ...]
    excess_air: Number
    hot: Hot


def rated_burner(machine: Machine, number: int) -> RatedBurner:
    """One furnace of the plate."""
    plate = machine.furnace(number)
    whole = orifice_rating(machine, plate)
    trains = []
    for m, train in enumerate(plate.trains, start=1):
        high = train.manifold_high or MANIFOLD[plate.gas]
        low = train.manifold_low or LOW_SHARE * high
        name = f"train.{number}.{m}"
        trains.append(RatedTrain(name, whole * train.share, high, low, plate.has_low_fire))
    fuel = stoichiometry(dict(machine.site.gas_composition) or TYPICAL[plate.gas])
    ratio = flue_air_ratio(
        oxygen=fuel.oxygen, carbon_dioxide=fuel.carbon_dioxide, nitrogen=fuel.nitrogen
    )
    o2 = sum(plate.flue_o2) / 2 if plate.flue_o2 else FLUE_O2
    flue = _flue(fuel, excess_air_from_o2(o2, ratio), moisture=0.0)
    return RatedBurner(
        number=number,
        trains=tuple(trains),
        input=whole,
        input_low=sum(t.input * (t.low / t.high) ** 0.5 for t in trains),
        wobbe=rated_wobbe(machine, plate),
        orifice_pressure=orifice_pressure(machine, plate),
        fuel=fuel,
        air_ratio=ratio,
        o2=o2,
        has_low_fire=plate.has_low_fire,
        indoor=machine.unit.mounting == "indoor",
        transfer_units=rated_transfer_units(
            fuel,
            flue,
            heat=plate.input,
            efficiency=plate.efficiency or EFFICIENCY,
            airflow=machine.design.airflow,
        ),
        flue_flow=float(plate.input / fuel.heat * sum(flue)),
    )


def fire(burner: RatedBurner, air: Air, values: Mapping[str, Number], firing: Firing) -> Fire:
    """What a furnace burns.

    Its combustion fan moves as much air whatever the orifices pass. It moves a volume of flue gas,
    which is as much warmer as the air is: in heat that is less air.
    """
    manifolds = tuple(
        firing.of(*(values[train.manifold(level)] for level in LEVELS)) for train in burner.trains
    )
    heat = _input(burner, air, values, manifolds)
    usual = firing.of(burner.input, burner.input_low)
    o2 = firing.of(*(values[burner.air(level)] for level in LEVELS))
    flue_gas_warmer = combustion_air(burner, air, values) - INDOORS
    thinner = DRAWN / (DRAWN + flue_gas_warmer)
    air_given = (1 + excess_air_from_o2(o2, burner.air_ratio)) * usual * thinner
    excess = maximum(air_given / heat - 1, LEAST_AIR)
    flue = _flue(burner.fuel, excess, air.moisture)
    burnt = heat / burner.fuel.heat
    units = transfer_units_at_flow(
        burner.transfer_units,
        burnt * sum(flue) / burner.flue_flow,
        exponent=values[f"furnace.{burner.number}.exponent"],
    )
    hot = Hot(
        fuel=burner.fuel,
        heat=heat * firing.lit,
        flue=flue,
        capacity=burnt * heat_capacity(flue),
        brought=flue_enthalpy(combustion_air(burner, air, values), **flue._asdict()),
        transfer_units=units * values[f"furnace.{burner.number}.exchanger"],
    )
    return Fire(tuple(each * firing.lit for each in manifolds), excess, hot)


def _input(
    burner: RatedBurner, air: Air, values: Mapping[str, Number], manifolds: tuple[Number, ...]
) -> Number:
    """Heat flow of all trains [W], by the root law."""
    gas = wobbe(values["gas.heating_value"], values["gas.relative_density"]) / burner.wobbe
    temperature = air.of_pipes(values["gas.orifice_warmer"])
    density = air.barometer / burner.orifice_pressure * GAS_BASE_TEMPERATURE / temperature
    parts = [
        orifice_input(
            rated_input=train.input * values[train.orifice] * values["gas.orifices"],
            manifold=maximum(manifold, NO_PRESSURE),
            rated_manifold=train.high,
            wobbe_ratio=gas,
            density_ratio=density,
        )
        for train, manifold in zip(burner.trains, manifolds, strict=True)
    ]
    return sum(parts[1:], start=parts[0])


def combustion_air(burner: RatedBurner, air: Air, values: Mapping[str, Number]) -> Number:
    """Temperature of the air that goes to the fire [K]: the room's, or that over the roof."""
    return (INDOORS if burner.indoor else air.outdoor) + values[burner.warmer]


def _flue(fuel: Stoichiometry, excess_air: Number, moisture: Number) -> FlueGas:
    return flue_gas(
        excess_air=excess_air,
        oxygen=fuel.oxygen,
        carbon_dioxide=fuel.carbon_dioxide,
        water=fuel.water,
        nitrogen=fuel.nitrogen,
        humidity_ratio=moisture,
    )
