"""The gas at this site, and the input and manifold pressure its altitude allows."""

from lightoff.inference.estimate import Estimate, Part, combine
from lightoff.judgement.evidence import Evidence
from lightoff.machine import Machine
from lightoff.machine.plate import Furnace
from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.constants import GAS_BASE_PRESSURE, STANDARD_PRESSURE
from lightoff.physics.fuel_gas import wobbe
from lightoff.physics.gas_properties import US_TRADE, properties
from lightoff.physics.heating_value import heating_value_at
from lightoff.physics.orifice import (
    altitude_density_ratio,
    code_derate_factor,
    manifold_for_input_factor,
)
from lightoff.quantity import si

# mean and standard uncertainty of a gas nobody declared: heating value [J/m3], relative density [1]
# natural gas: US EIA state means 2020 to 2025; GRI-92/0123 (from memory). Propane: HD-5 limits,
# 2503 Btu/ft3 and 1.514 as an ideal gas at 14.696 psia; a meter turns the real gas at 30 inHg
_PROPANE_Z = 0.982  # [1] propane at the base state, ISO 6976:2016
_UNDECLARED = {
    "natural gas": ((si(1037, "Btu/ft3"), si(16, "Btu/ft3")), (0.598, 0.018)),
    "propane": (
        (
            si(2503, "Btu/ft3") / _PROPANE_Z * GAS_BASE_PRESSURE / STANDARD_PRESSURE,
            si(19, "Btu/ft3"),
        ),
        (1.514 / _PROPANE_Z, 0.0115),
    ),
}
TOGETHER = 0.88  # [1] correlation of heating value and relative density across cities
DECLARED_HEATING_VALUE = 0.0077  # [1] month to month 0.7 %, base pressure not said 0.32 %
DECLARED_DENSITY = 0.012  # [1] month to month; engineering judgement
ORIFICE_SCALE = 0.02  # [1] input at plate pressure and gas; engineering judgement
GAS_TEMPERATURE = 288.706  # [K] 60 degF
GAS_TEMPERATURE_SPREAD = 8.0  # [K] gas at the orifice against 60 degF; engineering judgement

_GAS = Part("gas of the day", "site")
_DENSITY = Part("density of the day", "site")


def site_heating_value(machine: Machine, gas: str) -> Estimate:
    """Gross heating value at 60 degF and 30 inHg dry [J/m3], declared or with its spread."""
    site = machine.site
    (value, spread), _ = _UNDECLARED[gas]
    if site.gas_composition:
        value = properties(dict(site.gas_composition), US_TRADE).heating_value
        spread = DECLARED_HEATING_VALUE * value
    elif site.heating_value is not None:
        value = site.heating_value
        if site.heating_value_basis == "as delivered":  # per volume at the site's own pressure
            value = heating_value_at(
                value,
                pressure=barometric_pressure(site.altitude),
                base_pressure=GAS_BASE_PRESSURE,
            )
        spread = DECLARED_HEATING_VALUE * value
    return Estimate(value, {_GAS: spread})


def site_relative_density(machine: Machine, gas: str) -> Estimate:
    """Relative density [1]; it moves together with the heating value."""
    site = machine.site
    _, (value, spread) = _UNDECLARED[gas]
    if site.gas_composition:
        value = properties(dict(site.gas_composition), US_TRADE).relative_density
        spread = DECLARED_DENSITY * value
    elif site.relative_density is not None:
        value = site.relative_density
        spread = DECLARED_DENSITY * value
    apart = (1 - TOGETHER**2) ** 0.5
    return Estimate(value, {_GAS: TOGETHER * spread, _DENSITY: apart * spread})


def wobbe_ratio(machine: Machine, furnace: Furnace) -> Estimate:
    """Wobbe number of the site's gas over that of the plate's rating [1]."""
    here = combine(
        wobbe, site_heating_value(machine, furnace.gas), site_relative_density(machine, furnace.gas)
    )
    rated = here.value
    if furnace.rated_heating_value is not None:
        density = furnace.rated_relative_density
        rated = wobbe(
            furnace.rated_heating_value,
            density if density is not None else site_relative_density(machine, furnace.gas).value,
        )
    return combine(lambda w: w / rated, here)


def allowed_input(machine: Machine, furnace: Furnace) -> float:
    """The plate's input for this altitude: less the codes' derate where one is to be made [W]."""
    if furnace.derate in ("orifice", "manifold"):
        return furnace.input * float(code_derate_factor(machine.site.altitude))
    return furnace.input


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


def orifice_density_ratio(evidence: Evidence, furnace: Furnace) -> Estimate:
    """Gas density at the orifice over that of the rating [1].

    Where the plate or a smaller orifice already answers for the altitude, only the weather is left.
    """
    altitude = evidence.machine.site.altitude
    reference = STANDARD_PRESSURE
    if furnace.derate in ("orifice", "plate"):
        reference = float(barometric_pressure(altitude))
    temperature = Estimate(
        GAS_TEMPERATURE, {Part("gas temperature", "orifice"): GAS_TEMPERATURE_SPREAD}
    )
    return combine(
        lambda p, t: p / reference * GAS_TEMPERATURE / t, evidence.barometer(), temperature
    )
