"""An instrument: what its maker claims, what it truly does within that, what it shows."""

from dataclasses import dataclass
from random import Random
from typing import Any

from plant import si

# unit: (SI by unit, SI at its zero)
UNITS = {
    "inwc": (si.INWC, 0.0), "inHg": (si.INHG, 0.0), "degF": (1.0 / 1.8, 459.67 / 1.8),
    "%": (0.01, 0.0), "ppm": (1e-6, 0.0), "A": (1.0, 0.0), "V": (1.0, 0.0), "kW": (1000.0, 0.0),
    "rpm": (1.0, 0.0), "Hz": (1.0, 0.0), "s": (1.0, 0.0), "lbf": (si.LBF, 0.0), "deg": (1.0, 0.0),
    "cfm": (si.CFM, 0.0), "in": (si.INCH, 0.0), "uA": (1e-6, 0.0), "fpm": (0.00508, 0.0),
}  # fmt: skip
# what a steady hand sees from one look to the next: of the value, and in the channel's unit
UNSTEADY = {
    "pressure": (0.006, 0.0), "temperature": (0.0, 0.25), "humidity": (0.0, 0.5),
    "O2": (0.0, 0.08), "CO2": (0.0, 0.08), "CO": (0.03, 0.7), "current": (0.005, 0.0),
    "voltage": (0.0015, 0.0), "power": (0.006, 0.0), "speed": (0.0012, 0.0),
    "frequency": (0.0, 0.02), "time": (0.0, 0.15), "force": (0.0, 0.5), "flow": (0.02, 0.0),
    "angle": (0.0, 0.05), "length": (0.0, 0.0),
}  # fmt: skip


@dataclass(frozen=True)
class Channel:
    """One quantity: its claims in its own unit, its true gain and zero within them."""

    quantity: str
    unit: str
    span: tuple[float, float] | None
    of_reading: float
    plus_minus: float
    resolution: float
    gain: float = 0.0
    zero: float = 0.0

    def tree(self) -> dict[str, Any]:
        """As declared."""
        unit = self.unit
        tree: dict[str, Any] = {"quantity": self.quantity}
        if self.span:
            tree["range"] = [f"{end:g} {unit}" for end in self.span]
        if self.of_reading:
            tree["of_reading"] = self.of_reading
        if self.plus_minus:
            tree["plus_minus"] = f"{self.plus_minus:g} {unit}"
        return {**tree, "resolution": f"{self.resolution:g} {unit}"}

    def reaches(self, value: float) -> bool:
        """Whether a value [SI] is on its scale."""
        if self.span is None:
            return True
        return self.span[0] <= in_unit(value, self.unit) <= self.span[1]

    def shows(self, value: float, rng: Random) -> float:
        """A value [SI] as the display has it, in the channel's unit, before anybody rounds."""
        true = in_unit(value, self.unit)
        # a barometer stands still: what shakes a gauge is the air behind its tube
        share, bit = UNSTEADY["length" if self.unit == "inHg" else self.quantity]
        seen = true * (1.0 + self.gain + rng.gauss(0.0, share)) + self.zero + rng.gauss(0.0, bit)
        return round(seen / self.resolution) * self.resolution


def in_unit(value: float, unit: str) -> float:
    """A value [SI] as a number of `unit`."""
    scale, origin = UNITS[unit]
    return (value - origin) / scale


def in_si(number: float, unit: str) -> float:
    scale, origin = UNITS[unit]
    return number * scale + origin


def true_to_claims(channel: Channel, rng: Random) -> Channel:
    """With errors inside the claims: half of makers mean a rectangle, half two sigmas."""

    def error(limit: float) -> float:
        if rng.random() < 0.5:
            return rng.uniform(-limit, limit)
        return max(-limit, min(rng.gauss(0.0, 0.5 * limit), limit))

    return Channel(
        channel.quantity, channel.unit, channel.span, channel.of_reading, channel.plus_minus,
        channel.resolution, error(channel.of_reading), error(channel.plus_minus),
    )  # fmt: skip


@dataclass(frozen=True)
class Instrument:
    """What lies in the bag under one name."""

    id: str
    kind: str
    channels: tuple[Channel, ...]
    calibrated: str | None

    def tree(self) -> dict[str, Any]:
        tree: dict[str, Any] = {"id": self.id, "kind": self.kind}
        if self.calibrated:
            tree["calibrated"] = self.calibrated
        return {**tree, "channel": [channel.tree() for channel in self.channels]}

    def channel(self, quantity: str) -> Channel | None:
        return next((one for one in self.channels if one.quantity == quantity), None)
