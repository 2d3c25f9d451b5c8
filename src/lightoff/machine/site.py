"""Where the unit stands and what the engineer asked of it. SI; None is what nobody declared."""

from dataclasses import dataclass
from typing import Literal

HeatingValueBasis = Literal["standard", "as delivered"]


@dataclass(frozen=True)
class Design:
    """The engineer's schedule.

    airflow [m3/s at 1.204 kg/m3], external static [Pa], temperatures [K], exhaust [m3/s].
    """

    airflow: float
    discharge: float
    winter_outdoor: float
    summer_outdoor: float | None = None
    external_static: float | None = None
    exhaust: float | None = None


@dataclass(frozen=True)
class Pipe:
    """One length of gas pipe between regulator and unit: size and length [m], other load [W]."""

    size: float
    length: float
    other_load: float = 0.0


@dataclass(frozen=True)
class Site:
    """Altitude [m], the gas [J/m3 gross at 60 degF and 30 inHg dry], its supply [Pa], the meter."""

    altitude: float
    heating_value: float | None = None
    heating_value_basis: HeatingValueBasis = "standard"
    relative_density: float | None = None
    gas_composition: tuple[tuple[str, float], ...] = ()
    supply_pressure: float | None = None
    meter_dial: float | None = None
    meter_compensated: bool = False
    gas_cost: float | None = None
    weather: tuple[tuple[float, float], ...] = ()
    pipes: tuple[Pipe, ...] = ()
