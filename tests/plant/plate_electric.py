"""Draws the motor and the drive of a plate."""

from random import Random

from plant.plate import DrivePlate, MotorPlate
from plant.si import HP

# [hp]: efficiency and power factor of common four-pole motors, about NEMA premium (from memory)
MOTORS = {
    0.5: (0.74, 0.68), 0.75: (0.77, 0.71), 1.0: (0.82, 0.74), 1.5: (0.845, 0.76),
    2.0: (0.855, 0.78), 3.0: (0.875, 0.80), 5.0: (0.895, 0.82), 7.5: (0.91, 0.82),
    10.0: (0.917, 0.83), 15.0: (0.924, 0.83), 20.0: (0.93, 0.84), 25.0: (0.936, 0.84),
    30.0: (0.936, 0.85), 40.0: (0.941, 0.85),
}  # fmt: skip
SLIPS = {0.5: 0.04, 1.0: 0.03, 3.0: 0.025, 10.0: 0.02, 100.0: 0.0175}  # up to this size


def motor(rng: Random, brake: float, synchronous: float) -> MotorPlate:
    """The next size above the power needed [W], sometimes one more."""
    wanted = brake / HP * rng.uniform(1.05, 1.25)
    sizes = [size for size in MOTORS if size >= wanted] or [40.0]
    power = sizes[1] if len(sizes) > 1 and rng.random() < 0.12 else sizes[0]
    phases = 3 if power > 3.0 or rng.random() < 0.55 else 1
    supply, volts = _volts(rng, phases, power)
    efficiency, factor = MOTORS[power]
    if phases == 1:  # a capacitor-run motor: less efficient, a better power factor
        efficiency, factor = efficiency - 0.06, min(factor + 0.12, 0.92)
    slip = next(s for size, s in SLIPS.items() if power <= size) * rng.uniform(0.85, 1.15)
    amps = power * HP / (efficiency * factor * volts * (3.0**0.5 if phases == 3 else 1.0))
    return MotorPlate(
        power, volts, _amps(amps * rng.uniform(1.0, 1.03)), rng.choice((1.15, 1.15, 1.25, 1.0)),
        5.0 * round(synchronous * (1.0 - slip) / 5.0), synchronous, round(efficiency, 3), factor,
        phases, supply,
    )  # fmt: skip


def _volts(rng: Random, phases: int, power: float) -> tuple[float, float]:
    """Of the supply, and on the motor's plate."""
    if phases == 1:
        single = ((230.0, 230.0), (240.0, 230.0), (208.0, 208.0), (120.0, 115.0))
        return rng.choice(single[:3] if power > 1.0 else single)
    pairs = ((480.0, 460.0), (460.0, 460.0), (208.0, 208.0), (240.0, 230.0), (600.0, 575.0),
             (208.0, 230.0))  # fmt: skip
    return rng.choices(pairs, (35, 20, 20, 12, 10, 3))[0]  # the last is the trade's old mistake


def _amps(amps: float) -> float:
    return round(amps, 1) if amps < 100 else float(round(amps))


def drive(
    rng: Random, three: bool, direct: bool, fan: float, motor_speed: float, power: float
) -> DrivePlate:
    """Direct, or belts for this ratio of speeds; with or without a frequency drive."""
    if direct:
        return DrivePlate(False, three)
    vfd = three and rng.random() < 0.45
    adjustable = not vfd and power <= 7.5 and rng.random() < 0.75
    spare = rng.uniform(1.0, 1.08) if vfd else 1.0
    small = round(3.0 + 0.13 * power + rng.uniform(0.0, 1.6), 1)
    large = round(small * motor_speed / (fan * spare), 1)
    force = round(2.2 + 0.35 * power**0.8, 1)
    span = round(max(1.1 * (small + large), 14.0) * rng.uniform(0.9, 1.3))
    belts = 1 if power <= 3 else 2 if power <= 15 else 3
    return DrivePlate(True, vfd, adjustable, small, large, belts, span,
                      (force, round(1.5 * force, 1)))  # fmt: skip
