"""Every unit of the trade: its dimension, its size in SI, and the spellings people write.

The only place that knows unit names. A unit's value in SI is `number * factor + offset`; for a
temperature *difference* the offset is left out. Pressures are what the gauge says (gauge or
absolute is told by the name of what is measured, never by the unit).
"""

from dataclasses import dataclass

INCH_OF_WATER = 249.08891  # [Pa] water at 4 degC, ISO 80000-4 annex; job.md fixes this one
BTU = 1055.05585262  # [J] International Table
FOOT = 0.3048  # [m] exact
POUND = 0.45359237  # [kg] exact
POUND_FORCE = POUND * 9.80665  # [N] exact
PSI = POUND_FORCE / (FOOT / 12) ** 2  # [Pa]


@dataclass(frozen=True)
class Unit:
    """One unit: `name` is how it is written here, `spellings` are the other ways in."""

    name: str
    dimension: str
    factor: float
    spellings: tuple[str, ...] = ()
    offset: float = 0.0


def _unit(name: str, dimension: str, factor: float, *spellings: str, offset: float = 0.0) -> Unit:
    return Unit(name, dimension, factor, spellings, offset)


UNITS: tuple[Unit, ...] = (
    _unit("Pa", "pressure", 1.0),
    _unit("kPa", "pressure", 1e3),
    _unit("hPa", "pressure", 1e2),
    _unit("mbar", "pressure", 1e2),
    _unit("bar", "pressure", 1e5),
    _unit("inwc", "pressure", INCH_OF_WATER, "inwg", "inH2O", '"wc', '"wg', '"H2O', "iwc", "inw"),
    _unit("mmH2O", "pressure", 9.80665, "mmwc", "mmwg"),
    _unit("psi", "pressure", PSI, "psig", "lbf/in2"),
    _unit("oz/in2", "pressure", PSI / 16, "ozf/in2", "osi"),
    _unit("inHg", "pressure", 3386.389, '"Hg'),
    _unit("mmHg", "pressure", 133.322387415),
    _unit("W", "power", 1.0),
    _unit("kW", "power", 1e3),
    _unit("MW", "power", 1e6),
    _unit("hp", "power", 550 * POUND_FORCE * FOOT, "bhp"),
    _unit("Btu/h", "power", BTU / 3600, "btuh", "Btu/hr"),
    _unit("kBtu/h", "power", BTU / 3.6, "MBH", "kBtu/hr", "kBtuh"),
    _unit("therm/h", "power", BTU * 1e5 / 3600, "therm/hr", "therms/h"),
    _unit("m3/s", "flow", 1.0),
    _unit("m3/h", "flow", 1 / 3600, "m3/hr"),
    _unit("L/s", "flow", 1e-3, "l/s"),
    _unit("cfm", "flow", FOOT**3 / 60, "ft3/min", "acfm"),
    _unit("scfm", "flow", FOOT**3 / 60),
    _unit("ft3/h", "flow", FOOT**3 / 3600, "cfh", "ft3/hr"),
    _unit("degC", "temperature", 1.0, "C", "celsius", offset=273.15),
    _unit("degF", "temperature", 5 / 9, "F", "fahrenheit", offset=459.67 * 5 / 9),
    _unit("K", "temperature", 1.0, "kelvin"),
    _unit("rpm", "rotational speed", 1.0, "r/min", "rev/min"),
    _unit("Hz", "frequency", 1.0),
    _unit("V", "voltage", 1.0, "volt", "volts", "VAC", "VDC"),
    _unit("mV", "voltage", 1e-3),
    _unit("kV", "voltage", 1e3),
    _unit("A", "current", 1.0, "amp", "amps"),
    _unit("mA", "current", 1e-3),
    _unit("uA", "current", 1e-6, "microamp", "microamps"),
    _unit("ohm", "resistance", 1.0, "ohms", "Ω"),
    _unit("VA", "apparent power", 1.0),
    _unit("kVA", "apparent power", 1e3),
    _unit("fpm", "velocity", FOOT / 60, "ft/min"),
    _unit("m/s", "velocity", 1.0),
    _unit("ft/s", "velocity", FOOT),
    _unit("in", "length", FOOT / 12, '"', "inch", "inches"),
    _unit("ft", "length", FOOT, "'", "foot", "feet"),
    _unit("m", "length", 1.0),
    _unit("cm", "length", 1e-2),
    _unit("mm", "length", 1e-3),
    _unit("km", "length", 1e3),
    _unit("in2", "area", (FOOT / 12) ** 2, "sqin"),
    _unit("ft2", "area", FOOT**2, "sqft"),
    _unit("m2", "area", 1.0),
    _unit("ft3", "volume", FOOT**3, "cuft", "cf"),
    _unit("in3", "volume", (FOOT / 12) ** 3, "cuin"),
    _unit("m3", "volume", 1.0),
    _unit("L", "volume", 1e-3, "litre", "liter"),
    _unit("s", "time", 1.0, "sec", "second", "seconds"),
    _unit("min", "time", 60.0, "minute", "minutes"),
    _unit("h", "time", 3600.0, "hr", "hour", "hours"),
    _unit("lbf", "force", POUND_FORCE),
    _unit("N", "force", 1.0),
    _unit("kgf", "force", 9.80665),
    _unit("J/m3", "heating value", 1.0),
    _unit("MJ/m3", "heating value", 1e6),
    _unit("kWh/m3", "heating value", 3.6e6),
    _unit("Btu/ft3", "heating value", BTU / FOOT**3, "Btu/cf"),
    _unit("kg/m3", "density", 1.0),
    _unit("lb/ft3", "density", POUND / FOOT**3, "lbm/ft3"),
    _unit("kg/kg", "humidity ratio", 1.0, "lb/lb"),
    _unit("g/kg", "humidity ratio", 1e-3),
    _unit("gr/lb", "humidity ratio", 1 / 7000, "grains/lb"),
    _unit("J/kg", "enthalpy", 1.0),
    _unit("kJ/kg", "enthalpy", 1e3),
    # inch-pound tables and charts count moist air's from dry air at 0 degF, metric ones from 0 degC
    _unit("Btu/lb", "enthalpy", BTU / POUND, offset=-1006.0 * 160 / 9),
    _unit("kg", "mass", 1.0),
    _unit("g", "mass", 1e-3),
    _unit("lb", "mass", POUND, "lbm", "lbs"),
    _unit("deg", "angle", 1.0, "°", "degree", "degrees"),
    _unit("%", "fraction", 1e-2, "percent", "%RH"),
    _unit("ppm", "fraction", 1e-6),
    _unit("/therm", "energy price", 1 / (BTU * 1e5), "$/therm", "pertherm"),
    _unit("/MMBtu", "energy price", 1 / (BTU * 1e6), "$/MMBtu"),
    _unit("/kWh", "energy price", 1 / 3.6e6, "$/kWh", "perkWh"),
    _unit("/MJ", "energy price", 1e-6, "$/MJ"),
    _unit("/J", "energy price", 1.0),
    _unit("1", "number", 1.0),
)

