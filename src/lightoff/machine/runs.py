"""Runs: the states a unit is put in to be measured, and what fires in each."""

import re
from typing import Literal

from lightoff.machine.machine import Machine

Level = Literal["high", "low"]

WINTER = "winter"  # no run of a visit: the coldest day, foretold
_ONE = re.compile(r"(high|low)\.([1-9])")


def runs(machine: Machine) -> tuple[str, ...]:
    """Every run this unit has, in the order of work.

    `low` and `low.N` exist only where that furnace has a low fire; on a single furnace `high.1`
    is the same run as `high` and is not listed twice.
    """
    several = len(machine.furnaces) > 1
    one = [
        run
        for number, furnace in machine.numbered()
        for run in (f"high.{number}", f"low.{number}")
        if several and (furnace.has_low_fire or run.startswith("high"))
    ]
    low = ["low"] if machine.furnace(machine.leading).has_low_fire else []
    return ("off", "fan", "high", *low, *one, "all")


def canonical(machine: Machine, run: str) -> str:
    """The name a run is answered under: `high.1` of a single furnace is `high`."""
    if len(machine.furnaces) == 1 and run in ("high.1", "low.1"):
        return run.split(".")[0]
    return run


def firing(machine: Machine, run: str) -> dict[int, Level]:
    """Which furnaces fire in `run`, and at what level."""
    if run in ("high", "all"):
        return {number: "high" for number, _ in machine.numbered()}
    if run == "low":
        return {machine.leading: "low"}
    if match := _ONE.fullmatch(run):
        level: Level = "high" if match[1] == "high" else "low"
        return {int(match[2]): level}
    return {}


def fan_runs(run: str) -> bool:
    """Whether the supply fan turns in `run`."""
    return run != "off"


def high_run(machine: Machine, furnace: int) -> str:
    """The run in which `furnace` alone is at high fire."""
    return canonical(machine, f"high.{furnace}")


def low_run(machine: Machine, furnace: int) -> str:
    """The run in which `furnace` alone is at low fire (`low` where it leads)."""
    return "low" if furnace == machine.leading else f"low.{furnace}"
