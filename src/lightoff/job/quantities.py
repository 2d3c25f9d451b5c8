"""Fields that are quantities: typed as text with a unit, kept in SI.

Only what no machine and no weather can do is refused here; what is merely implausible is kept,
because it may be the finding of the day.
"""

import re
from dataclasses import dataclass
from functools import lru_cache
from typing import Annotated, Any

from lightoff.job.faults import one_line
from lightoff.job.nearest import shown
from lightoff.job.table import Written
from lightoff.quantity import (
    BY_NAME,
    EXAMPLES,
    KINDS,
    Quantity,
    QuantityError,
    in_unit,
    parse,
    printed_unit,
)

Range = tuple[float, float]


# a record reads its growing job again after every event: most of it has been read before
_parse_text = lru_cache(maxsize=4096)(parse)


def _parse(typed: object, kind: str) -> Quantity:
    try:
        return _parse_text(typed, kind) if isinstance(typed, str) else parse(typed, kind)
    except QuantityError as error:
        # the sentence repeats what was typed, and that may hold what no terminal can show
        raise ValueError(one_line(str(error))) from None


@dataclass(frozen=True)
class Of(Written):
    """A quantity of `kind`, kept as its value; the bounds [SI] say what is possible at all."""

    kind: str
    above: float | None = None
    least: float | None = None
    most: float | None = None

    def read(self, text: object) -> Any:
        return self.quantity(text).value

    def quantity(self, text: object) -> Quantity:
        """`text` with the unit it was typed in; a ValueError says why it cannot be."""
        quantity = _parse(text, self.kind)
        if not self._possible(quantity.value):
            bounds = self._bounds(quantity.unit)
            raise ValueError(
                f"{shown(text)} is not possible: {article(self.kind)} here is {bounds}"
            )
        return quantity

    def _possible(self, value: float) -> bool:
        return (
            (self.above is None or value > self.above)
            and (self.least is None or value >= self.least)
            and (self.most is None or value <= self.most)
        )

    def _bounds(self, unit: str) -> str:
        named = (("above", self.above), ("at least", self.least), ("at most", self.most))
        return " and ".join(
            f"{word} {self._bound(at, unit)}" for word, at in named if at is not None
        )

    def _bound(self, value: float, unit: str) -> str:
        """A bound in the unit that was typed, a bare share in percent."""
        if value == 0:
            return "zero"
        unit = KINDS[self.kind].si if self.kind == "fraction" else unit
        rounded = float(f"{in_unit(value, self.kind, unit):.4g}")
        return f"{rounded:g} {printed_unit(unit)}".strip()

    def schema(self) -> dict[str, Any]:
        bare = KINDS[self.kind].dimension in ("fraction", "number")
        how = "a bare number or text" if bare else "number and unit"
        return {
            "type": ["number", "string"] if bare else "string",
            "description": f"{article(self.kind)}: {how}",
            "examples": list(EXAMPLES[self.kind]),
        }


@dataclass(frozen=True)
class Typed(Of):
    """The same, but kept with the unit it was typed in."""

    def read(self, text: object) -> Quantity:
        return self.quantity(text)


@dataclass(frozen=True)
class Gauged:
    """A value with the place of the last digit written down [both SI]: the least a gauge showed."""

    value: float
    last_digit: float


@dataclass(frozen=True)
class ToTheDigit(Of):
    """The same, but kept with the place of its last digit."""

    def read(self, text: object) -> Gauged:
        quantity = self.quantity(text)
        return Gauged(quantity.value, _last_place(str(text)) * BY_NAME[quantity.unit].factor)


def _last_place(text: str) -> float:
    """The place of the last digit of a number in text.

    >>> _last_place("1.50 psi"), _last_place("1 1/4 psi"), _last_place("12 kPa")
    (0.01, 0.25, 1.0)
    """
    if fraction := re.search(r"\d/(\d+)", text):
        return 1 / int(fraction[1])
    decimals = re.search(r"\.(\d+)", text)
    return 10.0 ** -len(decimals[1]) if decimals else 1.0


