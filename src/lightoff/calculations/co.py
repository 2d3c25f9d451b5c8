"""Carbon monoxide of a flue, free of the air it is diluted with."""

from collections.abc import Mapping
from typing import Any

from lightoff.calculations.calculation import (
    Calculation,
    CannotCalculateError,
    Input,
    Note,
    Output,
)
from lightoff.calculations.flue import GASES, believe_co2, believe_o2
from lightoff.formula import Number
from lightoff.physics.combustion import (
    CO_CLASS_LIMIT,
    CO_LOOK,
    LARGEST_CO2,
    MOST_O2,
    air_free_from_co2,
    air_free_from_o2,
    o2_from_co2,
)


def air_free(*, co: Number, o2: Number | None, co2: Number | None, gas: str) -> dict[str, Any]:
    """Past the class limit as it stands CO is past it, whether it can be reckoned or not."""
    if co < 0:
        raise CannotCalculateError("calc-co-negative", "co")
    try:
        return {"co_air_free": _undiluted(co, o2, co2, LARGEST_CO2[gas])}
    except CannotCalculateError as refused:
        if co > CO_CLASS_LIMIT:
            values = {"co": float(co), "limit": CO_CLASS_LIMIT}
            raise CannotCalculateError("calc-co-unsafe-as-read", "co", **values) from refused
        raise


def _undiluted(co: Number, o2: Number | None, co2: Number | None, largest: float) -> Number:
    """By the O2 where that was read, else by the CO2."""
    if o2 is not None:
        believe_o2(o2)
        _not_mostly_air(o2, "o2")
        return air_free_from_o2(co, o2)
    if co2 is None:
        raise CannotCalculateError("calc-o2-or-co2", "o2")
    believe_co2(co2, largest)
    _not_mostly_air(o2_from_co2(co2, largest), "co2")
    return air_free_from_co2(co, co2, largest)


def _not_mostly_air(o2: Number, place: str) -> None:
    if o2 > MOST_O2:
        raise CannotCalculateError("calc-co-diluted", place, o2=float(o2), most=MOST_O2)


def remark(_used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """Past the class limit it must not run; short of it there may be a cause to find."""
    found = results["co_air_free"]
    if found > CO_CLASS_LIMIT:
        return (Note("calc-co-unsafe", {"co": found, "limit": CO_CLASS_LIMIT}),)
    if found > CO_LOOK:
        return (Note("calc-co-look", {"co": found, "look": CO_LOOK}),)
    return (Note("calc-co-again", {}, advice=True),)


CO_AIR_FREE = Calculation(
    name="co-air-free",
    work=air_free,
    inputs=(
        Input("co", "concentration"),
        Input("o2", "fraction", optional=True),
        Input("co2", "fraction", optional=True),
        Input("gas", choices=GASES, default="natural gas"),
    ),
    outputs=(Output("co_air_free", "concentration"),),
    remark=remark,
)
