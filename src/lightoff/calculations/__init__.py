"""The sums a technician reaches for, each alone, each with its working."""

from lightoff.calculations.air import AIR_DENSITY, HUMID_AIR
from lightoff.calculations.belt import BELT
from lightoff.calculations.building import BUILDING_PRESSURE, DOOR_FORCE
from lightoff.calculations.calculation import (
    Answer,
    Calculation,
    CannotCalculateError,
    Input,
    Note,
    Output,
    calculate,
)
from lightoff.calculations.clocking import CLOCKING
from lightoff.calculations.co import CO_AIR_FREE
from lightoff.calculations.electrical import CONTROL_CIRCUIT, UNBALANCE
from lightoff.calculations.fan import FAN_LAW
from lightoff.calculations.flue import FLUE
from lightoff.calculations.gas import GAS
from lightoff.calculations.gas_pipe import PIPE_DROP, PIPE_SIZE
from lightoff.calculations.heat import AIRFLOW_FROM_RISE
from lightoff.calculations.mixed_air import MIXED_AIR, OUTDOOR_AIR
from lightoff.calculations.motor_load import MOTOR_LOAD
from lightoff.calculations.orifice import MANIFOLD, ORIFICE
from lightoff.calculations.sheave import SHEAVE
from lightoff.calculations.tightness import PRESSURE_DECAY
from lightoff.calculations.traverse import TRAVERSE
from lightoff.calculations.traverse_points import TRAVERSE_POINTS

__all__ = [
    "CALCULATIONS",
    "Answer",
    "Calculation",
    "CannotCalculateError",
    "Input",
    "Note",
    "Output",
    "calculate",
]

CALCULATIONS: dict[str, Calculation] = {
    each.name: each
    for each in (
        AIR_DENSITY,
        HUMID_AIR,
        UNBALANCE,
        MOTOR_LOAD,
        CONTROL_CIRCUIT,
        BELT,
        SHEAVE,
        FAN_LAW,
        TRAVERSE_POINTS,
        TRAVERSE,
        AIRFLOW_FROM_RISE,
        MIXED_AIR,
        OUTDOOR_AIR,
        GAS,
        PIPE_SIZE,
        PIPE_DROP,
        PRESSURE_DECAY,
        ORIFICE,
        MANIFOLD,
        CLOCKING,
        FLUE,
        CO_AIR_FREE,
        BUILDING_PRESSURE,
        DOOR_FORCE,
    )
}
