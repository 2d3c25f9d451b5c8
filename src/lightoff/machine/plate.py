"""What stands there, as its maker declared it. SI; None is what nobody declared."""

from dataclasses import dataclass, field
from typing import Literal

Gas = Literal["natural gas", "propane"]
Control = Literal["modulating", "two-stage", "single-stage"]
Derate = Literal["none", "orifice", "manifold", "plate"]
Reference = Literal["atmosphere", "burner compartment"]
Arrangement = Literal["blow-through", "draw-through"]
Mounting = Literal["rooftop", "indoor"]

Range = tuple[float, float]


@dataclass(frozen=True)
class Electrical:
    """The supply as declared: volts [V], frequency [Hz], control transformer [V, VA]."""

    volts: float
    phases: int
    frequency: float = 60.0
    control_volts: float = 24.0
    control_power: float | None = None


@dataclass(frozen=True)
class Motor:
    """The fan motor: output [W], volts [V], full-load amps [A], speed [rpm]."""

    power: float
    volts: float
    full_load_amps: float
    service_factor: float | None = None
    speed: float | None = None
    efficiency: float | None = None
    power_factor: float | None = None


@dataclass(frozen=True)
class Drive:
    """Belt or direct; sheaves are pitch diameters [m], `belt_force` the maker's window [N]."""

    kind: Literal["belt", "direct"]
    motor_sheave: float | None = None
    fan_sheave: float | None = None
    belts: int | None = None
    span: float | None = None
    adjustable: bool = False
    vfd: bool = False
    full_speed_frequency: float = 60.0
    belt_force: Range | None = None


@dataclass(frozen=True)
class CurvePoint:
    """One point of the fan's curve: airflow [m3/s], fan static pressure [Pa], shaft power [W]."""

    airflow: float
    pressure: float
    power: float | None = None


@dataclass(frozen=True)
class Fan:
    """The supply fan: wheel [m], speeds [rpm], its curve at `curve_speed` and 1.204 kg/m3."""

    wheel: float | None = None
    speed: float | None = None
    max_speed: float | None = None
    curve_speed: float | None = None
    curve: tuple[CurvePoint, ...] = ()


@dataclass(frozen=True)
class Airside:
    """Pressure drops at design airflow and standard air [Pa]; `furnace` is each furnace's."""

    hood: float | None = None
    damper: float | None = None
    filters_clean: float | None = None
    filters_change: float | None = None
    furnace: float | None = None
    coil: float = 0.0
    recirculation: float = 0.0


@dataclass(frozen=True)
class Train:
    """One gas train: plate pressures [Pa] and its share of the furnace's input."""

    valve_outlet: float | None = None
    manifold_high: float | None = None
    manifold_low: float | None = None
    reference: Reference = "atmosphere"
    share: float = 1.0


@dataclass(frozen=True)
class Furnace:
    """One furnace module, numbered in the order the air meets it.

    input [W], rise [K], temperatures [K], pressures [Pa], heating value [J/m3], times [s],
    `flue_o2` as a dry fraction, `flame_signal` [A or V] the plate's least.
    """

    gas: Gas
    control: Control
    input: float
    trains: tuple[Train, ...]
    leading: bool = False
    derate: Derate = "none"
    rated_heating_value: float | None = None
    rated_relative_density: float | None = None
    efficiency: float | None = None
    rise: Range | None = None
    max_outlet: float | None = None
    supply_min: float | None = None
    supply_max: float | None = None
    flue_o2: Range | None = None
    flue_max: float | None = None
    flue_draft: Range | None = None
    condensing: bool = False
    flame_signal: float | None = None
    proving_pressure: Range | None = None
    purge: float | None = None
    ignition_trial: float | None = None
    flame_failure: float | None = None
    post_purge: float | None = None
    stage_delay: float | None = None
    high_limit: float | None = None

    @property
    def has_low_fire(self) -> bool:
        return self.control != "single-stage"


@dataclass(frozen=True)
class Unit:
    """What the unit is called and what was ordered with it."""

    tag: str
    arrangement: Arrangement
    mounting: Mounting = "rooftop"
    serial: str | None = None
    serves: str | None = None
    options: frozenset[str] = frozenset()
    components: dict[str, str] = field(default_factory=dict)
