"""The gas at this site, and the input and manifold pressure its altitude allows."""

from functools import lru_cache
from typing import NamedTuple

from lightoff.machine.machine import Machine
from lightoff.machine.plate import Furnace, Gas
from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.constants import GAS_BASE_PRESSURE, STANDARD_PRESSURE
from lightoff.physics.fuel_gas import wobbe
from lightoff.physics.gas_properties import US_TRADE, GasProperties, properties
from lightoff.physics.heating_value import heating_value_at
from lightoff.physics.orifice import (
    altitude_density_ratio,
    code_derate_factor,
    manifold_for_input_factor,
)
from lightoff.quantity import si

TOGETHER = 0.88  # [1] correlation of heating value and relative density across cities
DECLARED_HEATING_VALUE = 0.0077  # [1] month to month 0.7 %, base pressure not said 0.32 %
DECLARED_DENSITY = 0.012  # [1] month to month; engineering judgement


class Known(NamedTuple):
    """A value [SI] and its standard uncertainty."""

    value: float
    spread: float


# a gas nobody declared: heating value [J/m3], relative density [1]. Natural gas: US EIA state means
# 2020 to 2025; GRI-92/0123 (from memory). Propane: HD-5 limits, 2503 Btu/ft3 and 1.514 as an ideal
# gas at 14.696 psia; a meter turns the real gas at 30 inHg
_PROPANE_Z = 0.982  # [1] propane at the base state, ISO 6976:2016
_PROPANE = si(2503, "Btu/ft3") / _PROPANE_Z * GAS_BASE_PRESSURE / STANDARD_PRESSURE
UNDECLARED: dict[Gas, tuple[Known, Known]] = {
    "natural gas": (Known(si(1037, "Btu/ft3"), si(16, "Btu/ft3")), Known(0.598, 0.018)),
    "propane": (Known(_PROPANE, si(19, "Btu/ft3")), Known(1.514 / _PROPANE_Z, 0.0115)),
}


@lru_cache(maxsize=64)
def _properties(composition: tuple[tuple[str, float], ...]) -> GasProperties:
    """Of a declared gas: asked for again with every reading."""
    return properties(dict(composition), US_TRADE)


def heating_value(machine: Machine, gas: Gas) -> Known:
    """Gross heating value at 60 degF and 30 inHg dry [J/m3], declared or with its spread."""
    site = machine.site
    if site.gas_composition:
        value = float(_properties(site.gas_composition).heating_value)
    elif site.heating_value is None:
        return UNDECLARED[gas][0]
    elif site.heating_value_basis == "as delivered":  # per volume at the site's own pressure
        value = float(
            heating_value_at(
                site.heating_value,
                pressure=barometric_pressure(site.altitude),
                base_pressure=GAS_BASE_PRESSURE,
            )
        )
    else:
        value = site.heating_value
    return Known(value, DECLARED_HEATING_VALUE * value)


def relative_density(machine: Machine, gas: Gas) -> Known:
    """Relative density [1], declared or with its spread."""
    site = machine.site
    if site.gas_composition:
        value = float(_properties(site.gas_composition).relative_density)
    elif site.relative_density is None:
        return UNDECLARED[gas][1]
    else:
        value = site.relative_density
    return Known(value, DECLARED_DENSITY * value)


def rated_wobbe(machine: Machine, furnace: Furnace) -> float:
    """Wobbe number of the gas the plate's input was stated for [J/m3]; the site's by default."""
    density = relative_density(machine, furnace.gas).value
    if furnace.rated_heating_value is None:
        return float(wobbe(heating_value(machine, furnace.gas).value, density))
    stated = furnace.rated_relative_density
    return float(wobbe(furnace.rated_heating_value, density if stated is None else stated))


def allowed_input(machine: Machine, furnace: Furnace) -> float:
    """The plate's input for this altitude: less the codes' derate where one is to be made [W]."""
    if furnace.derate in ("orifice", "manifold"):
        return furnace.input * float(code_derate_factor(machine.site.altitude))
    return furnace.input


def orifice_rating(machine: Machine, furnace: Furnace) -> float:
    """Input of the orifices as they were chosen, at the plate's manifold [W]."""
    return furnace.input if furnace.derate == "manifold" else allowed_input(machine, furnace)


def orifice_pressure(machine: Machine, furnace: Furnace) -> float:
    """Air pressure for which the orifices were chosen [Pa].

    Where the plate or a smaller orifice already answers for the altitude, it is the altitude's.
    """
    if furnace.derate in ("orifice", "plate"):
        return float(barometric_pressure(machine.site.altitude))
    return STANDARD_PRESSURE


def least_input(machine: Machine, furnace: Furnace) -> float:
    """95 % of what is allowed; of what the orifice gives here by physics where nothing is derated.

    `derate = "none"` leaves the orifice and the manifold of sea level: it gives less by itself.
    """
    physics = 1.0
    if furnace.derate == "none":
        physics = float(altitude_density_ratio(machine.site.altitude)) ** 0.5
    return 0.95 * allowed_input(machine, furnace) * physics


def expected_manifold(machine: Machine, furnace: Furnace, plate: float) -> float:
    """Manifold pressure to set here [Pa]: the plate's, lowered where it makes the derate."""
    if furnace.derate != "manifold":
        return plate
    factor = float(code_derate_factor(machine.site.altitude))
    if factor >= 1.0:
        return plate
    return plate * float(
        manifold_for_input_factor(factor, altitude_density_ratio(machine.site.altitude))
    )
