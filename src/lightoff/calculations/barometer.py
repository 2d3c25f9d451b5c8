"""The air's pressure here: by a barometer, by the weather service, else by the altitude."""

from lightoff.calculations.calculation import CannotCalculateError
from lightoff.formula import Number
from lightoff.physics.atmosphere import barometric_pressure, pressure_of_altimeter_setting

LOWEST, HIGHEST = 45e3, 115e3  # [Pa] no barometer on a site reads beyond these: 6000 m, a record


def pressure_here(
    altitude: Number | None,
    barometer: Number | None,
    sea_level_pressure: Number | None = None,
) -> Number:
    """The first that is known; a refusal where two barometers disagree or nothing is known."""
    if barometer is not None and sea_level_pressure is not None:
        raise CannotCalculateError("calc-one-barometer", "sea_level_pressure")
    if barometer is not None:
        return believable(barometer, "barometer")
    if altitude is None:
        raise CannotCalculateError("calc-no-altitude", "altitude")
    if sea_level_pressure is None:
        return barometric_pressure(altitude)
    reported = believable(sea_level_pressure, "sea_level_pressure")
    return pressure_of_altimeter_setting(reported, altitude)


def believable(pressure: Number, place: str) -> Number:
    """A barometer's reading, unless it is a gauge pressure or in another unit."""
    if not LOWEST < pressure < HIGHEST:
        raise CannotCalculateError("calc-no-such-barometer", place, read=float(pressure))
    return pressure
