"""Where the points of a traverse lie, and what its readings say."""

from collections.abc import Mapping
from typing import Any

from lightoff.calculations.calculation import (
    Calculation,
    CannotCalculateError,
    Input,
    Note,
    Output,
)
from lightoff.formula import Number
from lightoff.physics.airstream import standard_airflow
from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.constants import FOOT
from lightoff.physics.duct import (
    area_diameter,
    rectangular_area,
    round_area,
    velocity_pressure,
)
from lightoff.physics.meter import absolute_pressure
from lightoff.physics.moist_air import moist_air_density
from lightoff.physics.traverse import (
    diameters_along,
    duct_airflow,
    mean_velocity,
    pitot_velocity,
    share_above_tenth,
    spread_of_mean,
    velocity_spread,
)
from lightoff.physics.traverse_points import FEWEST_RECTANGULAR

SEVENTY_DEGREES = (70 + 459.67) * 5 / 9  # [K] standard air of the fan trade
BLIND_BELOW = 600 * FOOT / 60  # [m/s] a pitot tube shows too little; common practice, no source
GOOD_SHARE = 0.75  # [1] of the velocity pressures; AMCA 203 (from memory)
DOWNSTREAM, UPSTREAM = 7.5, 3.0  # [1] diameters; common practice, no source


def traverse(
    *,
    shape: str,
    duct_width: Number,
    duct_height: Number,
    duct_diameter: Number,
    velocity_pressures: Any,
    velocities: Any,
    air_density: Number,
    air_temperature: Number,
    altitude: Number,
    duct_static: Number,
    straight_before: Number,
    straight_after: Number,
) -> dict[str, Any]:
    """Velocities averaged, never pressures, over the inside area, with the plane judged."""
    area = area_of(shape, duct_width, duct_height, duct_diameter)
    density = air_density
    found: dict[str, Any] = {}
    if air_density is None:
        pressure = absolute_pressure(duct_static, barometric_pressure(altitude))
        density = moist_air_density(air_temperature, humidity_ratio=0.0, pressure=pressure)
        found["density"] = density
    speeds, pressures = _points(velocity_pressures, velocities, density)
    found |= _airflow(speeds, area, density) | _evenness(speeds, pressures)
    across = area_diameter(area)
    for name, straight in (("before", straight_before), ("after", straight_after)):
        if straight is not None:
            found[f"diameters_{name}"] = diameters_along(straight, across)
    return found


def area_of(shape: str, width: Number, height: Number, diameter: Number) -> Number:
    """Inside area, from the sizes that the shape needs."""
    if shape == "round":
        return round_area(_size("duct_diameter", diameter))
    return rectangular_area(_size("duct_width", width), _size("duct_height", height))


def _size(name: str, size: Number) -> Number:
    if size is None:
        raise CannotCalculateError("calc-missing", name)
    if not size > 0:
        raise CannotCalculateError("calc-impossible", name)
    return size


def _points(pressures: Any, velocities: Any, density: Number) -> tuple[Any, Any]:
    """Velocities and velocity pressures by point, whichever was read."""
    if bool(pressures) == bool(velocities):
        raise CannotCalculateError("calc-pressures-or-velocities", "velocity_pressures")
    read = {str(i): each for i, each in enumerate(pressures or velocities, start=1)}
    if len(read) == 1 or not any(each > 0 for each in read.values()):
        raise CannotCalculateError("calc-traverse-empty", _typed(pressures))
    if pressures:
        return {i: pitot_velocity(p, density) for i, p in read.items()}, read
    return read, {i: velocity_pressure(v, density) for i, v in read.items()}


def _typed(pressures: Any) -> str:
    return "velocity_pressures" if pressures else "velocities"


def _airflow(speeds: Mapping[str, Number], area: Number, density: Number) -> dict[str, Any]:
    velocity = mean_velocity(speeds)
    flow = duct_airflow(velocity, area)
    return {"velocity": velocity, "duct_airflow": flow,
            "standard_airflow": standard_airflow(flow, density)}  # fmt: skip


def _evenness(speeds: Mapping[str, Number], pressures: Mapping[str, Number]) -> dict[str, Any]:
    spread = velocity_spread(speeds)
    return {
        "above_tenth": share_above_tenth(pressures),
        "velocity_spread": spread,
        "mean_spread": spread_of_mean(spread, float(len(speeds))),
    }


def remark(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """What the plane and the instrument can't be trusted with."""
    return (*_plane(results), *_readings(used, results))


def _plane(results: Mapping[str, Any]) -> tuple[Note, ...]:
    before, after = results.get("diameters_before"), results.get("diameters_after")
    notes = []
    if before is not None and before < DOWNSTREAM:
        notes.append(Note("calc-plane-after-fitting", {"diameters": before, "due": DOWNSTREAM}))
    if after is not None and after < UPSTREAM:
        notes.append(Note("calc-plane-before-fitting", {"diameters": after, "due": UPSTREAM}))
    if results["above_tenth"] < GOOD_SHARE:
        notes.append(Note("calc-plane-uneven", {"share": results["above_tenth"]}))
    elif not notes and before is not None and after is not None:
        notes.append(Note("calc-plane-good", {}, advice=True))
    return tuple(notes)


def _readings(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    pressures = used["velocity_pressures"] or ()
    count = len(pressures or used["velocities"])
    turned = sum(p < 0 for p in pressures)
    notes = []
    if turned:
        notes.append(Note("calc-air-turning-back", {"count": turned}))
    density = used["air_density"] or results["density"]
    blind = sum(pitot_velocity(p, density) < BLIND_BELOW for p in pressures)
    if blind:
        notes.append(Note("calc-pitot-blind", {"count": blind, "limit": BLIND_BELOW}))
    if used["shape"] == "rectangular" and count < FEWEST_RECTANGULAR:
        notes.append(Note("calc-traverse-few", {"count": count, "due": FEWEST_RECTANGULAR}))
    return tuple(notes)


TRAVERSE = Calculation(
    name="traverse",
    work=traverse,
    inputs=(
        Input("shape", default="rectangular", choices=("rectangular", "round")),
        Input("duct_width", "size", optional=True),
        Input("duct_height", "size", optional=True),
        Input("duct_diameter", "size", optional=True),
        Input("velocity_pressures", "pressure", optional=True, many=True),
        Input("velocities", "velocity", optional=True, many=True),
        Input("air_density", "density", optional=True),
        Input("air_temperature", "temperature", default=SEVENTY_DEGREES),
        Input("altitude", "length", default=0.0, signed=True),
        Input("duct_static", "pressure", default=0.0, signed=True),
        Input("straight_before", "length", optional=True),
        Input("straight_after", "length", optional=True),
    ),
    outputs=(
        Output("duct_airflow", "airflow"),
        Output("standard_airflow", "airflow"),
        Output("velocity", "velocity"),
        Output("density", "density"),
        Output("above_tenth", "fraction"),
        Output("velocity_spread", "fraction"),
        Output("mean_spread", "fraction"),
        Output("diameters_before"),
        Output("diameters_after"),
    ),
    remark=remark,
)
