"""What is being done to the machine in a run: what fires, and whether everything else does too."""

from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from lightoff.formula import Number
from lightoff.formula.elementary import where
from lightoff.machine.machine import Machine
from lightoff.machine.runs import Level, fan_runs, firing


class Firing(NamedTuple):
    """How a furnace fires: in one run it does; in many at once, where it is `lit` [0 or 1]."""

    high: Any  # a truth, or an array of them
    lit: Number = 1.0

    def of(self, at_high: Number, at_low: Number) -> Number:
        """The one for high fire or the one for low."""
        return where(self.high, at_high, at_low)


class Case(NamedTuple):
    """A run with the fan on: the furnaces that fire, and whether all other appliances do.

    Several at once where `others` and each firing are arrays.
    """

    firing: Mapping[int, Firing]
    others: Any = False


def case_of(machine: Machine, run: str) -> Case:
    """The case of a run in which the fan turns."""
    if not fan_runs(run):
        raise ValueError(f"the fan stands in {run}")
    levels = firing(machine, run)
    return Case({n: Firing(level == "high") for n, level in levels.items()}, run == "all")


def abreast(cases: Sequence[Case]) -> Case:
    """Several cases as one, of arrays; a furnace that fires in none is left out."""
    import numpy

    furnaces = sorted({number for case in cases for number in case.firing})
    out = Firing(True, 0.0)
    fires = {}
    for number in furnaces:
        each = [case.firing.get(number, out) for case in cases]
        fires[number] = Firing(
            numpy.array([one.high for one in each]), numpy.array([float(one.lit) for one in each])
        )
    return Case(fires, numpy.array([case.others for case in cases]))


def level_of(fires: Firing) -> Level:
    """The level at which one furnace fires."""
    return "high" if fires.high else "low"
