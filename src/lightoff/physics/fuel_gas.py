"""Fuel gas: heating value, relative density and Wobbe number, from composition or declared."""

from collections.abc import Mapping

from lightoff.formula import Number, formula
from lightoff.physics.constants import GAS_BASE_PRESSURE, GAS_BASE_TEMPERATURE, STANDARD_PRESSURE

ISO_GAS_CONSTANT = 8.3144621  # [J/(mol K)] as ISO 6976:2016 uses it
AIR_MOLAR_MASS = 28.96546  # [kg/kmol] ISO 6976:2016
AIR_COMPRESSIBILITY = 0.999601  # [1] at 60 degF, ISO 6976:2016

# molar mass [kg/kmol], summation factor at 60 degF [1], gross heating value at 60 degF [J/mol]
# ISO 6976:2016, tables 1 to 3; summation factors at 15 degC, which differ from those at 60 degF by
# less than 0.0005; carbon monoxide and hydrogen from memory
COMPONENTS: dict[str, tuple[float, float, float]] = {
    "methane": (16.04246, 0.04452, 891.46e3),
    "ethane": (30.06904, 0.0919, 1562.06e3),
    "propane": (44.09562, 0.1344, 2220.99e3),
    "n-butane": (58.1222, 0.1840, 2879.63e3),
    "isobutane": (58.1222, 0.1722, 2870.45e3),
    "n-pentane": (72.14878, 0.2361, 3538.45e3),
    "isopentane": (72.14878, 0.2251, 3531.52e3),
    "n-hexane": (86.17536, 0.3002, 4198.06e3),
    "nitrogen": (28.0134, 0.0170, 0.0),
    "carbon dioxide": (44.0095, 0.0752, 0.0),
    "oxygen": (31.9988, 0.0276, 0.0),
    "carbon monoxide": (28.0101, 0.0217, 282.91e3),
    "hydrogen": (2.01588, -0.01, 286.13e3),
}


@formula
def compressibility(fractions: Mapping[str, Number], pressure: Number) -> Number:
    """Compressibility factor of a mixture.

    Z = 1 - p / 101325 (sum of x_i s_i)^2

    Parameters
    ----------
    fractions : x, mole fractions by name, together 1 [1]
    pressure : p, absolute pressure, 90 000 to 110 000 [Pa]

    Returns
    -------
    Z, compressibility factor [1]

    Source: ISO 6976:2016, eq. 1.

    >>> round(compressibility({"methane": 1.0}, 101325.0), 5)
    0.99802
    """
    total = sum(x * COMPONENTS[name][1] for name, x in fractions.items())
    return 1 - pressure / STANDARD_PRESSURE * total**2


@formula
def heating_value(fractions: Mapping[str, Number]) -> Number:
    """Gross heating value of real dry gas at 60 degF and 30 inHg.

    H = sum of x_i H_i p / (Z R T)

    Parameters
    ----------
    fractions : x, mole fractions by name, together 1 [1]

    Returns
    -------
    H, gross heating value [J/m3]

    Source: ISO 6976:2016, eq. 5 and 7, with the US gas trade's base state.

    >>> round(heating_value({"methane": 1.0}) / 1e6, 2)
    37.8
    """
    molar = sum(x * COMPONENTS[name][2] for name, x in fractions.items())
    Z = compressibility(fractions, GAS_BASE_PRESSURE)
    return molar * GAS_BASE_PRESSURE / (Z * ISO_GAS_CONSTANT * GAS_BASE_TEMPERATURE)


@formula
def relative_density(fractions: Mapping[str, Number]) -> Number:
    """Density of the gas over that of dry air.

    d = sum of x_i M_i / 28.96546 × 0.999601 / Z

    Parameters
    ----------
    fractions : x, mole fractions by name, together 1 [1]

    Returns
    -------
    d, relative density at 60 degF and 30 inHg [1]

    Source: ISO 6976:2016, eq. 9 and 12.

    >>> round(relative_density({"methane": 1.0}), 4)
    0.5547
    """
    mass = sum(x * COMPONENTS[name][0] for name, x in fractions.items())
    return (
        mass / AIR_MOLAR_MASS * AIR_COMPRESSIBILITY / compressibility(fractions, GAS_BASE_PRESSURE)
    )


@formula
def wobbe(heating_value: Number, relative_density: Number) -> Number:
    """Wobbe number: at one orifice and pressure, gases of one Wobbe number give one heat flow.

    W = H / d^0.5

    Parameters
    ----------
    heating_value : H, gross heating value, 1e6 to 1.5e8 [J/m3]
    relative_density : d, density over that of dry air, 0.3 to 3 [1]

    Returns
    -------
    W, Wobbe number [J/m3]

    Source: ISO 6976:2016, eq. 14.

    >>> round(wobbe(1000.0, 0.6), 1)
    1291.0
    """
    return heating_value / relative_density**0.5
