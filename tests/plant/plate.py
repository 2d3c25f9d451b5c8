"""What a plate, a schedule and a site say, in the units they are printed in."""

from dataclasses import dataclass

from plant.si import FOOT


@dataclass(frozen=True)
class TrainPlate:
    outlet: float  # [inwc]
    high: float
    low: float | None
    reference: str
    share: float


@dataclass(frozen=True)
class FurnacePlate:
    gas: str
    control: str
    input: float  # [kBtu/h]
    derate: str
    heating_value: float  # [Btu/ft3] of the gas the input is stated for
    relative_density: float
    efficiency: float
    rise: tuple[float, float]  # [degF]
    max_outlet: float  # [degF]
    supply: tuple[float, float]  # [inwc]
    oxygen: tuple[float, float]
    flue_max: float  # [degF]
    condensing: bool
    draft: tuple[float, float] | None  # [inwc]
    proving: tuple[float, float] | None  # [inwc]
    flame: float | None  # [uA]
    purge: float  # [s]
    trial: float
    failure: float
    trains: tuple[TrainPlate, ...]


@dataclass(frozen=True)
class MotorPlate:
    power: float  # [hp]
    volts: float
    amps: float
    service_factor: float
    speed: float  # [rpm]
    synchronous: float
    efficiency: float
    power_factor: float
    phases: int
    supply: float  # [V] the line's


@dataclass(frozen=True)
class DrivePlate:
    belt: bool
    vfd: bool
    adjustable: bool = False
    motor_sheave: float = 0.0  # [in]
    fan_sheave: float = 0.0
    belts: int = 1
    span: float = 0.0  # [in]
    force: tuple[float, float] = (0.0, 0.0)  # [lbf]


@dataclass(frozen=True)
class FanPlate:
    kind: str  # of blades; not on the plate
    wheel: float  # [in]
    speed: float  # [rpm] by design
    max_speed: float
    curve: tuple[tuple[float, float, float | None], ...]  # [cfm], [inwc], [hp]


@dataclass(frozen=True)
class AirPlate:
    airflow: float  # [cfm] standard
    external: float  # [inwc]
    hood: float
    damper: float
    filters: float
    change: float
    furnace: float
    coil: float
    recirculation: float
    exhaust: float  # [cfm]


@dataclass(frozen=True)
class PipePlate:
    size: str
    length: float  # [ft]
    other: float  # [kBtu/h]


@dataclass(frozen=True)
class SitePlate:
    altitude: float  # [ft]
    winter: float  # [degF]
    summer: float
    discharge: float
    heating_value: float | None  # [Btu/ft3]
    basis: str
    relative_density: float | None
    composition: tuple[tuple[str, float], ...]
    supply: float  # [inwc]
    dial: float  # [ft3]
    compensated: bool
    pipes: tuple[PipePlate, ...]


@dataclass(frozen=True)
class Plate:
    """All that is declared of a unit."""

    tag: str
    arrangement: str
    indoor: bool
    options: tuple[str, ...]
    control_power: float  # [VA]
    motor: MotorPlate
    drive: DrivePlate
    fan: FanPlate
    air: AirPlate
    furnaces: tuple[FurnacePlate, ...]
    leading: int
    site: SitePlate


def due(derate: str, altitude: float, p: float) -> float:
    """What a furnace should burn at its site, by its plate's input.

    `none`: what the orifice gives by physics. `plate`: the plate is for this altitude. Else the
    codes' 4 % by 1,000 ft of altitude, asked for above 2,000 ft (NFPA 54).
    """
    if derate == "plate":
        return 1.0
    if derate == "none":
        return (p / 101_325.0) ** 0.5
    feet = altitude / FOOT
    return 1.0 - 0.04 * feet / 1000.0 if feet > 2000.0 else 1.0
