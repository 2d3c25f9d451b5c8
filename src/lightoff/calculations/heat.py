"""Airflow from the temperature rise."""

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
from lightoff.physics.airstream import (
    airflow_from_rise,
    furnace_output,
    rise_between,
    standard_airflow,
)
from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.moist_air import humidity_ratio, moist_air_density


def from_rise(
    *,
    burner_input: Number,
    efficiency: Number,
    entering_temperature: Number,
    discharge_temperature: Number,
    altitude: Number,
    relative_humidity: Number,
) -> dict[str, Any]:
    """The airflow as it enters: the flow on which the rise and the heat agree."""
    rise = rise_between(entering_temperature, discharge_temperature)
    if not rise > 0:
        raise CannotCalculateError("calc-no-rise", "discharge_temperature")
    pressure = barometric_pressure(altitude)
    moisture = humidity_ratio(
        entering_temperature, relative_humidity=relative_humidity, pressure=pressure
    )
    density = moist_air_density(entering_temperature, humidity_ratio=moisture, pressure=pressure)
    heat = furnace_output(burner_input, efficiency)
    flow = airflow_from_rise(heat, rise, density=density, humidity_ratio=moisture)
    return {
        "airflow": flow,
        "standard_airflow": standard_airflow(flow, density),
        "heat": heat,
        "rise": rise,
    }


SMALL_RISE = 10.0  # [K] two probes a degree apart are then a tenth of it; engineering judgement


def remark(_used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """Where the air is not mixed, or the rise is small, the sum is blind."""
    blind = (Note("calc-small-rise", {"rise": results["rise"]}),)
    mixed = (Note("calc-measure-mixed-air", {}, advice=True),)
    return (*blind, *mixed) if results["rise"] < SMALL_RISE else mixed


AIRFLOW_FROM_RISE = Calculation(
    name="airflow-from-rise",
    work=from_rise,
    inputs=(
        Input("burner_input", "heat"),
        Input("efficiency", "fraction", default=0.80, most=1.0),
        Input("entering_temperature", "temperature"),
        Input("discharge_temperature", "temperature"),
        Input("altitude", "length", default=0.0, signed=True),
        Input("relative_humidity", "fraction", default=0.5),
    ),
    outputs=(
        Output("airflow", "airflow"),
        Output("standard_airflow", "airflow"),
        Output("heat", "heat"),
        Output("rise", "temperature difference"),
    ),
    remark=remark,
)
