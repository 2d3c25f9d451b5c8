"""The machine: plate, design and site together, and the questions its configuration answers."""

from dataclasses import dataclass

from lightoff.machine.plate import Airside, Drive, Electrical, Fan, Furnace, Motor, Unit
from lightoff.machine.site import Design, Site


@dataclass(frozen=True)
class Machine:
    """Everything declared about one unit at one site."""

    unit: Unit
    electrical: Electrical
    motor: Motor
    drive: Drive
    fan: Fan
    airside: Airside
    furnaces: tuple[Furnace, ...]
    design: Design
    site: Site
    parties: tuple[tuple[str, str], ...] = ()

    @property
    def three_phase(self) -> bool:
        return self.electrical.phases == 3

    @property
    def leading(self) -> int:
        """Number of the leading furnace: the first so declared, else the first."""
        return next((n for n, f in self.numbered() if f.leading), 1)

    def numbered(self) -> list[tuple[int, Furnace]]:
        """The furnaces with their numbers, from 1."""
        return list(enumerate(self.furnaces, start=1))

    def furnace(self, number: int) -> Furnace:
        return self.furnaces[number - 1]

    def has(self, option: str) -> bool:
        return option in self.unit.options
