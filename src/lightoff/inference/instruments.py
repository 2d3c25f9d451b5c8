"""What an instrument adds to a reading's uncertainty, and what to assume of an unknown one."""

from lightoff.inference.estimate import RECTANGULAR, Part
from lightoff.machine.visit import Channel, Instrument
from lightoff.quantity import si

KELVIN = 273.15
INCH = si(1, "inwc")  # [Pa]

_QUANTITY_OF_KIND = {
    "pressure": "pressure",
    "absolute pressure": "pressure",
    "electric power": "power",
    "temperature": "temperature",
    "rotational speed": "speed",
    "frequency": "frequency",
    "voltage": "voltage",
    "current": "current",
    "flame signal": "current",
    "airflow": "flow",
    "gas flow": "flow",
    "size": "length",
    "length": "length",
    "time": "time",
    "force": "force",
    "angle": "angle",
    "concentration": "CO",
    "fraction": "signal",
}

# What is assumed of an instrument nobody declared: wide, and said so in the answer.
# Limits taken as rectangular; our judgement, on the side of the poorer gauges in use.
UNKNOWN: dict[str, Channel] = {
    row.quantity: row
    for row in (
        Channel("pressure", of_reading=0.02, plus_minus=0.05 * INCH, resolution=0.05 * INCH),
        Channel("temperature", plus_minus=2.0, resolution=0.5),
        Channel("humidity", plus_minus=0.06, resolution=0.01),
        Channel("O2", plus_minus=0.005, resolution=0.001),
        Channel("CO2", plus_minus=0.006, resolution=0.001),
        Channel("CO", of_reading=0.10, plus_minus=15e-6, resolution=1e-6),
        Channel("current", of_reading=0.03, plus_minus=0.1, resolution=0.1),
        Channel("voltage", of_reading=0.015, plus_minus=1.0, resolution=1.0),
        Channel("power", of_reading=0.05, resolution=100.0),
        Channel("speed", of_reading=0.005, resolution=1.0),
        Channel("frequency", plus_minus=0.1, resolution=0.1),
        Channel("time", plus_minus=0.3, resolution=0.1),
        Channel("length", plus_minus=1e-3, resolution=1e-3),
        Channel("force", of_reading=0.05, plus_minus=2.0, resolution=2.0),
        Channel("flow", of_reading=0.10),
        Channel("velocity", of_reading=0.05, plus_minus=0.1),
        Channel("angle", plus_minus=0.1, resolution=0.1),
        Channel("signal", plus_minus=0.02, resolution=0.01),
    )
}


def quantity_read(point: str, kind: str) -> str:
    """Which channel of an instrument reads this point.

    >>> quantity_read("flue.1.o2", "fraction"), quantity_read("gas.supply", "pressure")
    ('O2', 'pressure')
    """
    if point.endswith(".o2"):
        return "O2"
    if point.endswith(".co2"):
        return "CO2"
    if point.endswith(".rh"):
        return "humidity"
    return _QUANTITY_OF_KIND[kind]


def channel_for(instrument: Instrument | None, quantity: str) -> Channel | None:
    """The instrument's channel for a quantity, None where it declares none."""
    if instrument is None:
        return None
    return next((c for c in instrument.channels if c.quantity == quantity), None)


def instrument_parts(
    value: float, channel: Channel, *, name: str, reading: str
) -> dict[Part, float]:
    """The parts a channel adds: gain and zero are shared by all its readings, resolution is not.

    Each limit is taken as rectangular (JCGM 100, 4.3.7); a temperature's `of_reading` is of degC.
    """
    size = value - KELVIN if channel.quantity == "temperature" else value
    low, high = channel.range or (0.0, 0.0)
    parts = {
        Part("gain", name): channel.of_reading * size * RECTANGULAR,
        Part("range", name): channel.of_range * (high - low) * RECTANGULAR,
        Part("zero", name): channel.plus_minus * RECTANGULAR,
        Part("resolution", reading): channel.resolution / 2 * RECTANGULAR,
    }
    return {part: u for part, u in parts.items() if u}
