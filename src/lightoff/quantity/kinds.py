"""Kinds of quantity: what is measured, in which unit it is shown, and how finely.

Two kinds may share a dimension: gas heat and shaft power are both powers, but the trade reads one
in thousand Btu/h and the other in horsepower.
"""

from dataclasses import dataclass
from typing import Literal

System = Literal["us", "si"]


@dataclass(frozen=True)
class Kind:
    """How one kind of quantity is asked for and shown.

    `us` and `si` are unit names, `decimals` how many to show when no resolution says better.
    """

    name: str
    dimension: str
    us: str
    si: str
    decimals: tuple[int, int]
    difference: bool = False
    also: tuple[str, ...] = ()  # other dimensions it may be declared in

    def unit(self, system: System) -> str:
        """The unit this kind is shown in."""
        return self.us if system == "us" else self.si


_ROWS: tuple[Kind, ...] = (
    Kind("pressure", "pressure", "inwc", "Pa", (2, 0)),
    Kind("absolute pressure", "pressure", "inHg", "kPa", (2, 1)),
    Kind("test pressure", "pressure", "psi", "kPa", (2, 1)),
    Kind("heat", "power", "kBtu/h", "kW", (1, 1)),
    Kind("electric power", "power", "kW", "kW", (2, 2)),
    Kind("shaft power", "power", "hp", "kW", (2, 2)),
    Kind("apparent power", "apparent power", "VA", "VA", (0, 0)),
    Kind("airflow", "flow", "cfm", "m3/h", (0, 0)),
    Kind("gas flow", "flow", "ft3/h", "m3/h", (1, 2)),
    Kind("temperature", "temperature", "degF", "degC", (1, 1)),
    Kind("temperature difference", "temperature", "degF", "K", (1, 1), difference=True),
    Kind("rotational speed", "rotational speed", "rpm", "rpm", (0, 0)),
    Kind("frequency", "frequency", "Hz", "Hz", (1, 1)),
    Kind("voltage", "voltage", "V", "V", (1, 1)),
    Kind("current", "current", "A", "A", (2, 2)),
    Kind("flame signal", "current", "uA", "uA", (1, 1), also=("voltage",)),
    Kind("resistance", "resistance", "ohm", "ohm", (1, 1)),
    Kind("velocity", "velocity", "fpm", "m/s", (0, 2)),
    Kind("size", "length", "in", "mm", (3, 1)),
    Kind("length", "length", "ft", "m", (1, 2)),
    Kind("area", "area", "ft2", "m2", (2, 3)),
    Kind("volume", "volume", "ft3", "m3", (2, 4)),
    Kind("time", "time", "s", "s", (1, 1)),
    Kind("force", "force", "lbf", "N", (1, 1)),
    Kind("heating value", "heating value", "Btu/ft3", "MJ/m3", (0, 2)),
    Kind("density", "density", "lb/ft3", "kg/m3", (4, 3)),
    Kind("humidity ratio", "humidity ratio", "gr/lb", "g/kg", (1, 2)),
    Kind("enthalpy", "enthalpy", "Btu/lb", "kJ/kg", (2, 1)),
    Kind("mass", "mass", "lb", "kg", (1, 1)),
    Kind("angle", "angle", "deg", "deg", (2, 2)),
    Kind("fraction", "fraction", "%", "%", (1, 1)),
    Kind("concentration", "fraction", "ppm", "ppm", (0, 0)),
    Kind("number", "number", "1", "1", (3, 3)),
    Kind("energy price", "energy price", "/therm", "/kWh", (2, 4)),
)

# [SI, rpm, Hz] nothing near a make-up air unit is larger, either way: such a value is a slip of the
# hand, and no page, rule or sum could show it
LARGEST: dict[str, float] = {
    "pressure": 1e9, "power": 1e9, "apparent power": 1e9, "flow": 1e4, "temperature": 1e4,
    "rotational speed": 1e6, "frequency": 1e6, "voltage": 1e6, "current": 1e6, "resistance": 1e12,
    "velocity": 1e4, "length": 1e6, "area": 1e9, "volume": 1e9, "time": 1e9, "force": 1e8,
    "heating value": 1e10, "density": 1e6, "humidity ratio": 1e2, "enthalpy": 1e9, "mass": 1e9,
    "angle": 1e5, "fraction": 1e4, "number": 1e12, "energy price": 1e6,
}  # fmt: skip

# the SI unit of each dimension, as formulas name it
SI_UNIT: dict[str, str] = {
    "pressure": "Pa", "power": "W", "apparent power": "W", "flow": "m3/s", "temperature": "K",
    "rotational speed": "rpm", "frequency": "Hz", "voltage": "V", "current": "A",
    "resistance": "ohm", "velocity": "m/s", "length": "m", "area": "m2", "volume": "m3",
    "time": "s", "force": "N", "heating value": "J/m3", "density": "kg/m3",
    "humidity ratio": "kg/kg", "enthalpy": "J/kg", "mass": "kg", "angle": "deg", "fraction": "1",
    "number": "1", "energy price": "1/J",
}  # fmt: skip

KINDS: dict[str, Kind] = {kind.name: kind for kind in _ROWS}

EXAMPLES: dict[str, tuple[str, str]] = {
    "pressure": ("3.5 inwc", "870 Pa"),
    "absolute pressure": ("29.92 inHg", "101.3 kPa"),
    "test pressure": ("1.5 psi", "10.3 kPa"),
    "heat": ("400 kBtu/h", "117 kW"),
    "electric power": ("9.2 kW", "9200 W"),
    "shaft power": ("15 hp", "11.2 kW"),
    "apparent power": ("75 VA", "0.075 kVA"),
    "airflow": ("9000 cfm", "15300 m3/h"),
    "gas flow": ("380 ft3/h", "10.8 m3/h"),
    "temperature": ("-12 degF", "-24.4 degC"),
    "temperature difference": ("40 degF", "22.2 K"),
    "rotational speed": ("1020 rpm", "1020 r/min"),
    "frequency": ("60 Hz", "52.5 Hz"),
    "voltage": ("460 V", "0.46 kV"),
    "current": ("18.5 A", "18500 mA"),
    "flame signal": ("2.4 uA", "1.8 V"),
    "resistance": ("0.4 ohm", "12 ohm"),
    "velocity": ("800 fpm", "4.06 m/s"),
    "size": ("5 3/8 in", "136.5 mm"),
    "length": ("4 ft 6 in", "1.37 m"),
    "area": ("6 ft2", "0.557 m2"),
    "volume": ("2 ft3", "0.0566 m3"),
    "time": ("45 s", "0.75 min"),
    "force": ("15 lbf", "66.7 N"),
    "heating value": ("1030 Btu/ft3", "38.4 MJ/m3"),
    "density": ("0.075 lb/ft3", "1.204 kg/m3"),
    "humidity ratio": ("54 gr/lb", "7.7 g/kg"),
    "enthalpy": ("25.3 Btu/lb", "41 kJ/kg"),
    "mass": ("3 lb", "1.36 kg"),
    "angle": ("0.5 deg", "1 deg"),
    "fraction": ("0.072", "7.2 %"),
    "concentration": ("54 ppm", "0.0054 %"),
    "number": ("0.60", "1.15"),
    "energy price": ("1.10 /therm", "0.038 /kWh"),
}
