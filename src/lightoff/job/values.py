"""Fields whose kind another field of the same table tells: what was set, at what a trip acted.

Where the telling field is itself faulty the value is passed over: one slip is one fault.
"""

from typing import Annotated, Any

from pydantic import AfterValidator, PlainValidator, ValidationInfo, WithJsonSchema

from lightoff.job.nearest import shown
from lightoff.job.possible import of_kind, of_setting, of_trip
from lightoff.job.quantities import Gauged, StartPressure
from lightoff.job.scope import scope_of
from lightoff.job.table import Note, Text
from lightoff.quantity import in_unit

Info = ValidationInfo[Any]


def _setting_value(typed: object, info: Info) -> float | str | None:
    setting = info.data.get("what")
    if setting is None:
        return None
    due = of_setting(setting)
    return _words(typed) if due is None else float(due.read(typed))


def _trip_value(typed: object, info: Info) -> float | None:
    trip = info.data.get("id")
    if trip is None:
        return None
    due = of_trip(trip)
    if due is None:
        raise ValueError(f"the trip {shown(trip)} acts at no value: leave value out")
    return float(due.read(typed))


def _set_point(typed: object, info: Info) -> float | str | None:
    if "id" not in info.data:
        return None
    if info.data["id"] == "discharge":
        return float(of_kind("temperature").read(typed))
    return _words(typed)


def _words(typed: object) -> float | str:
    if isinstance(typed, str):
        return typed
    if isinstance(typed, (int, float)) and not isinstance(typed, bool):
        return float(of_kind("number").read(typed))
    raise ValueError(f"{shown(typed)} is neither words nor a number: write it in quotes")


def _inert(medium: str) -> str:
    if "oxygen" in medium.lower() or medium.strip().upper() == "O2":
        raise ValueError("oxygen makes grease and sealant burn: test with air or an inert gas")
    return medium


def _within_the_valve(start: Gauged, info: Info) -> Gauged:
    rating = scope_of(info).valve_rating()
    if start.value > rating and not info.data.get("isolated", True):
        most = in_unit(rating, "test pressure", "psi")
        raise ValueError(
            f"the test starts above the {most:.3g} psi the unit's gas valve stands: disconnect and "
            "cap the unit and declare isolated = true, or test at a lower pressure"
        )
    return start


_QUANTITY_OR_WORDS = WithJsonSchema(
    {"type": ["string", "number"], "examples": ["3.12 inwc", "two turns open"]}
)

SettingValue = Annotated[
    float | str | None,
    PlainValidator(_setting_value),
    _QUANTITY_OR_WORDS,
    Note("a quantity of the setting's kind, or words where it has none"),
]
SetPointValue = Annotated[
    float | str | None,
    PlainValidator(_set_point),
    _QUANTITY_OR_WORDS,
    Note("a temperature for discharge, else words or a number"),
]
TripValue = Annotated[
    float | None,
    PlainValidator(_trip_value),
    WithJsonSchema({"type": "string", "examples": ["186 degF", "2.1 inwc"]}),
    Note("a quantity of the trip's kind"),
]
Medium = Annotated[Text, AfterValidator(_inert)]
TestStart = Annotated[StartPressure, AfterValidator(_within_the_valve)]