BY_NAME: dict[str, Unit] = {unit.name: unit for unit in UNITS}

_LOOKALIKES = str.maketrans(
    {
        "³": "3",
        "²": "2",
        "″": '"',
        "”": '"',
        "“": '"',
        "′": "'",
        "’": "'",
        "µ": "u",
        "μ": "u",
        "₂": "2",
        "⁄": "/",
        "∕": "/",
        "Ω": "Ω",
    }
)


def plain(text: str) -> str:
    """A unit as typed, without the accidents of writing: spaces, dots, superscripts, degree signs.

    >>> plain("in. w.c.")
    'inwc'
    >>> plain("° F")
    'degF'
    """
    text = text.translate(_LOOKALIKES)
    for noise in (" ", "\t", "\u00a0", "\u202f", ".", "^"):
        text = text.replace(noise, "")
    return text.replace("°", "deg") if len(text) > 1 else text


def _index() -> tuple[dict[str, Unit], dict[str, Unit | None]]:
    exact: dict[str, Unit] = {}
    folded: dict[str, Unit | None] = {}
    for unit in UNITS:
        for spelling in (unit.name, *unit.spellings):
            key = plain(spelling)
            exact[key] = unit
            low = key.lower()
            folded[low] = unit if folded.get(low, unit) is unit else None
    return exact, folded


_EXACT, _FOLDED = _index()


def find(text: str) -> Unit | None:
    """The unit written as `text`, or None; capitals count only where they tell units apart."""
    key = plain(text)
    return _EXACT.get(key) or _FOLDED.get(key.lower())


def si(number: float, unit: str) -> float:
    """A number of a unit in SI, for a limit that the trade writes in its own; differences only.

    >>> si(2, "inwc")
    498.17782
    """
    return number * BY_NAME[unit].factor


def spellings() -> list[str]:
    """Every way to write a unit, for a nearest-name search."""
    return list(_EXACT)
