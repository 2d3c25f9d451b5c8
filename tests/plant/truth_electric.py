"""What the motor, the belts, the line and the control circuit truly are."""

from math import pi
from random import Random

from plant.belt import Drive
from plant.control import Transformer
from plant.motor import Motor, Volts, built, three_volts
from plant.plate import MotorPlate, Plate
from plant.si import HP, INCH, RPM, clip


def motor(rng: Random, plate: MotorPlate) -> Motor:
    """Losses 7 %, slip 10 %, power factor 0.015 about the plate (NEMA's limits are wider)."""
    losses = (1.0 / plate.efficiency - 1.0) * rng.gauss(0.99, 0.07)
    slip = (plate.synchronous - plate.speed) * rng.gauss(1.0, 0.1)
    return built(
        plate.phases, plate.volts, 60.0, plate.synchronous, power=plate.power * HP,
        speed=plate.synchronous - max(slip, 6.0), efficiency=1.0 / (1.0 + losses),
        power_factor=clip(rng.gauss(plate.power_factor, 0.015), 0.5, 0.96),
    )  # fmt: skip


def drive(rng: Random, plate: Plate, true_motor: Motor) -> Drive:
    """Pitch diameters 0.7 % on fixed, 2 % on adjustable sheaves (sp-sheave-pitch)."""
    declared = plate.drive
    if not declared.belt:
        return Drive(False)
    spread = 0.015 if declared.adjustable else 0.006
    torque = plate.motor.power * HP / (true_motor.synchronous * RPM)
    return Drive(
        True, declared.motor_sheave * INCH * rng.gauss(1.0, spread),
        declared.fan_sheave * INCH * rng.gauss(1.0, 0.004), rated=torque,
        tension=clip(rng.gauss(1.0, 0.15), 0.6, 1.4), creep=rng.uniform(0.004, 0.012),
        bending=rng.uniform(0.008, 0.02), sliding=rng.uniform(0.008, 0.02),
    )  # fmt: skip


def line_volts(rng: Random, plate: MotorPlate) -> tuple[Volts, float]:
    """2.9 % about nominal (sp-supply-volts), some far off; unbalance by Weibull (field survey)."""
    spread = 0.024 if rng.random() < 0.72 else 0.09
    mean = plate.supply * (1.0 + rng.gauss(0.0, spread))
    sag = rng.uniform(0.002, 0.012)
    if plate.phases == 1:
        return (mean, mean, mean), sag
    unbalance = min(rng.weibullvariate(0.0094, 1.17) * 0.75, 0.018)
    return three_volts(mean, unbalance, rng.uniform(0.0, 2.0 * pi)), sag


def transformer(rng: Random, plate: Plate) -> Transformer:
    """Small transformers regulate by 12 % and 4 (sp-control-transformer)."""
    load = 0.9 / max(len(plate.furnaces), 1)
    heavy = rng.random() < 0.16
    return Transformer(
        nominal=plate.motor.supply, secondary=rng.gauss(24.3, 0.3),
        regulation=clip(rng.gauss(0.10, 0.03), 0.03, 0.2),
        idle=rng.uniform(0.15, 0.35), firing=load * rng.uniform(0.3, 0.6) * 75.0
        / plate.control_power, wire=rng.uniform(0.005, 0.03) * (6.0 if heavy else 1.0),
    )  # fmt: skip
