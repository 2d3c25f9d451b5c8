"""Air: how dense it is here, and what is in it."""

from collections.abc import Mapping
from typing import Any

from lightoff.calculations.barometer import pressure_here
from lightoff.calculations.calculation import (
    Calculation,
    CannotCalculateError,
    Input,
    Note,
    Output,
)
from lightoff.formula import Number
from lightoff.physics import psychrometer
from lightoff.physics.atmosphere import barometric_pressure, pressure_of_sea_level_pressure
from lightoff.physics.constants import STANDARD_AIR_DENSITY
from lightoff.physics.fan import density_ratio
from lightoff.physics.moist_air import (
    humidity_ratio,
    moist_air_density,
    moist_air_enthalpy,
    relative_humidity,
    vapour_pressure_of_ratio,
)
from lightoff.physics.psychrometer import humidity_ratio_from_wet_bulb
from lightoff.physics.saturation import FREEZING, dew_point

WEATHER = 0.04  # [1] the barometer strays from its altitude by 3 % at most; hourly weather files
REDUCTIONS_DIFFER = 0.005  # [1] beyond the weather's own 0.6 %; engineering judgement


def air_density(
    *,
    dry_bulb: Number,
    relative_humidity: Number,
    altitude: Number | None,
    barometer: Number | None,
    sea_level_pressure: Number | None,
) -> dict[str, Any]:
    """The density of air as it is here."""
    pressure = pressure_here(altitude, barometer, sea_level_pressure)
    moisture = _moisture(dry_bulb, relative_humidity, pressure)
    density = moist_air_density(dry_bulb, humidity_ratio=moisture, pressure=pressure)
    ratio = density_ratio(density, STANDARD_AIR_DENSITY)
    return {"density": density, "density_ratio": ratio, "air_pressure": pressure}


def _moisture(dry: Number, humidity: Number, pressure: Number) -> Number:
    if not 0 <= humidity <= 1:
        raise CannotCalculateError("calc-humidity-share", "relative_humidity")
    moisture = humidity_ratio(dry, relative_humidity=humidity, pressure=pressure)
    if moisture < 0:
        raise CannotCalculateError("calc-boils", "dry_bulb")
    return moisture


def doubt_of_barometer(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """Whether the barometer can be one read here, and what a weather map's figure would mean."""
    altitude, pressure = used["altitude"], results["air_pressure"]
    if altitude is None:
        return ()
    standard = barometric_pressure(altitude)
    if abs(pressure / standard - 1) > WEATHER:
        return (Note("calc-barometer-doubt", {"here": pressure, "standard": standard}),)
    if used["sea_level_pressure"] is None:
        return ()
    outdoors = used["dry_bulb"]
    by_map = pressure_of_sea_level_pressure(
        used["sea_level_pressure"], altitude, temperature=outdoors
    )
    if abs(by_map / pressure - 1) < REDUCTIONS_DIFFER:
        return ()
    return (Note("calc-weather-map", {"by_map": by_map, "outdoors": outdoors}, advice=True),)


AIR_DENSITY = Calculation(
    name="air-density",
    work=air_density,
    inputs=(
        Input("dry_bulb", "temperature"),
        Input("altitude", "length", optional=True, signed=True),
        Input("barometer", "absolute pressure", optional=True),
        Input("sea_level_pressure", "absolute pressure", optional=True),
        Input("relative_humidity", "fraction", default=0.0),  # heated air is near enough
    ),
    outputs=(
        Output("density", "density"),
        Output("density_ratio"),
        Output("air_pressure", "absolute pressure"),
    ),
    remark=doubt_of_barometer,
)


def humid_air(
    *,
    dry_bulb: Number,
    wet_bulb: Number | None,
    relative_humidity: Number | None,
    altitude: Number,
    barometer: Number | None,
) -> dict[str, Any]:
    """All of a state from its dry bulb and one reading of its humidity."""
    pressure = pressure_here(altitude, barometer)
    if (wet_bulb is None) == (relative_humidity is None):
        raise CannotCalculateError("calc-one-humidity", "wet_bulb")
    if wet_bulb is not None:
        moisture, found = _by_wet_bulb(dry_bulb, wet_bulb, pressure)
    else:
        moisture, found = _by_humidity(dry_bulb, relative_humidity, pressure)
    density = moist_air_density(dry_bulb, humidity_ratio=moisture, pressure=pressure)
    dew = dew_point(vapour_pressure_of_ratio(moisture, pressure)) if moisture > 0 else None
    state = {
        "dew_point": dew,
        "humidity_ratio": moisture,
        "enthalpy": moist_air_enthalpy(dry_bulb, moisture),
        "density": density,
    }
    return found | state


def _by_wet_bulb(dry: Number, wet: Number, pressure: Number) -> tuple[Number, dict[str, Any]]:
    """Humidity ratio, and the relative humidity nobody read."""
    if wet > dry:
        raise CannotCalculateError("calc-wet-above-dry", "wet_bulb")
    moisture = humidity_ratio_from_wet_bulb(dry, wet_bulb=wet, pressure=pressure)
    if moisture < 0:
        lowest = psychrometer.wet_bulb(float(dry), humidity_ratio=0.0, pressure=float(pressure))
        raise CannotCalculateError("calc-wet-too-low", "wet_bulb", lowest=lowest)
    humidity = relative_humidity(dry, humidity_ratio=moisture, pressure=pressure)
    return moisture, {"humidity_found": humidity}


def _by_humidity(dry: Number, humidity: Number, pressure: Number) -> tuple[Number, dict[str, Any]]:
    """Humidity ratio, and the wet bulb nobody read."""
    moisture = _moisture(dry, humidity, pressure)
    bulb = psychrometer.wet_bulb(dry, humidity_ratio=moisture, pressure=pressure)
    return moisture, {"wet_bulb_found": bulb}


def cold_air(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """What means something else below freezing."""
    notes = []
    if results["dew_point"] is None:
        notes.append(Note("calc-no-dew-point", {}, advice=True))
    elif results["dew_point"] < FREEZING:
        notes.append(Note("calc-frost-point", {}, advice=True))
    if used["wet_bulb"] is not None and used["wet_bulb"] < FREEZING:
        notes.append(Note("calc-ice-on-wick", {}, advice=True))
    if used["relative_humidity"] is not None and used["dry_bulb"] < FREEZING:
        notes.append(Note("calc-humidity-over-ice", {}, advice=True))
    return tuple(notes)


HUMID_AIR = Calculation(
    name="humid-air",
    work=humid_air,
    inputs=(
        Input("dry_bulb", "temperature"),
        Input("wet_bulb", "temperature", optional=True),
        Input("relative_humidity", "fraction", optional=True),
        Input("altitude", "length", default=0.0, signed=True),
        Input("barometer", "absolute pressure", optional=True),
    ),
    outputs=(
        Output("dew_point", "temperature"),
        Output("wet_bulb_found", "temperature"),
        Output("humidity_found", "fraction"),
        Output("humidity_ratio", "humidity ratio"),
        Output("enthalpy", "enthalpy"),
        Output("density", "density"),
    ),
    remark=cold_air,
)
