"""One furnace: gas through its orifices, air through its fire, heat through its exchanger."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from lightoff.formula import Number
from lightoff.formula.elementary import clip, maximum
from lightoff.machine.gas import orifice_pressure, orifice_rating, rated_wobbe
from lightoff.machine.machine import Machine
from lightoff.machine.model.air import Air
from lightoff.machine.runs import Level
from lightoff.physics.airstream import moist_heat_capacity
from lightoff.physics.combustion import excess_air_from_o2
from lightoff.physics.constants import GAS_BASE_TEMPERATURE, STANDARD_AIR_DENSITY
from lightoff.physics.flue_gas import FlueGas, flue_gas
from lightoff.physics.flue_loss import flue_enthalpy, latent_loss, sensible_loss
from lightoff.physics.fuel_gas import wobbe
from lightoff.physics.gas_components import TYPICAL
from lightoff.physics.heat_exchanger import (
    effectiveness,
    rated_effectiveness,
    thermal_efficiency,
    transfer_units,
    transfer_units_at_flow,
)
from lightoff.physics.orifice import orifice_input
from lightoff.physics.stoichiometry import Stoichiometry, flue_air_ratio, stoichiometry
from lightoff.physics.thermochemistry import (
    carbon_dioxide_enthalpy,
    nitrogen_enthalpy,
    oxygen_enthalpy,
    water_vapour_enthalpy,
)

EFFICIENCY = 0.80  # [1] gross, where the plate is silent; engineering judgement
FLUE_O2 = 0.075  # [1] dry, at high fire, where the plate is silent; engineering judgement
CASING_LOSS = 0.01  # [1] of the input; engineering judgement
MANIFOLD = {"natural gas": 872.0, "propane": 2491.0}  # [Pa] 3.5 and 10 in. w.c.; common practice
LOW_SHARE = 0.25  # [1] of the manifold pressure at low fire, where the plate is silent; judgement
WARM, HOT = 300.0, 500.0  # [K] between them the flue gas gives its heat
NO_PRESSURE = 1e-3  # [Pa] of a manifold: less is reckoned as that much
LEAST_AIR = -0.6  # [1] excess: below none the fire lacks air; the equations go on for a while
MOST_EFFECTIVE = 0.999  # [1] what plates claim beyond that no exchanger gives
MOST_CAPACITY = 0.9  # [1] of the flue gas over the air; the equations end there


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
    """One furnace: input [W], heat and flue gas of its fuel, transfer units, flue flow [mol/s]."""

    number: int
    trains: tuple[RatedTrain, ...]
    input: float
    input_low: float
    wobbe: float
    orifice_pressure: float
    fuel: Stoichiometry
    air_ratio: float
    has_low_fire: bool
    transfer_units: float
    flue_flow: float

    def air(self, level: Level) -> str:
        """The unknown of its combustion air, as excess at the rated input of that level."""
        known = level if self.has_low_fire else "high"
        return f"furnace.{self.number}.combustion_air.{known}"


class Fire(NamedTuple):
    """What does not hang on the airstream: input [W], manifold of each train [Pa], excess air [1].

    `flue` is the flue gas per fuel, `capacity` its heat capacity flow [W/K], `brought` what it
    would hold at the temperature of the combustion air [J/mol], `transfer_units` those of its flow.
    """

    input: Number
    manifolds: tuple[Number, ...]
    excess_air: Number
    flue: FlueGas
    capacity: Number
    brought: Number
    transfer_units: Number


class Heat(NamedTuple):
    """Gross efficiency [1], heat to the air [W], and what the flue gas keeps [J/mol of fuel]."""

    efficiency: Number
    output: Number
    kept: Number


def rated_burner(machine: Machine, number: int) -> RatedBurner:
    """One furnace of the plate; its exchanger is as large as its efficiency says."""
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
    units, flow = _exchanger(machine, plate.input, plate.efficiency or EFFICIENCY, fuel,
                             excess_air_from_o2(o2, ratio))  # fmt: skip
    return RatedBurner(
        number=number,
        trains=tuple(trains),
        input=whole,
        input_low=sum(t.input * (t.low / t.high) ** 0.5 for t in trains),
        wobbe=rated_wobbe(machine, plate),
        orifice_pressure=orifice_pressure(machine, plate),
        fuel=fuel,
        air_ratio=ratio,
        has_low_fire=plate.has_low_fire,
        transfer_units=units,
        flue_flow=flow,
    )


def _exchanger(
    machine: Machine, heat: float, efficiency: float, fuel: Stoichiometry, excess_air: float
) -> tuple[float, float]:
    """Transfer units and flue flow [mol/s] at the rating: design airflow of standard air."""
    flue = _flue(fuel, excess_air, moisture=0.0)
    available = _available(fuel, 0.0, 0.0)  # the combustion air is as warm as the air
    share = rated_effectiveness(efficiency=efficiency, casing_loss=CASING_LOSS, available=available)
    flow = heat / fuel.heat
    air = machine.design.airflow * STANDARD_AIR_DENSITY * moist_heat_capacity(0.0)
    ratio = flow * _capacity(flue) / air
    units = transfer_units(min(share, MOST_EFFECTIVE), min(ratio, MOST_CAPACITY))
    return float(units), float(flow * _moles(flue))


def fire(burner: RatedBurner, air: Air, values: Mapping[str, Number], level: Level) -> Fire:
    """What a furnace burns. Its combustion fan moves as much air whatever the orifices pass."""
    gas = wobbe(values["gas.heating_value"], values["gas.relative_density"]) / burner.wobbe
    density = air.barometer / burner.orifice_pressure
    density = density * GAS_BASE_TEMPERATURE / values["gas.orifice.db"]
    manifolds = tuple(values[train.manifold(level)] for train in burner.trains)
    parts = [
        orifice_input(
            rated_input=train.input * values[train.orifice],
            manifold=maximum(manifold, NO_PRESSURE),
            rated_manifold=train.high,
            wobbe_ratio=gas,
            density_ratio=density,
        )
        for train, manifold in zip(burner.trains, manifolds, strict=True)
    ]
    heat = sum(parts[1:], start=parts[0])
    usual = burner.input if level == "high" else burner.input_low
    air_given = (1 + values[burner.air(level)]) * usual
    excess = maximum(air_given / heat - 1, LEAST_AIR)
    flue = _flue(burner.fuel, excess, air.moisture)
    burnt = heat / burner.fuel.heat
    units = transfer_units_at_flow(
        burner.transfer_units,
        burnt * _moles(flue) / burner.flue_flow,
        exponent=values[f"furnace.{burner.number}.exponent"],
    )
    return Fire(
        input=heat,
        manifolds=manifolds,
        excess_air=excess,
        flue=flue,
        capacity=burnt * _capacity(flue),
        brought=flue_enthalpy(combustion_air(air, values), **flue._asdict()),
        transfer_units=units * values[f"furnace.{burner.number}.exchanger"],
    )


def combustion_air(air: Air, values: Mapping[str, Number]) -> Number:
    """Temperature of the air that goes to the fire [K]: outdoors it passes a warm casing."""
    return air.outdoor + values["combustion_air.warmer"]


def heat(
    burner: RatedBurner,
    flame: Fire,
    air: Air,
    values: Mapping[str, Number],
    *,
    entering: Number,
    flow: Number,
) -> Heat:
    """What the exchanger gives to a flow of dry air [kg/s] that enters at a temperature [K]."""
    flue = flame.flue._asdict()
    at_air = flue_enthalpy(entering, **flue)
    available = _available(burner.fuel, at_air, flame.brought)
    ratio = flame.capacity / (flow * moist_heat_capacity(air.moisture))
    share = effectiveness(flame.transfer_units, clip(ratio, 0.0, MOST_CAPACITY))
    efficiency = thermal_efficiency(
        effectiveness=share, casing_loss=maximum(values["casing.loss"], 0.0), available=available
    )
    kept = at_air + (1 - share) * available * burner.fuel.heat
    return Heat(efficiency, flame.input * efficiency, kept)


def _flue(fuel: Stoichiometry, excess_air: Number, moisture: Number) -> FlueGas:
    return flue_gas(
        excess_air=excess_air,
        oxygen=fuel.oxygen,
        carbon_dioxide=fuel.carbon_dioxide,
        water=fuel.water,
        nitrogen=fuel.nitrogen,
        humidity_ratio=moisture,
    )


def _available(fuel: Stoichiometry, at_air: Number, brought: Number) -> Number:
    """Share of the input that lies above the temperature of the air, nothing condensed."""
    lost = sensible_loss(at_air, brought, heat=fuel.heat)
    vapour = latent_loss(water=fuel.water, condensed=0.0, temperature=HOT, heat=fuel.heat)
    return 1 - vapour - lost


_HEATS = tuple(
    (enthalpy(HOT) - enthalpy(WARM)) / (HOT - WARM)
    for enthalpy in (
        carbon_dioxide_enthalpy, water_vapour_enthalpy, nitrogen_enthalpy, oxygen_enthalpy,
    )
)  # fmt: skip


def _capacity(flue: FlueGas) -> Number:
    """Heat capacity of the flue gas for each mole of fuel [J/(mol K)]."""
    return sum(moles * heat for moles, heat in zip(flue, _HEATS, strict=True))


def _moles(flue: FlueGas) -> Number:
    """All of the flue gas for each mole of fuel [mol/mol]."""
    return sum(flue)
