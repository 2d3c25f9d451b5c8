"""The heat exchanger of a furnace: as large as the plate's efficiency says, asked at any fire."""

from collections.abc import Callable
from typing import NamedTuple

from lightoff.formula import Number
from lightoff.formula.elementary import clip, everywhere, exp, log, maximum
from lightoff.machine.model.air import Air
from lightoff.physics.airstream import moist_heat_capacity
from lightoff.physics.constants import STANDARD_AIR_DENSITY, STANDARD_PRESSURE
from lightoff.physics.flue_gas import FlueGas, dry_flue, flue_vapour_pressure, water_fraction
from lightoff.physics.flue_loss import (
    flue_enthalpy,
    latent_loss,
    sensible_loss,
)
from lightoff.physics.flue_temperature import (
    flue_capacity,
    flue_temperature,
    wet_flue_enthalpy,
)
from lightoff.physics.heat_exchanger import (
    effectiveness,
    rated_effectiveness,
    transfer_units,
)
from lightoff.physics.saturation import dew_point
from lightoff.physics.stoichiometry import Stoichiometry
from lightoff.physics.thermochemistry import (
    HEAT_REFERENCE,
    carbon_dioxide_enthalpy,
    nitrogen_enthalpy,
    oxygen_enthalpy,
    water_vapour_enthalpy,
)

CASING_LOSS = 0.01  # [1] of the input; engineering judgement
WARM, HOT = 300.0, 500.0  # [K] between them the flue gas gives its heat
MOST_EFFECTIVE = 0.9999  # [1] what plates claim beyond that no exchanger gives
NEAR = 1e-4  # [1] of an efficiency
HALVINGS = 40
MOST_UNITS = 40.0  # transfer units of the largest exchanger
NEVER_WET = 345.0  # [K] above any dew point of flue gas
LEAST_APART = 1.0  # [K] of dew point and air, for anything to condense
LEAST_LEFT = 1e-6  # [1] of the way to the air's temperature
GRADUALLY = 0.03  # [1] of the way from the air up to the dew point; engineering judgement
WET_STEPS = 3  # the last moves the temperature by less than 0.1 K
MOST_CAPACITY = 0.9  # [1] of the flue gas over the air; the equations end there


class Heat(NamedTuple):
    """Gross efficiency [1], heat to the air [W], temperature of the flue gas [K]."""

    efficiency: Number
    output: Number
    flue: Number


class Hot(NamedTuple):
    """What the exchanger is given: fuel, its heat flow [W], flue gas per fuel [mol/mol].

    `capacity` is the heat capacity flow of the flue gas [W/K], `brought` what it would hold at the
    temperature of the combustion air [J/mol], `transfer_units` those of its flow.
    """

    fuel: Stoichiometry
    heat: Number
    flue: FlueGas
    capacity: Number
    brought: Number
    transfer_units: Number


def rated_transfer_units(
    fuel: Stoichiometry, flue: FlueGas, *, heat: float, efficiency: float, airflow: float
) -> float:
    """Those that give an efficiency at a heat flow [W] and an airflow of standard air [m3/s]."""
    air = Air(STANDARD_PRESSURE, 0.0, HEAT_REFERENCE, HEAT_REFERENCE)
    flow = airflow * STANDARD_AIR_DENSITY
    capacity = heat / fuel.heat * heat_capacity(flue)
    hot = Hot(fuel, heat, flue, capacity, 0.0, 0.0)

    def given(units: float) -> float:
        there = hot._replace(transfer_units=units)
        found = exchange(there, air, entering=HEAT_REFERENCE, flow=flow, lost=CASING_LOSS)
        return float(found.efficiency)

    share = rated_effectiveness(
        efficiency=efficiency, casing_loss=CASING_LOSS, available=1 - _vapour(fuel)
    )
    ratio = capacity / (flow * moist_heat_capacity(0.0))
    dry = transfer_units(min(share, MOST_EFFECTIVE), min(ratio, MOST_CAPACITY))
    if abs(given(dry) - efficiency) < NEAR:  # nothing condenses
        return float(dry)
    return _halved(lambda units: given(units) < efficiency, 0.0, MOST_UNITS)


def _halved(too_small: Callable[[float], bool], low: float, high: float) -> float:
    """Where a size begins to suffice."""
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if too_small(middle) else (low, middle)
    return high


def exchange(hot: Hot, air: Air, *, entering: Number, flow: Number, lost: Number) -> Heat:
    """What goes to a flow of dry air [kg/s] that enters at a temperature [K].

    `lost` is the share of the input that the casing loses [1].
    """
    flue = hot.flue._asdict()
    at_air = flue_enthalpy(entering, **flue)
    vapour = _vapour(hot.fuel)
    available = 1 - vapour - sensible_loss(at_air, hot.brought, heat=hot.fuel.heat)
    ratio = hot.capacity / (flow * moist_heat_capacity(air.moisture))
    share = effectiveness(hot.transfer_units, clip(ratio, 0.0, MOST_CAPACITY))
    kept = at_air + (1 - share) * available * hot.fuel.heat
    leaving = flue_temperature(kept, **flue)
    if not everywhere(leaving > NEVER_WET):
        leaving = leaving_wet(hot.flue, leaving, entering, air.barometer)
        kept = wet_flue_enthalpy(leaving, pressure=air.barometer, **flue)
    gone = vapour + sensible_loss(kept, hot.brought, heat=hot.fuel.heat)
    efficiency = 1 - gone - lost
    return Heat(efficiency, hot.heat * efficiency, leaving)


def leaving_wet(flue: FlueGas, dry: Number, entering: Number, pressure: Number) -> Number:
    """Temperature of flue gas that would leave at `dry`, were its water not to condense.

    Below its dew point it gives much more heat for each kelvin, so that the same transfer units
    take it less far towards the air: dT/(T - T_air) shrinks as the heat capacity grows. It begins
    gradually: the walls are colder than the gas.
    """
    moles = flue._asdict()
    gas = dry_flue(carbon_dioxide=flue.carbon_dioxide, nitrogen=flue.nitrogen, oxygen=flue.oxygen)
    dew = dew_point(flue_vapour_pressure(water_fraction(flue.water, gas), pressure))
    above = maximum(dew - entering, LEAST_APART)
    farther = log(maximum((dry - entering) / above, LEAST_LEFT))
    before = GRADUALLY * log(1 + exp(farther / GRADUALLY))  # what is gone of the way down to it
    plain = flue_capacity(dew, pressure=pressure, saturated=False, **moles)
    leaving = (dew + entering) / 2
    for _ in range(WET_STEPS):
        middle = (dew + leaving) / 2
        wet = flue_capacity(middle, pressure=pressure, saturated=True, **moles)
        leaving = entering + above * exp(before + (farther - before) * plain / wet)
    return leaving


def _vapour(fuel: Stoichiometry) -> Number:
    """Share of the input that goes as water vapour, nothing condensed."""
    return latent_loss(water=fuel.water, condensed=0.0, temperature=HOT, heat=fuel.heat)


_HEATS = tuple(
    (enthalpy(HOT) - enthalpy(WARM)) / (HOT - WARM)
    for enthalpy in (
        carbon_dioxide_enthalpy, water_vapour_enthalpy, nitrogen_enthalpy, oxygen_enthalpy,
    )
)  # fmt: skip


def heat_capacity(flue: FlueGas) -> Number:
    """Of the flue gas for each mole of fuel [J/(mol K)]."""
    return sum(moles * heat for moles, heat in zip(flue, _HEATS, strict=True))
