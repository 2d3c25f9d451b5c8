"""Every formula, by topic, in the order a start-up meets them."""

from collections.abc import Callable
from types import ModuleType
from typing import Any

from lightoff.formula import is_formula
from lightoff.physics import (
    airstream,
    atmosphere,
    belt,
    building,
    combustion,
    drills,
    duct,
    electricity,
    fan,
    fan_amps,
    fan_curve,
    flue_flow,
    flue_gas,
    flue_loss,
    flue_temperature,
    frequency_drive,
    fuel_gas,
    gas_input,
    gas_pipe,
    gas_pressure,
    heat_exchanger,
    heating_value,
    meter,
    mixing,
    moist_air,
    motor,
    motor_current,
    motor_speed,
    operating_point,
    orifice,
    orifice_size,
    pipe_tables,
    psychrometer,
    regulator,
    saturation,
    sheave,
    stoichiometry,
    thermochemistry,
    tightness,
    traverse,
    traverse_points,
    wiring,
)

TOPICS: tuple[ModuleType, ...] = (
    atmosphere,
    saturation,
    moist_air,
    psychrometer,
    electricity,
    wiring,
    motor_speed,
    motor,
    motor_current,
    frequency_drive,
    sheave,
    belt,
    duct,
    traverse_points,
    traverse,
    fan,
    fan_curve,
    operating_point,
    fan_amps,
    fuel_gas,
    heating_value,
    gas_pressure,
    gas_pipe,
    pipe_tables,
    regulator,
    tightness,
    orifice,
    orifice_size,
    drills,
    meter,
    gas_input,
    thermochemistry,
    stoichiometry,
    combustion,
    flue_gas,
    flue_loss,
    flue_temperature,
    flue_flow,
    heat_exchanger,
    airstream,
    mixing,
    building,
)


def formulas(topic: ModuleType) -> list[Callable[..., Any]]:
    """The formulas of a topic, in the order they are written."""
    return [
        thing
        for thing in vars(topic).values()
        if is_formula(thing) and thing.__module__ == topic.__name__
    ]
