"""What the plate says of the machine, made ready for the model: once, whatever is asked later.

What nobody declared gets a stated default here; `unknowns` gives such a thing a wider spread.
"""

from dataclasses import dataclass

from lightoff.machine.machine import Machine
from lightoff.machine.model.burner import RatedBurner, rated_burner
from lightoff.physics.curve import Curve, Points
from lightoff.physics.fan_curve import (
    BACKWARD_INCLINED,
    power_curve,
    pressure_curve,
    standard_powers,
    standard_pressures,
)
from lightoff.physics.motor_current import plate_power_factor
from lightoff.physics.motor_speed import synchronous_speed
from lightoff.quantity import si

INCH = si(1, "inwc")  # [Pa]
HOOD, DAMPER, FILTERS, FURNACE = 0.10 * INCH, 0.08 * INCH, 0.25 * INCH, 0.25 * INCH  # judgement
OUTLET = 0.08 * INCH  # [Pa] a size for what the way into the duct takes, or gives back; judgement
EXTERNAL = 0.5 * INCH  # [Pa] of the duct, where the design is silent; engineering judgement
MOTOR_EFFICIENCY = 0.90  # [1] where the plate is silent; engineering judgement
FAN_EFFICIENCY = 0.60  # [1] static, at design, where the plate shows no power; judgement
LEAST_SLIP = 0.002  # [1] of a plate that shows the field's own speed; engineering judgement
USUAL_SLIP = 0.02  # [1] at full load, where the plate shows no speed; engineering judgement


@dataclass(frozen=True)
class RatedMotor:
    """Output [W], volts [V], amps [A], efficiency, power factor, field and slip speed [rpm]."""

    power: float
    volts: float
    amps: float
    efficiency: float
    power_factor: float
    phases: int
    frequency: float
    synchronous: float
    slip_speed: float


@dataclass(frozen=True)
class RatedFan:
    """Curves of pressure and of shaft power at `speed` and 1.204 kg/m3; the design airflow.

    `pressure` [Pa] is that of the first point: a size to compare with.
    """

    speed: float
    pressures: Curve
    powers: Curve
    airflow: float
    pressure: float
    declared: bool


@dataclass(frozen=True)
class Drops:
    """Pressure drops at the design airflow and 1.204 kg/m3 [Pa]; each furnace's its own."""

    intake: float
    filters: float
    furnace: float
    coil: float
    outlet: float
    duct: float


@dataclass(frozen=True)
class Rated:
    """A machine made ready for the model."""

    machine: Machine
    motor: RatedMotor
    fan: RatedFan
    drops: Drops
    burners: tuple[RatedBurner, ...]
    ratio: float

    @property
    def blow_through(self) -> bool:
        return self.machine.unit.arrangement == "blow-through"


def rate(machine: Machine) -> Rated:
    """Everything of a machine that no reading can change."""
    motor = _motor(machine)
    drops = _drops(machine)
    fan = _fan(machine, motor, drops)
    burners = tuple(rated_burner(machine, number) for number, _ in machine.numbered())
    return Rated(machine, motor, fan, drops, burners, _ratio(machine, motor, fan))


def _motor(machine: Machine) -> RatedMotor:
    plate, frequency = machine.motor, machine.drive.full_speed_frequency
    if not machine.drive.vfd:
        frequency = machine.electrical.frequency
    field, slip_speed = _field(plate.speed, frequency)
    efficiency = plate.efficiency or MOTOR_EFFICIENCY
    power_factor = plate.power_factor or float(
        plate_power_factor(
            rated_power=plate.power,
            efficiency=efficiency,
            rated_volts=plate.volts,
            rated_amps=plate.full_load_amps,
            phases=machine.electrical.phases,
        )
    )
    return RatedMotor(
        power=plate.power,
        volts=plate.volts,
        amps=plate.full_load_amps,
        efficiency=efficiency,
        power_factor=power_factor,
        phases=machine.electrical.phases,
        frequency=frequency,
        synchronous=field,
        slip_speed=slip_speed,
    )


def _field(speed: float | None, frequency: float) -> tuple[float, float]:
    """Speed of the field, and how far the plate's speed lies behind it [rpm]."""
    if speed is None:
        field = float(synchronous_speed(frequency, 4))
        return field, USUAL_SLIP * field
    poles = max(2 * int(60 * frequency / speed), 2)
    field = float(synchronous_speed(frequency, poles))
    return field, max(field - speed, LEAST_SLIP * field)


def _drops(machine: Machine) -> Drops:
    plate = machine.airside
    hood, damper, filters, furnace = (
        guess if declared is None else declared
        for declared, guess in (
            (plate.hood, HOOD),
            (plate.damper, DAMPER),
            (plate.filters_clean, FILTERS),
            (plate.furnace, FURNACE),
        )
    )
    duct = machine.design.external_static
    return Drops(
        intake=hood + damper,
        filters=filters,
        furnace=furnace,
        coil=plate.coil,
        outlet=OUTLET,
        duct=EXTERNAL if duct is None else duct,
    )


def _fan(machine: Machine, motor: RatedMotor, drops: Drops) -> RatedFan:
    """The plate's curve; else the standard shape through what the design asks for."""
    plate, airflow = machine.fan, machine.design.airflow
    speed = plate.curve_speed or plate.speed or _driven(machine, motor)
    if len(plate.curve) >= 2:
        pressures = tuple((point.airflow, point.pressure) for point in plate.curve)
        powers = tuple(
            (point.airflow, point.power or point.airflow * point.pressure / FAN_EFFICIENCY)
            for point in plate.curve
        )
        return _curves(speed, pressures, powers, airflow, declared=True)
    pressure = drops.intake + drops.filters + drops.coil + drops.duct
    pressure += drops.furnace * len(machine.furnaces)
    power = airflow * pressure / FAN_EFFICIENCY
    for point in plate.curve:
        airflow, pressure, power = point.airflow, point.pressure, point.power or power
    return _curves(
        speed,
        standard_pressures(BACKWARD_INCLINED, airflow=airflow, pressure=pressure),
        standard_powers(BACKWARD_INCLINED, airflow=airflow, power=power),
        airflow,
        declared=False,
    )


def _curves(
    speed: float, pressures: Points, powers: Points, airflow: float, *, declared: bool
) -> RatedFan:
    return RatedFan(
        speed=speed,
        pressures=pressure_curve(pressures),
        powers=power_curve(powers),
        airflow=airflow,
        pressure=pressures[0][1],
        declared=declared,
    )


def _driven(machine: Machine, motor: RatedMotor) -> float:
    """Fan speed by the drive at the motor's rated speed [rpm]."""
    return (motor.synchronous - motor.slip_speed) * _sheaves(machine, 1.0)


def _sheaves(machine: Machine, otherwise: float) -> float:
    drive = machine.drive
    if drive.kind == "belt" and drive.motor_sheave and drive.fan_sheave:
        return drive.motor_sheave / drive.fan_sheave
    return otherwise


def _ratio(machine: Machine, motor: RatedMotor, fan: RatedFan) -> float:
    """Fan speed over motor speed, without slip; where no sheave is declared, as designed."""
    if machine.drive.kind == "direct":
        return 1.0
    wanted = machine.fan.speed or fan.speed
    return _sheaves(machine, wanted / (motor.synchronous - motor.slip_speed))


def design_frequency(rated: Rated) -> float:
    """Hertz at which the fan about turns as designed."""
    wanted = rated.machine.fan.speed or rated.fan.speed
    return (
        rated.motor.frequency * wanted / (rated.motor.synchronous * (1 - USUAL_SLIP) * rated.ratio)
    )