@dataclass(frozen=True)
class Row(Written):
    """A short list of quantities in a fixed order; the last may be left out down to `least`."""

    columns: tuple[Of, ...]
    least: int
    example: tuple[str | float, ...]

    def read(self, row: object) -> tuple[float, ...]:
        if not isinstance(row, list) or not self.least <= len(row) <= len(self.columns):
            given = f"a list of {len(row)}" if isinstance(row, list) else shown(row)
            raise ValueError(f"{given} is not what is due here: write {self._right()}")
        return tuple(column.read(value) for column, value in zip(self.columns, row, strict=False))

    def _right(self) -> str:
        kinds = ", ".join(column.kind for column in self.columns)
        values = ", ".join(f'"{v}"' if isinstance(v, str) else f"{v:g}" for v in self.example)
        return f"[{kinds}], as [{values}]"

    def schema(self) -> dict[str, Any]:
        return {
            "type": "array",
            "description": ", ".join(article(column.kind) for column in self.columns),
            "prefixItems": [column.schema() for column in self.columns],
            "minItems": self.least,
            "maxItems": len(self.columns),
            "examples": [list(self.example)],
        }


@dataclass(frozen=True)
class Between(Row):
    """A range: two quantities of one kind, the lower first."""

    def read(self, row: object) -> tuple[float, ...]:
        lower, upper = super().read(row)
        if lower > upper:
            low, high = row if isinstance(row, list) else (lower, upper)
            raise ValueError(
                f"the range from {shown(low)} to {shown(high)} is empty: write the lower end first"
            )
        return lower, upper

    def _right(self) -> str:
        lower, upper = self.example
        return f'lower and upper end, as ["{lower}", "{upper}"]'


def between(kind: Of, lower: str, upper: str) -> Between:
    """A range of `kind`, with an example."""
    return Between((kind, kind), 2, (lower, upper))


def article(noun: str) -> str:
    """The noun with its article."""
    return f"{'an' if noun[0] in 'aeiou' else 'a'} {noun}"


def positive(kind: str) -> Of:
    return Of(kind, above=0.0)


def not_negative(kind: str) -> Of:
    return Of(kind, least=0.0)


# named after what is declared, so that the tables read like the job file
Pressure = Annotated[float, Of("pressure")]
GasPressure = Annotated[float, positive("pressure")]
Drop = Annotated[float, not_negative("pressure")]
TestPressure = Annotated[Gauged, ToTheDigit("test pressure")]
StartPressure = Annotated[Gauged, ToTheDigit("test pressure", above=0.0)]
Heat = Annotated[float, positive("heat")]
OtherHeat = Annotated[float, not_negative("heat")]
ShaftPower = Annotated[float, positive("shaft power")]
ApparentPower = Annotated[float, positive("apparent power")]
Airflow = Annotated[float, positive("airflow")]
Exhaust = Annotated[float, not_negative("airflow")]
Temperature = Annotated[float, Of("temperature")]
# the coldest and the hottest air ever measured outdoors are 184 K and 330 K; a probe in the sun
# shows more
OUTDOORS = Of("temperature", least=180.0, most=345.0)
Weather = Annotated[float, OUTDOORS]
Volts = Annotated[float, positive("voltage")]
Amps = Annotated[float, positive("current")]
Hertz = Annotated[float, positive("frequency")]
Speed = Annotated[float, positive("rotational speed")]
Size = Annotated[float, positive("size")]
Length = Annotated[float, positive("length")]
Altitude = Annotated[float, Of("length", least=-500.0, most=4000.0)]
Volume = Annotated[float, positive("volume")]
Time = Annotated[float, not_negative("time")]
Velocity = Annotated[float, Of("velocity")]
HeatingValue = Annotated[float, positive("heating value")]
EnergyPrice = Annotated[float, not_negative("energy price")]
FlameSignal = Annotated[Quantity, Typed("flame signal")]
Number = Annotated[float, positive("number")]
Seconds = Annotated[float, not_negative("number")]
Minutes = Annotated[float, positive("number")]
Share = Annotated[float, Of("fraction", least=0.0, most=1.0)]
Efficiency = Annotated[float, Of("fraction", above=0.0, most=1.0)]

PressureRange = Annotated[Range, between(Of("pressure"), "-0.10 inwc", "-0.02 inwc")]
RiseRange = Annotated[Range, between(Of("temperature difference"), "20 degF", "60 degF")]
OxygenRange = Annotated[Range, between(Of("fraction", least=0.0, most=0.25), "5 %", "9 %")]
ForceRange = Annotated[Range, between(not_negative("force"), "6 lbf", "9 lbf")]
CurveRow = Annotated[
    tuple[float, ...],
    Row(
        (not_negative("airflow"), Of("pressure"), not_negative("shaft power")),
        2,
        ("9000 cfm", "2.60 inwc", "7.1 hp"),
    ),
]
WeatherRow = Annotated[
    Range, Row((Of("temperature"), not_negative("number")), 2, ("-5 degF", 40.0))
]
