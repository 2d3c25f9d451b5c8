"""A fuel gas: what it is made of, and what follows from that."""

from dataclasses import dataclass
from functools import cached_property

from plant.si import GAS_BASE, UNIVERSAL

# carbon, hydrogen, nitrogen (N2), oxygen (as CO2) atoms or molecules; molar mass [kg/mol]; gross
# molar heat at 15 degC [J/mol]; summation factor at 15 degC (ISO 6976, from memory)
SPECIES = {
    "methane": (1, 4, 0.016043, 891_510.0, 0.0447),
    "ethane": (2, 6, 0.030070, 1_562_140.0, 0.0922),
    "propane": (3, 8, 0.044097, 2_221_100.0, 0.1338),
    "propylene": (3, 6, 0.042081, 2_061_570.0, 0.1225),
    "isobutane": (4, 10, 0.058123, 2_870_580.0, 0.1789),
    "butane": (4, 10, 0.058123, 2_879_760.0, 0.1871),
    "nitrogen": (0, 0, 0.028013, 0.0, 0.0173),
    "carbon dioxide": (1, 0, 0.044010, 0.0, 0.0748),
    "air": (0, 0, 0.028965, 0.0, 0.0173),
}
AIR_MASS = 0.028965  # [kg/mol]
AIR_Z = 0.9996


@dataclass(frozen=True)
class Fuel:
    """Mole fractions; everything else is worked out once."""

    parts: tuple[tuple[str, float], ...]

    def _sum(self, column: int) -> float:
        return sum(x * SPECIES[name][column] for name, x in self.parts)

    @cached_property
    def carbon(self) -> float:
        return self._sum(0)

    @cached_property
    def hydrogen(self) -> float:
        return self._sum(1)

    @cached_property
    def inert(self) -> float:
        """Nitrogen that comes with the gas [mol/mol]."""
        return sum(x for name, x in self.parts if name in ("nitrogen", "air"))

    @cached_property
    def molar_mass(self) -> float:
        return self._sum(2)

    @cached_property
    def gross(self) -> float:
        """Gross molar heat [J/mol]."""
        return self._sum(3)

    @cached_property
    def compressibility(self) -> float:
        return 1.0 - self._sum(4) ** 2

    @cached_property
    def oxygen(self) -> float:
        """Oxygen to burn it all, less what it holds bound to carbon already [mol/mol]."""
        bound = sum(x for name, x in self.parts if name == "carbon dioxide")
        return self.carbon + self.hydrogen / 4.0 - bound

    @cached_property
    def heating_value(self) -> float:
        """Gross, dry, at 60 degF and 30 inHg [J/m3]."""
        p, T = GAS_BASE
        return self.gross * p / (self.compressibility * UNIVERSAL * T)

    @cached_property
    def relative_density(self) -> float:
        return self.molar_mass / AIR_MASS * AIR_Z / self.compressibility

    def density(self, p: float, T: float) -> float:
        """At an absolute pressure and a temperature [kg/m3]."""
        return p * self.molar_mass / (self.compressibility * UNIVERSAL * T)


def normal(**parts: float) -> Fuel:
    """A fuel of these parts, made to add up to one."""
    whole = sum(parts.values())
    return Fuel(tuple((name.replace("_", " "), x / whole) for name, x in parts.items() if x > 0.0))


def diluted(fuel: Fuel, what: str, share: float) -> Fuel:
    """The same gas with a share of something else in it."""
    rest = {name.replace(" ", "_"): x * (1.0 - share) for name, x in fuel.parts}
    key = what.replace(" ", "_")
    return normal(**{**rest, key: rest.get(key, 0.0) + share})
