"""The plant: a drawn unit, asked for its truth, its job and its visits."""

from dataclasses import dataclass, replace
from random import Random
from typing import Any

from plant import draw as drawing
from plant.adjust import adjusted
from plant.faults import afflicted
from plant.job_tree import tree
from plant.machine import Condition, Fault, Machine
from plant.method import of_visit
from plant.plate import Plate as Declared
from plant.points import values
from plant.setting import set_up
from plant.si import kelvin
from plant.state import solve
from plant.visit import Visit, made

Tree = dict[str, Any]


@dataclass(frozen=True)
class Plant:
    """A machine with what is declared of it."""

    machine: Machine
    declared: Declared

    @property
    def fault(self) -> Fault:
        return self.machine.fault

    def runs(self) -> tuple[str, ...]:
        return self.machine.runs()

    def weather(self) -> Condition:
        """The day of the visit."""
        return self.machine.weather

    def winter(self) -> Condition:
        """The design day."""
        return replace(
            self.machine.weather, outdoor=kelvin(self.declared.site.winter), humidity=0.7, wind=0.0
        )

    def state(self, run: str, condition: Condition | None = None) -> dict[str, float]:
        """Every point's and derived id's true value in SI; a furnace at rest has fewer."""
        return values(self.machine, solve(self.machine, run, condition or self.weather()))

    def adjusted(self, setting: str, value: float, run: str = "high") -> "Plant":
        """The same plant with one setting turned; `run` tells high fire from low."""
        return replace(self, machine=adjusted(self.machine, setting, value, run))

    def job(self) -> Tree:
        """The job tree without instruments or visits."""
        return tree(self.declared)

    def visit(self, style: str, rng: Random, *, slips: float = 0.0) -> Visit:
        """`ordinary`, `thorough` or `scant`; `slips`: chance of one gross slip in it."""
        return made(rng, self.machine, self.declared, self.job(), style, slips)


def draw(seed: int, fault: str | None = None) -> Plant:
    """A unit with at most one fault: 35 % sound, else any cause of job.md that can befall it."""
    rng = Random(seed)
    declared, fuel, catalogue = drawing.unit(rng)
    machine = drawing.machine(rng, seed, declared, fuel, catalogue)
    machine, declared = set_up(rng, machine, declared)
    machine = machine.but(method=of_visit(rng, machine))
    return Plant(*afflicted(rng, machine, declared, fault))
