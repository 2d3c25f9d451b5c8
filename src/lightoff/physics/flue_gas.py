"""Flue gas at an excess air: what it holds, and when its water condenses."""

from typing import NamedTuple

from lightoff.formula import Number, formula
from lightoff.formula.elementary import maximum, minimum
from lightoff.physics.constants import WATER_AIR_RATIO
from lightoff.physics.saturation import saturation_pressure
from lightoff.physics.stoichiometry import stoichiometric_air

BOILING = 373.15  # [K] above it no flue gas condenses at the pressure of the air


class FlueGas(NamedTuple):
    """Wet flue gas per mole of fuel, mol."""

    carbon_dioxide: Number
    water: Number
    nitrogen: Number
    oxygen: Number


@formula
def combustion_air(oxygen: Number, excess_air: Number) -> Number:
    """Dry air that goes through the fire, per amount of gas.

    B = (1 + e) A

    Parameters
    ----------
    oxygen : n_O2, oxygen the gas needs, 0.3 to 13 [mol/mol]
    excess_air : e, air beyond what is needed over what is needed, 0 to 20 [1]

    Returns
    -------
    B, dry air [mol/mol]

    Source: definition of excess air.

    >>> round(combustion_air(2.0, 0.5), 3)
    14.323
    """
    return (1 + excess_air) * stoichiometric_air(oxygen)


@formula
def air_moisture(air: Number, humidity_ratio: Number) -> Number:
    """Water vapour that comes with the combustion air, per amount of gas.

    n_w = B W / 0.621945

    Parameters
    ----------
    air : B, dry air, 1 to 1300 [mol/mol]
    humidity_ratio : W, mass of water per mass of dry air, 0 to 0.05 [kg/kg]

    Returns
    -------
    n_w, water vapour [mol/mol]

    Source: definition of the humidity ratio.

    >>> round(air_moisture(14.32, 0.01), 4)
    0.2302
    """
    return air * humidity_ratio / WATER_AIR_RATIO


@formula
def flue_gas(
    *,
    excess_air: Number,
    oxygen: Number,
    carbon_dioxide: Number,
    water: Number,
    nitrogen: Number,
    humidity_ratio: Number,
) -> FlueGas:
    """Wet flue gas of complete combustion, per amount of gas.

    N_CO2 = n_CO2; N_H2O = n_H2O + n_w; N_N2 = n_N2 + B - (1 + e) n_O2; N_O2 = e n_O2

    Parameters
    ----------
    excess_air : e, air beyond what is needed over what is needed, 0 to 20 [1]
    oxygen : n_O2, oxygen the gas needs, 0.3 to 13 [mol/mol]
    carbon_dioxide : n_CO2, carbon dioxide it makes, 0 to 8 [mol/mol]
    water : n_H2O, water it makes, 0 to 9 [mol/mol]
    nitrogen : n_N2, nitrogen it holds, 0 to 0.9 [mol/mol]
    humidity_ratio : W, of the combustion air, 0 to 0.05 [kg/kg]

    Returns
    -------
    carbon_dioxide : N_CO2, carbon dioxide [mol/mol]
    water : N_H2O, water, vapour or condensed [mol/mol]
    nitrogen : N_N2, nitrogen and the argon of the air [mol/mol]
    oxygen : N_O2, oxygen left [mol/mol]

    Source: stoichiometry.

    >>> flue = flue_gas(excess_air=0.5, oxygen=2.0, carbon_dioxide=1.0, water=2.0, nitrogen=0.0,
    ...     humidity_ratio=0.0)
    >>> [round(moles, 3) for moles in flue]
    [1.0, 2.0, 11.323, 1.0]
    """
    air = combustion_air(oxygen, excess_air)
    return FlueGas(
        carbon_dioxide=carbon_dioxide,
        water=water + air_moisture(air, humidity_ratio),
        nitrogen=nitrogen + air - (1 + excess_air) * oxygen,
        oxygen=excess_air * oxygen,
    )


