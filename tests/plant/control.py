"""The control circuit and the unit's own sensor."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Transformer:
    """A control transformer: ratio of its tap, a drop with the load on it."""

    nominal: float  # [V] of the supply its tap is for
    secondary: float  # [V] at full load on nominal supply
    regulation: float  # rise from full load to none
    idle: float  # share of its rating with fan relays in
    firing: float  # share more for each furnace that fires
    wire: float  # drop in the field wiring at full load, relative
    tap: float = 1.0  # tap it is on by tap it should be on

    def volts(self, supply: float, burners: int | None) -> float:
        """With `burners` firing; None: nothing on it but the board."""
        load = 0.06 if burners is None else self.idle + self.firing * burners
        factor = 1.0 + self.regulation * (1.0 - load) - self.wire * load
        return self.secondary * supply / self.nominal * factor / self.tap


@dataclass(frozen=True)
class Sensor:
    """The discharge sensor: an offset, its place in the layers, what it sees of the exchanger."""

    offset: float  # [K]
    place: float  # of the rise
    radiation: float  # [K] with the fire full on
    outside: float = 0.0  # share of it that hangs somewhere else

    def shows(self, discharge: float, entering: float, elsewhere: float, firing: float) -> float:
        rise = discharge - entering
        there = discharge + self.place * rise + self.radiation * firing + self.offset
        return (1.0 - self.outside) * there + self.outside * elsewhere
