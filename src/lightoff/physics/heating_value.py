"""Heating value of fuel gas: gross and net; per amount, per volume, per mass."""

from collections.abc import Mapping

from lightoff.formula import Number, formula
from lightoff.physics.fuel_gas import molar_volume
from lightoff.physics.gas_components import BURNT_AT, COMPONENTS, at, mean
from lightoff.physics.thermochemistry import condensation_heat


@formula
def molar_heating_value(fractions: Mapping[str, Number], temperature: Number) -> Number:
    """Gross heat of burning a gas, per amount: all water condensed.

    H_c = 1000 × sum of x_i H_i

    Parameters
    ----------
    fractions : x, mole fractions by name, together 1 [1]
    temperature : T, to which the heat is reckoned, 273.15 to 298.15 [K]

    Returns
    -------
    H_c, gross heating value per amount [J/mol]

    Source: ISO 6976:2016, eq. 2; between the temperatures of its table H runs straight.

    >>> round(molar_heating_value({"methane": 1.0}, 288.15))
    891510
    """
    return 1000 * mean(fractions, lambda name: at(temperature, BURNT_AT, COMPONENTS[name].heat))


@formula
def net_molar_heating_value(fractions: Mapping[str, Number], temperature: Number) -> Number:
    """Net heat of burning a gas, per amount: all water stays vapour.

    H_n = H_c - L sum of x_i b_i / 2

    Parameters
    ----------
    fractions : x, mole fractions by name, together 1 [1]
    temperature : T, to which the heat is reckoned, 273.15 to 298.15 [K]

    Returns
    -------
    H_n, net heating value per amount [J/mol]

    Source: ISO 6976:2016, eq. 3, b the number of hydrogen atoms.

    >>> round(net_molar_heating_value({"methane": 1.0}, 288.15))
    802648
    """
    gross = molar_heating_value(fractions, temperature)
    water = mean(fractions, lambda name: COMPONENTS[name].hydrogen / 2)
    return gross - condensation_heat(temperature) * water


@formula
def volumetric_heating_value(
    molar_heating_value: Number, *, compressibility: Number, temperature: Number, pressure: Number
) -> Number:
    """Heating value per volume of real gas.

    H = H_c / (Z V)

    Parameters
    ----------
    molar_heating_value : H_c, heating value per amount, gross or net, 0 to 6e6 [J/mol]
    compressibility : Z, compressibility factor, 1 for the ideal gas, 0.8 to 1.01 [1]
    temperature : T, at which the volume is metered, 273.15 to 293.15 [K]
    pressure : p, absolute pressure, 90 000 to 110 000 [Pa]

    Returns
    -------
    H, heating value, gross or net as what is given [J/m3]

    Source: ISO 6976:2016, volumetric basis, real gas.

    >>> H = volumetric_heating_value(891510.0, compressibility=0.99802, temperature=288.15,
    ...     pressure=101325.0)
    >>> round(H / 1e6, 3)
    37.779
    """
    return molar_heating_value / (compressibility * molar_volume(temperature, pressure))


@formula
def heating_value_per_mass(molar_heating_value: Number, molar_mass: Number) -> Number:
    """Heating value per mass of gas.

    H_m = 1000 H_c / M

    Parameters
    ----------
    molar_heating_value : H_c, heating value per amount, gross or net, 0 to 6e6 [J/mol]
    molar_mass : M, mass per amount, 2 to 120 [kg/kmol]

    Returns
    -------
    H_m, heating value per mass, gross or net as what is given [J/kg]

    Source: ISO 6976:2016, mass basis.

    >>> round(heating_value_per_mass(891510.0, 16.04246) / 1e6, 2)
    55.57
    """
    return 1000 * molar_heating_value / molar_mass


@formula
def heating_value_at(heating_value: Number, *, pressure: Number, base_pressure: Number) -> Number:
    """Heating value per volume, carried from one base pressure to another.

    H_b = H p_b / p

    Parameters
    ----------
    heating_value : H, per volume at the pressure it is stated for, 1e6 to 1.5e8 [J/m3]
    pressure : p, absolute pressure it is stated for, 60 000 to 110 000 [Pa]
    base_pressure : p_b, absolute pressure it is wanted for, 60 000 to 110 000 [Pa]

    Returns
    -------
    H_b, heating value at the wanted pressure [J/m3]

    Source: ideal gas law; the change of compressibility is below 0.01 % between base pressures.

    >>> round(heating_value_at(1010.0, pressure=14.696, base_pressure=14.73), 2)
    1012.34
    """
    return heating_value * base_pressure / pressure
