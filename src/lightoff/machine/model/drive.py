"""Motor, drive and belt: what turns the fan, and what that takes from the supply."""

from collections.abc import Mapping
from typing import NamedTuple

from lightoff.formula import Number
from lightoff.machine.model.rated import Rated
from lightoff.physics.frequency_drive import flux, volts_in_step
from lightoff.physics.motor import losses_at_load
from lightoff.physics.motor_current import motor_amps
from lightoff.physics.motor_speed import speed_at_load
from lightoff.physics.sheave import fan_speed_at_ratio

ROUNDED_OFF = 0.003  # [1] of the line's volts; engineering judgement
FREE_LEGS = ("ab", "bc")  # how far off the mean; the third makes up for both
FREE_LINES = ("a", "b")


class Turning(NamedTuple):
    """Hertz and volts at the motor, speeds [rpm], electric power [W], amps before unbalance."""

    frequency: Number
    volts: Number
    motor_speed: Number
    fan_speed: Number
    power: Number
    amps: Number


def turning(rated: Rated, values: Mapping[str, Number], load: Number) -> Turning:
    """How the motor turns and what it draws under a load, shaft power over rated power."""
    motor = rated.motor
    plate = {"rated_volts": motor.volts, "rated_frequency": motor.frequency}
    frequency, volts = motor.frequency, values["power.volts"]
    rated_volts: Number = motor.volts
    if rated.machine.drive.vfd:
        frequency = values["vfd.hz"]
        rated_volts = volts_in_step(frequency, **plate)
        volts = _given_by_drive(rated_volts, line=volts)
    speed = speed_at_load(
        load,
        synchronous=motor.synchronous * frequency / motor.frequency,
        rated_slip_speed=motor.slip_speed * values["motor.slip"],
        flux=flux(volts, frequency, **plate),
    )
    losses = losses_at_load(load, motor.efficiency) * values["motor.losses"]
    power = motor.power * (load + losses)
    amps = motor_amps(
        power,
        volts=volts,
        phases=motor.phases,
        rated_amps=motor.amps,
        rated_volts=rated_volts,
        power_factor=motor.power_factor,
    )
    return Turning(
        frequency=frequency,
        volts=volts,
        motor_speed=speed,
        fan_speed=_fan_speed(rated, values, speed),
        power=power,
        amps=amps * values["motor.current"],
    )


def _given_by_drive(in_step: Number, *, line: Number) -> Number:
    """Volts in step with the hertz, as far as the line has them; near those it rounds off."""
    middle, half = (in_step + line) / 2, (in_step - line) / 2
    return middle - (half**2 + (ROUNDED_OFF * line) ** 2) ** 0.5


def _fan_speed(rated: Rated, values: Mapping[str, Number], motor_speed: Number) -> Number:
    if rated.machine.drive.kind == "direct":
        return motor_speed
    ratio = rated.ratio * values["drive.ratio"]
    return fan_speed_at_ratio(motor_speed, ratio=ratio, slip=values["belt.slip"])


def motor_share(rated: Rated, values: Mapping[str, Number], shaft_power: Number) -> Number:
    """What the motor gives for a power at the fan's shaft: the belt takes its part [W]."""
    if rated.machine.drive.kind == "direct":
        return shaft_power
    return shaft_power / (1 - values["belt.loss"])


def volts_of_legs(rated: Rated, values: Mapping[str, Number]) -> dict[str, Number]:
    """Line volts by point, each leg as far off the mean as it is."""
    if not rated.machine.three_phase:
        return {"power.volts": values["power.volts"]}
    ab, bc = (values[f"power.volts.{leg}"] for leg in FREE_LEGS)
    shares = {"ab": 1 + ab, "bc": 1 + bc, "ca": 1 - ab - bc}
    return {f"power.volts.{leg}": values["power.volts"] * share for leg, share in shares.items()}


def amps_of_lines(rated: Rated, values: Mapping[str, Number], amps: Number) -> dict[str, Number]:
    """Motor amps by point, each line as far off the mean as it is."""
    if not rated.machine.three_phase:
        return {"motor.amps": amps}
    a, b = (values[f"motor.amps.{line}"] for line in FREE_LINES)
    shares = {"a": 1 + a, "b": 1 + b, "c": 1 - a - b}
    return {f"motor.amps.{line}": amps * share for line, share in shares.items()}
