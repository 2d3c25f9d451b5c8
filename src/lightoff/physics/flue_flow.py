"""How much flue gas, or air, goes with the heat of a fire."""

from lightoff.formula import Number, formula
from lightoff.physics.fuel_gas import molar_volume
from lightoff.physics.gas_components import AIR_MOLAR_MASS


@formula
def volume_per_heat(
    moles: Number, heat: Number, *, temperature: Number, pressure: Number
) -> Number:
    """Volume of a part of the flue gas, or of the air, for each unit of gross heat.

    F = N V / H

    Parameters
    ----------
    moles : N, per amount of fuel, 0 to 1300 [mol/mol]
    heat : H, gross heating value at 25 degC, 250 000 to 5.6e6 [J/mol]
    temperature : T, at which the volume is wanted, 230 to 1000 [K]
    pressure : p, absolute pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    F, volume over gross heat [m3/J]

    Source: ideal gas law; the F factors of US EPA method 19 at 68 degF and 29.92 inHg.

    >>> F = volume_per_heat(8.5484, 890580.0, temperature=293.15, pressure=101325.0)
    >>> round(F * 1055.06e6 / 0.3048**3)
    8603
    """
    return moles * molar_volume(temperature, pressure) / heat


@formula
def flue_mass(molar_mass: Number, air: Number, *, humidity_ratio: Number) -> Number:
    """Mass of flue gas per amount of fuel: the fuel and the air, none of it lost.

    m = M + 28.9655 B (1 + W)

    Parameters
    ----------
    molar_mass : M, of the fuel, 2 to 120 [kg/kmol]
    air : B, dry combustion air, 1 to 1300 [mol/mol]
    humidity_ratio : W, of the combustion air, 0 to 0.05 [kg/kg]

    Returns
    -------
    m, flue gas and its condensate [kg/kmol]

    Source: conservation of mass; ISO 6976:2016 for dry air.

    >>> round(flue_mass(16.04246, 14.32, humidity_ratio=0.0), 1)
    430.8
    """
    return molar_mass + AIR_MOLAR_MASS * air * (1 + humidity_ratio)


@formula
def mass_per_heat(moles: Number, *, molar_mass: Number, heat: Number) -> Number:
    """Mass for each unit of gross heat.

    f = n M / (1000 H)

    Parameters
    ----------
    moles : n, per amount of fuel, 0 to 1300 [mol/mol]
    molar_mass : M, of what is counted, 2 to 40 000 [kg/kmol]
    heat : H, gross heating value at 25 degC, 250 000 to 5.6e6 [J/mol]

    Returns
    -------
    f, mass over gross heat [kg/J]

    Source: definition; of carbon dioxide, the emission factor of 40 CFR 98.

    >>> round(mass_per_heat(1.0, molar_mass=44.0095, heat=890580.0) * 1055.06e6, 1)
    52.1
    """
    return moles * molar_mass / (1000 * heat)
