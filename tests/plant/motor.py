"""An induction motor: its equivalent circuit, on sound and on unbalanced volts."""

from cmath import phase, rect
from dataclasses import dataclass
from math import acos, cos, pi, tan

from plant.root import between

A = rect(1.0, 2.0 * pi / 3.0)
Volts = tuple[float, float, float]


@dataclass(frozen=True)
class Motor:
    """Per phase of an equal star (a single-phase motor: its one winding) at `frequency`."""

    phases: int
    volts: float  # [V] line to line it is built for
    frequency: float  # [Hz]
    synchronous: float  # [rpm]
    stator: float  # [ohm]
    rotor: float  # [ohm]
    leakage: float  # [ohm] of each winding
    magnetising: float  # [ohm]
    core: float  # [ohm]
    windage: float  # [W] at full speed
    stray: float  # of output

    def _branch(self, slip: float, f: float) -> tuple[complex, complex]:
        """The rotor's impedance, and that of all behind the stator, at a relative frequency."""
        rotor = complex(self.rotor / slip, self.leakage * f)
        shunt = 1.0 / complex(self.core * f**0.6, 0.0) + 1.0 / complex(0.0, self.magnetising * f)
        return rotor, 1.0 / (shunt + 1.0 / rotor)

    def current(self, volts: float, slip: float, f: float = 1.0) -> tuple[complex, complex]:
        """Stator and rotor current of a phase at `volts` across it, at a slip [A]."""
        rotor, behind = self._branch(slip, f)
        stator = volts / (complex(self.stator, self.leakage * f) + behind)
        return stator, stator * behind / rotor

    def shaft(self, volts: float, slip: float, f: float = 1.0) -> float:
        """Power it gives at the shaft [W]."""
        _, rotor = self.current(volts, slip, f)
        gap = self.phases * abs(rotor) ** 2 * self.rotor / slip
        turned = gap * (1.0 - slip) - self.windage * (f * (1.0 - slip)) ** 2.2
        return turned / (1.0 + self.stray)

    def slip_for(self, power: float, volts: float, f: float = 1.0) -> float:
        """The slip at which it gives this power.

        Past its pull-out it would stall until the overload opens; here it only goes on slowing.
        """
        most = max(self.shaft(volts, 0.1, f), 1.0)
        if most < power:
            return min(0.1 * (power / most) ** 2, 0.3)
        return between(lambda slip: self.shaft(volts, slip, f) - power, 1e-5, 0.1, 1e-9)


@dataclass(frozen=True)
class Running:
    """A motor at work."""

    rpm: float
    amps: Volts
    power: float  # electric, into the motor [W]


def sequences(volts: Volts) -> tuple[complex, complex]:
    """Positive and negative sequence to neutral of three line volts ab, bc, ca."""
    ab, bc, ca = volts
    b = rect(bc, 0.0)
    inside = (ab * ab + bc * bc - ca * ca) / (2.0 * ab * bc)
    ab_ = rect(-ab, pi - acos(min(max(inside, -1.0), 1.0))) * -1.0
    if ab_.imag < 0.0:
        ab_ = ab_.conjugate()
    ca_ = -(ab_ + b)
    positive = (ab_ + A * b + A * A * ca_) / 3.0
    negative = (ab_ + A * A * b + A * ca_) / 3.0
    shift = rect(1.0, -pi / 6.0) / 3.0**0.5
    return positive * shift, negative * shift.conjugate()


def run(motor: Motor, power: float, volts: Volts, f: float = 1.0) -> Running:
    """At a shaft power on three line volts (the first alone on a single phase)."""
    if motor.phases == 1:
        return _alone(motor, power, volts[0], f)
    positive, negative = sequences(volts)
    slip = motor.slip_for(power, abs(positive), f)
    forward = motor.current(abs(positive), slip, f)[0] * rect(1.0, phase(positive))
    backward = motor.current(abs(negative), 2.0 - slip, f)[0] * rect(1.0, phase(negative))
    amps = (
        abs(forward + backward),
        abs(forward * A * A + backward * A),
        abs(forward * A + backward * A * A),
    )
    drawn = 3.0 * (positive * forward.conjugate() + negative * backward.conjugate()).real
    return Running(motor.synchronous * f * (1.0 - slip), amps, drawn)


def _alone(motor: Motor, power: float, volts: float, f: float) -> Running:
    slip = motor.slip_for(power, volts, f)
    current = motor.current(volts, slip, f)[0]
    drawn = volts * current.real
    return Running(motor.synchronous * f * (1.0 - slip), (abs(current),) * 3, drawn)


def built(
    phases: int,
    volts: float,
    frequency: float,
    synchronous: float,
    *,
    power: float,
    speed: float,
    efficiency: float,
    power_factor: float,
) -> Motor:
    """The circuit that gives these at full load; losses split as in common motors.

    Of the losses beside the rotor's: stator 0.45, core 0.30, windage 0.15, stray 0.10 (judgement).
    """
    phase_volts = volts / 3.0**0.5 if phases == 3 else volts
    taken = power / efficiency
    current = taken / (phases * phase_volts * power_factor)
    slip = 1.0 - speed / synchronous
    losses = taken - power
    rotor_loss = slip / (1.0 - slip) * power * 1.01
    rest = max(losses - rotor_loss, 0.25 * losses)
    stator = 0.45 * rest / (phases * current**2)
    leakage = 0.085 * phase_volts / current
    inner = phase_volts - rect(current, -acos(power_factor)) * complex(stator, leakage)
    volts_gap = abs(inner)
    gap = (power * (1.0 + 0.10 * rest / power) + 0.15 * rest) / (1.0 - slip)
    root = (phases * volts_gap**2 / gap) ** 2 - 4.0 * leakage**2
    over_slip = 0.5 * (phases * volts_gap**2 / gap + max(root, 0.0) ** 0.5)
    rotor_amps = volts_gap / abs(complex(over_slip, leakage))
    reactive = taken * tan(acos(power_factor)) - phases * leakage * (current**2 + rotor_amps**2)
    return Motor(
        phases, volts, frequency, synchronous, stator, over_slip * slip, leakage,
        phases * volts_gap**2 / max(reactive, 0.1 * taken),
        phases * volts_gap**2 / (0.30 * rest), 0.15 * rest, 0.10 * rest / power,
    )  # fmt: skip


def full_load_amps(motor: Motor, power: float) -> float:
    """What the circuit takes at rated power and volts [A]."""
    return run(motor, power, (motor.volts,) * 3).amps[0]


def three_volts(mean: float, unbalance: float, angle: float) -> Volts:
    """Line volts about a mean, the farthest of them off by `unbalance` of it."""
    parts = [cos(angle + 2.0 * pi * k / 3.0) for k in range(3)]
    worst = max(abs(part) for part in parts)
    ab, bc, ca = (mean * (1.0 + unbalance * part / worst) for part in parts)
    return ab, bc, ca
