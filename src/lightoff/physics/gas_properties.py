"""All a start-up wants to know of a gas of known composition, at one reference state."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from lightoff.formula import Number
from lightoff.physics import fuel_gas, heating_value
from lightoff.physics.constants import (
    GAS_BASE_PRESSURE,
    GAS_BASE_TEMPERATURE,
    STANDARD_PRESSURE,
)
from lightoff.quantity import si


@dataclass(frozen=True)
class ReferenceState:
    """To which temperature heat is reckoned [K], and where volume is metered [K, Pa]."""

    combustion: float
    temperature: float
    pressure: float


F60 = GAS_BASE_TEMPERATURE
US_TRADE = ReferenceState(F60, F60, GAS_BASE_PRESSURE)

# by the name a reader chooses: burnt at / metered at [degC]; 14.73 psia: US gas contracts
REFERENCE_STATES: dict[str, ReferenceState] = {
    "us-trade": US_TRADE,
    "us-14.73": ReferenceState(F60, F60, si(14.73, "psi")),
    "us-14.696": ReferenceState(F60, F60, STANDARD_PRESSURE),
    "15/15": ReferenceState(288.15, 288.15, STANDARD_PRESSURE),
    "25/0": ReferenceState(298.15, 273.15, STANDARD_PRESSURE),
    "25/20": ReferenceState(298.15, 293.15, STANDARD_PRESSURE),
    "0/0": ReferenceState(273.15, 273.15, STANDARD_PRESSURE),
}


class GasProperties(NamedTuple):
    """Of dry real gas at a reference state."""

    molar_mass: Number  # [kg/kmol]
    compressibility: Number  # [1]
    heating_value: Number  # [J/m3] gross
    net_heating_value: Number  # [J/m3]
    density: Number  # [kg/m3]
    relative_density: Number  # [1]
    wobbe: Number  # [J/m3] gross


def properties(fractions: Mapping[str, Number], state: ReferenceState) -> GasProperties:
    """What a composition comes to at a reference state."""
    mass = fuel_gas.molar_mass(fractions)
    metered = {"temperature": state.temperature, "pressure": state.pressure}
    Z = fuel_gas.compressibility(fractions, **metered)
    real = {"compressibility": Z, **metered}
    gross = heating_value.volumetric_heating_value(
        heating_value.molar_heating_value(fractions, state.combustion), **real
    )
    net = heating_value.volumetric_heating_value(
        heating_value.net_molar_heating_value(fractions, state.combustion), **real
    )
    d = fuel_gas.relative_density(mass, **real)
    rho = fuel_gas.gas_density(mass, **real)
    return GasProperties(mass, Z, gross, net, rho, d, fuel_gas.wobbe(gross, d))
