"""The building: the pressure that a surplus of air makes, and the doors it pushes on."""

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
from lightoff.physics.building import (
    HANDLE_DISTANCE,
    LEAKAGE_EXPONENT,
    LEAST_PRESSURE,
    MOST_PRESSURE,
    OPENING_COEFFICIENT,
    START_FORCE,
    air_surplus,
    airflow_at_temperature,
    door_force,
    opening_airflow,
    pressure_of_door_force,
    pressure_of_surplus,
)
from lightoff.physics.constants import STANDARD_AIR_DENSITY

ORIFICE_EXPONENT = 0.5  # [1] Bernoulli


def building_pressure(
    *,
    supply_airflow: Number,
    exhaust_airflow: Number,
    supply_temperature: Number | None,
    exhaust_temperature: Number | None,
    indoor_temperature: Number,
    leakage_airflow: Number | None,
    leakage_pressure: Number,
    leakage_exponent: Number,
    opening_area: Number | None,
) -> dict[str, Any]:
    """The pressure at which the envelope, or one known opening, passes the surplus."""
    if (leakage_airflow is None) == (opening_area is None):
        raise CannotCalculateError("calc-one-leakage", "leakage_airflow")
    surplus = air_surplus(
        _indoors(supply_airflow, supply_temperature, indoor_temperature),
        _indoors(exhaust_airflow, exhaust_temperature, indoor_temperature),
    )
    leakage, exponent = leakage_airflow, leakage_exponent
    if opening_area is not None:
        exponent = ORIFICE_EXPONENT
        leakage = opening_airflow(
            leakage_pressure,
            area=opening_area,
            coefficient=OPENING_COEFFICIENT,
            density=STANDARD_AIR_DENSITY,
        )
    pressure = pressure_of_surplus(
        surplus, leakage=leakage, test_pressure=leakage_pressure, exponent=exponent
    )
    return {"surplus": surplus, "building_pressure": pressure}


def _indoors(airflow: Number, temperature: Number | None, indoor: Number) -> Number:
    """An airflow as it would be at the temperature indoors."""
    return (
        airflow
        if temperature is None
        else airflow_at_temperature(airflow, temperature, other=indoor)
    )


def pressed_building(_used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """What a pressure out of its limits does; that the leakage of a building is seldom known."""
    pressure = results["building_pressure"]
    notes = [Note("calc-leakage-unknown", {}, advice=True)]
    if pressure < LEAST_PRESSURE:
        notes.append(Note("calc-building-low", {"limit": LEAST_PRESSURE}))
    if pressure > MOST_PRESSURE:
        notes.append(Note("calc-building-high", {"limit": MOST_PRESSURE}))
    return tuple(notes)


BUILDING_PRESSURE = Calculation(
    name="building-pressure",
    work=building_pressure,
    inputs=(
        Input("supply_airflow", "airflow"),
        Input("exhaust_airflow", "airflow"),
        Input("leakage_airflow", "airflow", optional=True),
        Input("opening_area", "area", optional=True),
        Input("leakage_pressure", "pressure", default=75.0),
        Input("leakage_exponent", default=LEAKAGE_EXPONENT),
        Input("supply_temperature", "temperature", optional=True),
        Input("exhaust_temperature", "temperature", optional=True),
        Input("indoor_temperature", "temperature", default=294.261),
    ),
    outputs=(Output("building_pressure", "pressure"), Output("surplus", "airflow")),
    remark=pressed_building,
)


def force_on_door(
    *,
    door_pressure: Number,
    door_width: Number,
    door_height: Number,
    closer_force: Number,
    handle_distance: Number,
) -> dict[str, Any]:
    """The force at the handle, and the pressure at which it becomes what a code allows."""
    if not handle_distance < door_width:
        raise CannotCalculateError("calc-handle-off-door", "handle_distance")
    door = {
        "width": door_width,
        "height": door_height,
        "handle": handle_distance,
        "closer": closer_force,
    }
    return {
        "door_force": door_force(door_pressure, **door),
        "largest_door_pressure": pressure_of_door_force(START_FORCE, **door),
    }


def heavy_door(_used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """A door that people cannot open, or that the air keeps open."""
    force = results["door_force"]
    if force > START_FORCE:
        return (Note("calc-door-heavy", {"limit": START_FORCE}),)
    return (Note("calc-door-stands-open", {}),) if force < 0 else ()


DOOR_FORCE = Calculation(
    name="door-force",
    work=force_on_door,
    inputs=(
        Input("door_pressure", "pressure", signed=True),
        Input("door_width", "length"),
        Input("door_height", "length"),
        Input("closer_force", "force"),
        Input("handle_distance", "size", default=HANDLE_DISTANCE),
    ),
    outputs=(Output("door_force", "force"), Output("largest_door_pressure", "pressure")),
    remark=heavy_door,
)
