"""How the motor turns the fan: straight, or by V-belts that creep, slip and warm up."""

from dataclasses import dataclass
from math import exp


@dataclass(frozen=True)
class Drive:
    """Pitch diameters as they truly are; both 1 and no losses when direct."""

    belt: bool
    motor_sheave: float = 1.0  # [m]
    fan_sheave: float = 1.0  # [m]
    rated: float = 1.0  # torque the belts are chosen for [N m at the motor]
    tension: float = 1.0  # of what it should be
    creep: float = 0.006  # at rated torque and tension
    bending: float = 0.015  # loss of rated power, always
    sliding: float = 0.018  # loss of what is carried, beside slip

    @property
    def ratio(self) -> float:
        return self.motor_sheave / self.fan_sheave

    def slip(self, torque: float) -> float:
        """Creep with torque; past what the tension holds, it runs away (a belt's knee)."""
        if not self.belt:
            return 0.0
        load = torque / (self.rated * self.tension)
        return min(self.creep * load + 0.004 * (exp(min(max(load - 1.6, 0.0), 3.5)) - 1.0), 0.4)

    def fan_speed(self, motor_speed: float, torque: float) -> float:
        return motor_speed * self.ratio * (1.0 - self.slip(torque))

    def taken(self, shaft: float, torque: float, motor_speed: float, reference: float) -> float:
        """Power the motor must give for `shaft` at the fan [W]; `reference` in rpm."""
        if not self.belt:
            return shaft
        always = self.bending * self.rated * motor_speed * 0.10472 * motor_speed / reference
        return shaft / ((1.0 - self.slip(torque)) * (1.0 - self.sliding)) + always
