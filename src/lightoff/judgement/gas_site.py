"""The gas at this site with its uncertainty: what it is, and how dense it is at the orifice."""

from lightoff.inference.estimate import Estimate, Part, combine
from lightoff.judgement.evidence import Evidence
from lightoff.machine import Machine
from lightoff.machine.gas import (
    TOGETHER,
    heating_value,
    orifice_pressure,
    rated_wobbe,
    relative_density,
)
from lightoff.machine.plate import Furnace, Gas
from lightoff.physics.fuel_gas import wobbe

ORIFICE_SCALE = 0.02  # [1] input at plate pressure and gas; engineering judgement
GAS_TEMPERATURE = 288.706  # [K] 60 degF
GAS_TEMPERATURE_SPREAD = 8.0  # [K] gas at the orifice against 60 degF; engineering judgement

_GAS = Part("gas of the day", "site")
_DENSITY = Part("density of the day", "site")


def site_heating_value(machine: Machine, gas: Gas) -> Estimate:
    """Gross heating value at 60 degF and 30 inHg dry [J/m3]."""
    known = heating_value(machine, gas)
    return Estimate(known.value, {_GAS: known.spread})


def site_relative_density(machine: Machine, gas: Gas) -> Estimate:
    """Relative density [1]; it moves together with the heating value."""
    known, apart = relative_density(machine, gas), (1 - TOGETHER**2) ** 0.5
    parts = {_GAS: TOGETHER * known.spread, _DENSITY: apart * known.spread}
    return Estimate(known.value, parts)


def wobbe_ratio(machine: Machine, furnace: Furnace) -> Estimate:
    """Wobbe number of the site's gas over that of the plate's rating [1]."""
    rated = rated_wobbe(machine, furnace)
    return combine(
        lambda value, density: wobbe(value, density) / rated,
        site_heating_value(machine, furnace.gas),
        site_relative_density(machine, furnace.gas),
    )


def orifice_density_ratio(evidence: Evidence, furnace: Furnace) -> Estimate:
    """Gas density at the orifice over that of the rating [1]."""
    reference = orifice_pressure(evidence.machine, furnace)
    temperature = Estimate(
        GAS_TEMPERATURE, {Part("gas temperature", "orifice"): GAS_TEMPERATURE_SPREAD}
    )
    return combine(
        lambda p, t: p / reference * GAS_TEMPERATURE / t, evidence.barometer(), temperature
    )
