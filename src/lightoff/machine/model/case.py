"""What is being done to the machine in a run: what fires, and whether everything else does too."""

from collections.abc import Mapping
from typing import NamedTuple

from lightoff.machine.machine import Machine
from lightoff.machine.runs import Level, fan_runs, firing


class Case(NamedTuple):
    """A run with the fan on: the furnaces that fire, and whether all other appliances do."""

    levels: Mapping[int, Level]
    others: bool


def case_of(machine: Machine, run: str) -> Case:
    """The case of a run in which the fan turns."""
    if not fan_runs(run):
        raise ValueError(f"the fan stands in {run}")
    return Case(firing(machine, run), run == "all")