@formula
def dry_flue(*, carbon_dioxide: Number, nitrogen: Number, oxygen: Number) -> Number:
    """Flue gas without its water, per amount of gas.

    N_d = N_CO2 + N_N2 + N_O2

    Parameters
    ----------
    carbon_dioxide : N_CO2, carbon dioxide, 0 to 8 [mol/mol]
    nitrogen : N_N2, nitrogen, 1 to 1000 [mol/mol]
    oxygen : N_O2, oxygen, 0 to 260 [mol/mol]

    Returns
    -------
    N_d, dry flue gas [mol/mol]

    Source: sum.

    >>> dry_flue(carbon_dioxide=1.0, nitrogen=11.3, oxygen=1.0)
    13.3
    """
    return carbon_dioxide + nitrogen + oxygen


@formula
def dry_fraction(part: Number, dry_flue: Number) -> Number:
    """What an analyser shows that dries its sample.

    y = N / N_d

    Parameters
    ----------
    part : N, one gas of the flue, 0 to 1000 [mol/mol]
    dry_flue : N_d, flue gas without its water, 1 to 1300 [mol/mol]

    Returns
    -------
    y, dry fraction by volume [1]

    Source: definition.

    >>> round(dry_fraction(1.0, 13.323), 4)
    0.0751
    """
    return part / dry_flue


@formula
def water_fraction(water: Number, dry_flue: Number) -> Number:
    """Share of water vapour in wet flue gas.

    x_H2O = N_H2O / (N_d + N_H2O)

    Parameters
    ----------
    water : N_H2O, water, all of it vapour, 0 to 100 [mol/mol]
    dry_flue : N_d, flue gas without its water, 1 to 1300 [mol/mol]

    Returns
    -------
    x_H2O, wet fraction by volume [1]

    Source: definition.

    >>> round(water_fraction(2.0, 13.3227), 4)
    0.1305
    """
    return water / (dry_flue + water)


@formula
def flue_vapour_pressure(water_fraction: Number, pressure: Number) -> Number:
    """Partial pressure of the water vapour in flue gas: saturated at the flue gas dew point.

    p_w = x_H2O p

    Parameters
    ----------
    water_fraction : x_H2O, wet fraction by volume, 0.001 to 0.5 [1]
    pressure : p, absolute pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    p_w, vapour pressure [Pa]

    Source: Dalton's law.

    >>> round(flue_vapour_pressure(0.1305, 101325.0))
    13223
    """
    return water_fraction * pressure


@formula
def vapour_capacity(dry_flue: Number, *, temperature: Number, pressure: Number) -> Number:
    """Most water vapour that flue gas can hold, per amount of fuel.

    N_s = N_d p_ws / max(p - p_ws, p / 10)

    Parameters
    ----------
    dry_flue : N_d, flue gas without its water, 1 to 1300 [mol/mol]
    temperature : T, of the flue gas, 230 to 1000 [K]
    pressure : p, absolute pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    N_s, water vapour at saturation; many times the dry gas where it is hot [mol/mol]

    Source: Dalton's law; near boiling the capacity has no bound, and ten times the dry gas is more
    than any flue holds.

    >>> round(vapour_capacity(13.3227, temperature=313.15, pressure=101325.0), 3)
    1.047
    """
    saturated = saturation_pressure(minimum(temperature, BOILING))
    return dry_flue * saturated / maximum(pressure - saturated, pressure / 10)


@formula
def condensed_water(water: Number, capacity: Number) -> Number:
    """Water that condenses out of flue gas below its dew point, per amount of fuel.

    N_c = max(N_H2O - N_s, 0)

    Parameters
    ----------
    water : N_H2O, all water in the flue gas, 0 to 100 [mol/mol]
    capacity : N_s, most it can hold as vapour, 0 to 25 000 [mol/mol]

    Returns
    -------
    N_c, condensate [mol/mol]

    Source: conservation of mass.

    >>> condensed_water(2.0, 1.25)
    0.75
    """
    return maximum(water - capacity, 0.0)
