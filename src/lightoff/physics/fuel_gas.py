"""Fuel gas: molar mass, compressibility, density and Wobbe number, from its composition.

An analysis that was rounded does not quite add up: fractions count as shares of their sum.
"""

from collections.abc import Mapping

from lightoff.formula import Number, formula
from lightoff.formula.elementary import interpolate
from lightoff.physics.constants import STANDARD_PRESSURE
from lightoff.physics.gas_components import (
    AIR_COMPRESSIBILITY,
    AIR_MOLAR_MASS,
    COMPONENTS,
    ISO_GAS_CONSTANT,
    METERED_AT,
    at,
    mean,
)


@formula
def molar_mass(fractions: Mapping[str, Number]) -> Number:
    """Mass of a gas per amount.

    M = sum of x_i M_i

    Parameters
    ----------
    fractions : x, mole fractions by name, together 1 [1]

    Returns
    -------
    M, molar mass [kg/kmol]

    Source: ISO 6976:2016, eq. 5.

    >>> round(molar_mass({"methane": 0.9, "nitrogen": 0.1}), 4)
    17.2396
    """
    return mean(fractions, lambda name: COMPONENTS[name].molar_mass)


@formula
def compressibility(
    fractions: Mapping[str, Number], *, temperature: Number, pressure: Number
) -> Number:
    """Compressibility factor of a gas.

    Z = 1 - p / 101325 (sum of x_i s_i)^2

    Parameters
    ----------
    fractions : x, mole fractions by name, together 1 [1]
    temperature : T, at which the volume is metered, 273.15 to 293.15 [K]
    pressure : p, absolute pressure, 90 000 to 110 000 [Pa]

    Returns
    -------
    Z, compressibility factor [1]

    Source: ISO 6976:2016, eq. 1; between the temperatures of its table s runs straight.

    >>> round(compressibility({"methane": 1.0}, temperature=288.15, pressure=101325.0), 5)
    0.99802
    """
    summation = mean(
        fractions, lambda name: at(temperature, METERED_AT, COMPONENTS[name].summation)
    )
    return 1 - pressure / STANDARD_PRESSURE * summation**2


@formula
def molar_volume(temperature: Number, pressure: Number) -> Number:
    """Volume of an ideal gas per amount.

    V = 8.31446 T / p

    Parameters
    ----------
    temperature : T, temperature, 200 to 1000 [K]
    pressure : p, absolute pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    V, volume per amount [m3/mol]

    Source: ISO 6976:2016, its gas constant.

    >>> round(molar_volume(288.15, 101325.0) * 1000, 4)
    23.6448
    """
    return ISO_GAS_CONSTANT * temperature / pressure


@formula
def gas_density(
    molar_mass: Number, *, compressibility: Number, temperature: Number, pressure: Number
) -> Number:
    """Mass of real gas per volume.

    rho = M / (1000 Z V)

    Parameters
    ----------
    molar_mass : M, mass per amount, 2 to 120 [kg/kmol]
    compressibility : Z, compressibility factor, 1 for the ideal gas, 0.8 to 1.01 [1]
    temperature : T, temperature, 273.15 to 293.15 [K]
    pressure : p, absolute pressure, 90 000 to 110 000 [Pa]

    Returns
    -------
    rho, density [kg/m3]

    Source: ISO 6976:2016, density of the real gas.

    >>> density = gas_density(16.04246, compressibility=0.99802, temperature=288.15,
    ...     pressure=101325.0)
    >>> round(density, 4)
    0.6798
    """
    return molar_mass / (1000 * compressibility * molar_volume(temperature, pressure))


@formula
def air_compressibility(temperature: Number, pressure: Number) -> Number:
    """Compressibility factor of dry air.

    Z_a = 1 - p / 101325 (1 - table(T))

    Parameters
    ----------
    temperature : T, temperature, 273.15 to 293.15 [K]
    pressure : p, absolute pressure, 90 000 to 110 000 [Pa]

    Returns
    -------
    Z_a, compressibility factor [1]

    Source: ISO 6976:2016, compressibility of air; between its temperatures straight.

    >>> round(air_compressibility(288.15, 101325.0), 6)
    0.999595
    """
    standard = interpolate(temperature, AIR_COMPRESSIBILITY)
    return 1 - pressure / STANDARD_PRESSURE * (1 - standard)


@formula
def ideal_relative_density(molar_mass: Number) -> Number:
    """Molar mass of a gas over that of dry air: its relative density were both ideal.

    d_o = M / 28.9655

    Parameters
    ----------
    molar_mass : M, mass per amount, 2 to 120 [kg/kmol]

    Returns
    -------
    d_o, relative density of the ideal gas [1]

    Source: ISO 6976:2016, relative density of the ideal gas.

    >>> round(ideal_relative_density(44.09562), 4)
    1.5224
    """
    return molar_mass / AIR_MOLAR_MASS


@formula
def relative_density(
    molar_mass: Number, *, compressibility: Number, temperature: Number, pressure: Number
) -> Number:
    """Density of a real gas over that of dry air at the same state.

    d = d_o Z_a / Z

    Parameters
    ----------
    molar_mass : M, mass per amount, 2 to 120 [kg/kmol]
    compressibility : Z, compressibility factor of the gas, 0.8 to 1.01 [1]
    temperature : T, temperature, 273.15 to 293.15 [K]
    pressure : p, absolute pressure, 90 000 to 110 000 [Pa]

    Returns
    -------
    d, relative density [1]

    Source: ISO 6976:2016, relative density of the real gas.

    >>> d = relative_density(16.04246, compressibility=0.99802, temperature=288.15,
    ...     pressure=101325.0)
    >>> round(d, 4)
    0.5547
    """
    air = air_compressibility(temperature, pressure)
    return ideal_relative_density(molar_mass) * air / compressibility


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

    Source: ISO 6976:2016, eq. 20.

    >>> round(wobbe(1000.0, 0.6), 1)
    1291.0
    """
    return heating_value / relative_density**0.5
