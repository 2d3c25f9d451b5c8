"""What fuel gas is made of: the constants of ISO 6976:2016, tables A.1 to A.4.

Read in two public copies that agree but for misprints of one (isobutane's summation factor at
60 degF is 0.1717, hydrogen's -0.01). The tests hold molar masses against atomic masses, heats
against formation enthalpies, summation factors against equations of state.
"""

from collections.abc import Callable, Mapping
from functools import reduce
from operator import add
from typing import NamedTuple

from lightoff.formula import Number
from lightoff.formula.elementary import interpolate
from lightoff.physics.constants import GAS_BASE_TEMPERATURE

ISO_GAS_CONSTANT = 8.3144621  # [J/(mol K)]
AIR_MOLAR_MASS = 28.96546  # [kg/kmol] dry air

METERED_AT = (273.15, 288.15, GAS_BASE_TEMPERATURE, 293.15)  # [K] 0, 15 degC, 60 degF, 20 degC
BURNT_AT = (*METERED_AT, 298.15)  # [K] and 25 degC
AIR_COMPRESSIBILITY = tuple(
    zip(METERED_AT, (0.999419, 0.999595, 0.999601, 0.999645), strict=True)
)  # [K], [1] of dry air at 101.325 kPa


class Component(NamedTuple):
    """One gas: its atoms, summation factors [1] at METERED_AT, gross heats [kJ/mol] at BURNT_AT."""

    molar_mass: float  # [kg/kmol]
    carbon: int
    hydrogen: int
    oxygen: int
    nitrogen: int
    summation: tuple[float, float, float, float]
    heat: tuple[float, float, float, float, float] = (0.0, 0.0, 0.0, 0.0, 0.0)


COMPONENTS: dict[str, Component] = {
    "methane": Component(16.04246, 1, 4, 0, 0, (0.04886, 0.04452, 0.04437, 0.04317),
                         (892.92, 891.51, 891.46, 891.05, 890.58)),
    "ethane": Component(30.06904, 2, 6, 0, 0, (0.0997, 0.0919, 0.0916, 0.0895),
                        (1564.35, 1562.14, 1562.06, 1561.42, 1560.69)),
    "propane": Component(44.09562, 3, 8, 0, 0, (0.1465, 0.1344, 0.1340, 0.1308),
                         (2224.03, 2221.10, 2220.99, 2220.13, 2219.17)),
    "n-butane": Component(58.1222, 4, 10, 0, 0, (0.2022, 0.1840, 0.1834, 0.1785),
                          (2883.35, 2879.76, 2879.63, 2878.58, 2877.40)),
    "isobutane": Component(58.1222, 4, 10, 0, 0, (0.1885, 0.1722, 0.1717, 0.1673),
                           (2874.21, 2870.58, 2870.45, 2869.39, 2868.20)),
    "n-pentane": Component(72.14878, 5, 12, 0, 0, (0.2586, 0.2361, 0.2354, 0.2295),
                           (3542.91, 3538.60, 3538.45, 3537.19, 3535.77)),
    "isopentane": Component(72.14878, 5, 12, 0, 0, (0.2458, 0.2251, 0.2244, 0.2189),
                            (3536.01, 3531.68, 3531.52, 3530.25, 3528.83)),
    "neopentane": Component(72.14878, 5, 12, 0, 0, (0.2245, 0.2040, 0.2033, 0.1979),
                            (3521.75, 3517.44, 3517.28, 3516.02, 3514.61)),
    "n-hexane": Component(86.17536, 6, 14, 0, 0, (0.3319, 0.3001, 0.2990, 0.2907),
                          (4203.24, 4198.24, 4198.06, 4196.60, 4194.95)),
    "n-heptane": Component(100.20194, 7, 16, 0, 0, (0.4076, 0.3668, 0.3654, 0.3547),
                           (4862.88, 4857.18, 4856.98, 4855.31, 4853.43)),
    "n-octane": Component(114.22852, 8, 18, 0, 0, (0.4845, 0.4346, 0.4329, 0.4198),
                          (5522.41, 5516.01, 5515.78, 5513.90, 5511.80)),
    "ethylene": Component(28.05316, 2, 4, 0, 0, (0.0868, 0.0799, 0.0797, 0.0778),
                          (1413.55, 1412.12, 1412.07, 1411.65, 1411.18)),
    "propylene": Component(42.07974, 3, 6, 0, 0, (0.1381, 0.1267, 0.1263, 0.1232),
                           (2061.57, 2059.43, 2059.35, 2058.73, 2058.02)),
    "hydrogen": Component(2.01588, 0, 2, 0, 0, (-0.01, -0.01, -0.01, -0.01),
                          (286.64, 286.15, 286.13, 285.99, 285.83)),
    "carbon monoxide": Component(28.0101, 1, 0, 1, 0, (0.0258, 0.0217, 0.0215, 0.0203),
                                 (282.80, 282.91, 282.91, 282.95, 282.98)),
    "water": Component(18.01528, 0, 2, 1, 0, (0.3093, 0.2562, 0.2546, 0.2419),
                       (45.064, 44.431, 44.408, 44.222, 44.013)),
    "nitrogen": Component(28.0134, 0, 0, 0, 2, (0.0214, 0.0170, 0.0169, 0.0156)),
    "carbon dioxide": Component(44.0095, 1, 0, 2, 0, (0.0821, 0.0752, 0.0749, 0.0730)),
    "oxygen": Component(31.9988, 0, 0, 2, 0, (0.0311, 0.0276, 0.0275, 0.0265)),
    "helium": Component(4.002602, 0, 0, 0, 0, (-0.01, -0.01, -0.01, -0.01)),
}  # fmt: skip

# What stands for a gas of which only the name is known.
# natural gas: round figures, no single source; heating value and relative density come out at the
# means of US gas (EIA 2020 to 2025; GRI-92/0123, from memory), CO2 per heat at EPA's default
# propane: pure, as HD-5 is to nine parts in ten or more (ASTM D1835, from memory)
TYPICAL: dict[str, dict[str, float]] = {
    "natural gas": {"methane": 0.93, "ethane": 0.035, "propane": 0.01,
                    "nitrogen": 0.015, "carbon dioxide": 0.01},
    "propane": {"propane": 1.0},
}  # fmt: skip


def mean(fractions: Mapping[str, Number], value: Callable[[str], Number]) -> Number:
    """Mean of the components' values, each by its share: a rounded analysis does not add up."""
    weighted = [x * value(name) for name, x in fractions.items()]
    return reduce(add, weighted) / reduce(add, fractions.values())


def at(temperature: Number, temperatures: tuple[float, ...], values: tuple[float, ...]) -> Number:
    """Between the temperatures of the standard's tables values run straight."""
    # a working shows the number found, not where it was looked up
    plain = float(temperature) if isinstance(temperature, float) else temperature
    return interpolate(plain, tuple(zip(temperatures, values, strict=True)))
