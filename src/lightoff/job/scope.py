"""What a job declares before its visits, so that a visit is read against this unit.

A scope is filled while a job is read: unit and instruments come first, so a reading can be told
at once that its run, its point or its instrument does not exist. Without a unit (a CSV of
readings alone, or a unit that is itself faulty) only what no unit has is refused.
"""

import math
from typing import Any

from pydantic import ValidationInfo

from lightoff.job.compile_machine import machine_alone
from lightoff.job.nearest import either, shown
from lightoff.job.table import unknown_word
from lightoff.job.unit import Unit
from lightoff.machine import Machine, canonical, points, readable, runs, sequence
from lightoff.machine.points import Point

HALF_PSI = 3447.4  # [Pa] what a gas valve is taken to stand where no plate says more
_ANY_RUN = (
    *("off", "fan", "high", "low"),
    *(f"{level}.{number}" for number in (1, 2, 3) for level in ("high", "low")),
    "all",
)


class Scope:
    """The unit and the instruments declared so far; what they rule out raises a ValueError."""

    def __init__(self, instruments: list[str] | None = None) -> None:
        self.instruments = instruments  # None: nobody knows which were carried
        self.unit: Unit | None = None
        self.machine: Machine | None = None
        self._points: dict[str, Point] = {}
        self._runs: tuple[str, ...] = _ANY_RUN
        self._unit_steps: frozenset[str] = frozenset()

    def declare(self, unit: Unit) -> None:
        """From here on, everything is read against this unit."""
        self.unit = unit
        self.machine = machine_alone(unit)
        self._points = {point.id: point for point in points(self.machine)}
        self._runs = runs(self.machine)
        steps = sequence(self.machine)
        self._unit_steps = frozenset(step.id for step in steps if step.furnace is None)

    def carry(self, instrument: str) -> str:
        """Note an instrument carried; two of one name could not be told apart."""
        if self.instruments is None:
            return instrument
        if instrument in self.instruments:
            raise ValueError(f"{shown(instrument)} is the id of two instruments: give each its own")
        self.instruments.append(instrument)
        return instrument

    def instrument(self, name: str) -> str:
        if self.instruments is None or name in self.instruments:
            return name
        if not self.instruments:
            raise ValueError(f"{shown(name)} is not declared: write an [[instrument]] with this id")
        raise unknown_word(name, "a declared instrument", self.instruments)

    def run(self, name: str) -> str:
        """The run under the name it is answered under."""
        found = canonical(self.machine, name) if self.machine else name
        if found not in self._runs:
            noun = "a run of this unit" if self.machine else "a run of any unit"
            raise unknown_word(name, noun, self._runs)
        return found

    def readable(self, point_id: str, run: str) -> None:
        """Refuse a furnace's point in a run in which that furnace does not fire."""
        point = self._points.get(point_id)
        if self.machine is None or point is None or readable(self.machine, point, run):
            return
        may = [name for name in self._runs if readable(self.machine, point, name)]
        raise ValueError(
            f"furnace {point.furnace} does not fire in run {shown(run)}: "
            f"{shown(point_id)} may be read in {either(may)}"
        )

    def furnace(self, number: int) -> int:
        count = len(self.machine.furnaces) if self.machine else 3
        if not 1 <= number <= count:
            raise ValueError(f"there is no furnace {shown(number)}: write {_to(count)}")
        return number

    def own_furnace(self, number: int | None, what: str) -> int | None:
        """The furnace of a thing each furnace has one of; of a single furnace it is its own."""
        if number is not None or self.machine is None:
            return number
        count = len(self.machine.furnaces)
        if count == 1:
            return 1
        raise ValueError(f"each furnace has its own {shown(what)}: write furnace = {_to(count)}")

    def is_unit_step(self, step: str) -> bool:
        """Whether the unit as a whole takes this step, rather than one furnace."""
        return step in self._unit_steps

    def flame_dimension(self, point_id: str) -> str | None:
        """The dimension the plate gives this furnace's flame signal in, where it gives one."""
        point = self._points.get(point_id)
        if self.unit is None or point is None or point.furnace is None:
            return None
        signal = self.unit.furnaces[point.furnace - 1].flame_signal
        return signal.dimension if signal and point.kind == "flame signal" else None

    def valve_rating(self) -> float:
        """The most a gas valve of this unit stands [Pa]."""
        if self.unit is None:
            return math.inf
        declared = (furnace.supply_max for furnace in self.unit.furnaces)
        return min((most for most in declared if most is not None), default=HALF_PSI)


def scope_of(info: ValidationInfo[Any]) -> Scope:
    """The scope a field is read in."""
    return info.context if isinstance(info.context, Scope) else Scope()


def _to(count: int) -> str:
    return "1" if count == 1 else f"1 to {count}"
