"""What the model knows besides points: how it names a quantity, and what kind that is."""

import re

from lightoff.machine import kind_of

# what the model calls a quantity that a target names otherwise
_NAMES = {"airflow": "airflow.standard", "shaft_power": "motor_power"}
_KINDS = {
    "airflow.standard": "airflow",
    "current_unbalance": "fraction",
    "discharge": "temperature",
    "efficiency": "fraction",
    "excess_air": "fraction",
    "flue_dew_point": "temperature",
    "input": "heat",
    "motor_power": "shaft power",
    "output": "heat",
    "rise": "temperature difference",
    "shaft_power": "shaft power",
    "voltage_unbalance": "fraction",
}
_OF = re.compile(r"\.(\d|unit)$")


def model_name(point: str) -> str:
    """The model's name of what a target is about."""
    return _NAMES.get(point, point)


def kind_told(name: str) -> str:
    """The kind of a point or of a quantity that the model derives."""
    return kind_of(name) or _KINDS.get(_OF.sub("", name), "number")
