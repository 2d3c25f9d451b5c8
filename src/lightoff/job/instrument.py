"""The instruments carried, and what their makers claim for them."""

from typing import Annotated, Any

from pydantic import AfterValidator, Field, PlainValidator, ValidationInfo, WithJsonSchema

from lightoff.job.moments import Day
from lightoff.job.quantities import Of, Range, Share, between, not_negative
from lightoff.job.scope import scope_of
from lightoff.job.table import Name, Note, OneOf, Table
from lightoff.quantity import KINDS

KINDS_CARRIED = (
    "manometer",
    "clamp",
    "voltmeter",
    "tachometer",
    "thermometer",
    "hygrometer",
    "barometer",
    "analyser",
    "pitot",
    "hot wire",
    "flow hood",
    "gas meter",
    "stopwatch",
    "ohmmeter",
    "power meter",
    "spring scale",
    "leak detector",
    "the unit itself",
)
CHANNEL_KINDS = {
    "pressure": "pressure",
    "temperature": "temperature",
    "humidity": "fraction",
    "O2": "fraction",
    "CO2": "fraction",
    "CO": "concentration",
    "current": "current",
    "voltage": "voltage",
    "power": "electric power",
    "speed": "rotational speed",
    "frequency": "frequency",
    "time": "time",
    "length": "size",
    "force": "force",
    "flow": "airflow",
    "velocity": "velocity",
    "angle": "angle",
}


def _kind(info: ValidationInfo[Any]) -> str | None:
    return CHANNEL_KINDS.get(info.data.get("quantity", ""))


def _range(typed: object, info: ValidationInfo[Any]) -> Any:
    kind = _kind(info)
    if kind is None:  # a quantity that is itself faulty has been told already
        return None
    unit = KINDS[kind].us
    return between(Of(kind), f"0 {unit}", f"100 {unit}").read(typed)


def _difference(typed: object, info: ValidationInfo[Any]) -> float | None:
    kind = _kind(info)
    if kind is None:
        return None
    due = "temperature difference" if KINDS[kind].dimension == "temperature" else kind
    return float(not_negative(due).read(typed))


Difference = Annotated[
    float | None,
    PlainValidator(_difference),
    WithJsonSchema({"type": ["string", "number"], "examples": ["0.005 inwc", "0.5 K"]}),
    Note("a difference of the channel's quantity"),
]


class Channel(Table):
    """What an instrument claims for one quantity it reads."""

    quantity: Annotated[str, OneOf("a quantity an instrument reads", CHANNEL_KINDS)]
    range: Annotated[
        Range | None,
        PlainValidator(_range),
        WithJsonSchema(
            {"type": "array", "minItems": 2, "maxItems": 2, "examples": [["0 inwc", "20 inwc"]]}
        ),
        Note("lower and upper end, quantities of the channel's kind"),
    ] = None
    of_reading: Annotated[Share | None, Note("of a temperature in degC")] = None
    of_range: Annotated[Share | None, Note("of the upper end less the lower")] = None
    plus_minus: Difference = None
    resolution: Difference = None


def _carry(name: str, info: ValidationInfo[Any]) -> str:
    return scope_of(info).carry(name)


class Instrument(Table):
    """One instrument, with its calibration."""

    id: Annotated[Name, AfterValidator(_carry), Field(examples=["gauge-1", "clamp-1"])]
    kind: Annotated[str, OneOf("a kind of instrument", KINDS_CARRIED)]
    calibrated: Day | None = None
    due: Day | None = None
    channels: Annotated[
        list[Channel], Field(alias="channel"), Note("one for each quantity it reads")
    ] = []
