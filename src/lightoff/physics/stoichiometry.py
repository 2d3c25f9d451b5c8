"""Burning a gas completely in no more air than it needs."""

from collections.abc import Mapping
from typing import NamedTuple

from lightoff.formula import Number, formula
from lightoff.physics.gas_components import COMPONENTS, mean
from lightoff.physics.heating_value import molar_heating_value
from lightoff.physics.thermochemistry import HEAT_REFERENCE

AIR_OXYGEN = 0.20946  # [1] of dry air, the rest counted as nitrogen; ISO 6976:2016 (from memory)


class Stoichiometry(NamedTuple):
    """What one mole of fuel needs and makes in complete combustion, mol; its gross heat, J."""

    oxygen: Number
    carbon_dioxide: Number
    water: Number
    nitrogen: Number
    heat: Number


@formula
def stoichiometry(fractions: Mapping[str, Number]) -> Stoichiometry:
    """What a gas needs and makes when it burns completely, per amount of gas.

    n_O2 = sum of x_i (c_i + b_i / 4 - o_i / 2); n_CO2 = sum of x_i c_i;
    n_H2O = sum of x_i b_i / 2; n_N2 = sum of x_i n_i / 2; H = H_c

    Parameters
    ----------
    fractions : x, mole fractions by name, together 1 [1]

    Returns
    -------
    oxygen : n_O2, oxygen it needs [mol/mol]
    carbon_dioxide : n_CO2, carbon dioxide it makes or holds [mol/mol]
    water : n_H2O, water it makes or holds [mol/mol]
    nitrogen : n_N2, nitrogen it holds, helium counted with it [mol/mol]
    heat : H, gross heating value at 25 degC per amount [J/mol]

    Source: stoichiometry; c, b, o, n the atoms of carbon, hydrogen, oxygen, nitrogen.

    >>> [round(moles, 2) for moles in stoichiometry({"methane": 0.9, "nitrogen": 0.1})[:4]]
    [1.8, 0.9, 1.8, 0.1]
    """
    return Stoichiometry(
        oxygen=mean(fractions, oxygen_of),
        carbon_dioxide=mean(fractions, lambda name: COMPONENTS[name].carbon),
        water=mean(fractions, lambda name: COMPONENTS[name].hydrogen / 2),
        nitrogen=mean(fractions, inert_of),
        heat=molar_heating_value(fractions, HEAT_REFERENCE),
    )


def oxygen_of(name: str) -> float:
    """Oxygen one mole of a component needs; less than none where it holds some."""
    part = COMPONENTS[name]
    return part.carbon + part.hydrogen / 4 - part.oxygen / 2


def inert_of(name: str) -> float:
    """Nitrogen in one mole of a component; helium, which has none of the four atoms, counts."""
    return 1.0 if name == "helium" else COMPONENTS[name].nitrogen / 2


@formula
def stoichiometric_air(oxygen: Number) -> Number:
    """Dry air that holds the oxygen a gas needs, per amount of gas.

    A = n_O2 / 0.20946

    Parameters
    ----------
    oxygen : n_O2, oxygen the gas needs, 0.3 to 13 [mol/mol]

    Returns
    -------
    A, dry air at no excess [mol/mol]

    Source: stoichiometry.

    >>> round(stoichiometric_air(2.0), 4)
    9.5484
    """
    return oxygen / AIR_OXYGEN


@formula
def stoichiometric_dry_flue(*, oxygen: Number, carbon_dioxide: Number, nitrogen: Number) -> Number:
    """Dry flue gas at no excess air, per amount of gas.

    D = n_CO2 + n_N2 + A - n_O2

    Parameters
    ----------
    oxygen : n_O2, oxygen the gas needs, 0.3 to 13 [mol/mol]
    carbon_dioxide : n_CO2, carbon dioxide it makes, 0 to 8 [mol/mol]
    nitrogen : n_N2, nitrogen it holds, 0 to 0.9 [mol/mol]

    Returns
    -------
    D, dry flue gas at no excess air [mol/mol]

    Source: stoichiometry.

    >>> round(stoichiometric_dry_flue(oxygen=2.0, carbon_dioxide=1.0, nitrogen=0.0), 4)
    8.5484
    """
    return carbon_dioxide + nitrogen + stoichiometric_air(oxygen) - oxygen


@formula
def flue_air_ratio(*, oxygen: Number, carbon_dioxide: Number, nitrogen: Number) -> Number:
    """Dry flue gas over dry air, at no excess air.

    r = D / A

    Parameters
    ----------
    oxygen : n_O2, oxygen the gas needs, 0.3 to 13 [mol/mol]
    carbon_dioxide : n_CO2, carbon dioxide it makes, 0 to 8 [mol/mol]
    nitrogen : n_N2, nitrogen it holds, 0 to 0.9 [mol/mol]

    Returns
    -------
    r, dry flue gas over dry air [1]

    Source: stoichiometry.

    >>> round(flue_air_ratio(oxygen=2.0, carbon_dioxide=1.0, nitrogen=0.0), 5)
    0.89527
    """
    dry = stoichiometric_dry_flue(oxygen=oxygen, carbon_dioxide=carbon_dioxide, nitrogen=nitrogen)
    return dry / stoichiometric_air(oxygen)


@formula
def ultimate_co2(*, oxygen: Number, carbon_dioxide: Number, nitrogen: Number) -> Number:
    """Largest carbon dioxide a dry flue can hold: at no excess air.

    CO2_max = n_CO2 / D

    Parameters
    ----------
    oxygen : n_O2, oxygen the gas needs, 0.3 to 13 [mol/mol]
    carbon_dioxide : n_CO2, carbon dioxide it makes, 0 to 8 [mol/mol]
    nitrogen : n_N2, nitrogen it holds, 0 to 0.9 [mol/mol]

    Returns
    -------
    CO2_max, carbon dioxide of the dry flue at no excess air [1]

    Source: stoichiometry.

    >>> round(ultimate_co2(oxygen=2.0, carbon_dioxide=1.0, nitrogen=0.0), 4)
    0.117
    """
    return carbon_dioxide / stoichiometric_dry_flue(
        oxygen=oxygen, carbon_dioxide=carbon_dioxide, nitrogen=nitrogen
    )
