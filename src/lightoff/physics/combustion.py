"""Flue gas readings."""

from lightoff.formula import Number, formula
from lightoff.physics.constants import AIR_O2

# largest CO2 a dry flue can hold, at no excess air [1]
# methane 11.7 %, with the usual ethane and nitrogen 11.8 %; propane 13.8 %: stoichiometry
LARGEST_CO2 = {"natural gas": 0.118, "propane": 0.138}


@formula
def air_free_from_o2(co: Number, o2: Number) -> Number:
    """CO as it would be without excess air, from the oxygen left.

    CO_af = CO × 0.209 / (0.209 - O2)

    Parameters
    ----------
    co : CO, dry, as shown, 0 to 0.01 [1]
    o2 : O2, dry, 0 to 0.15 [1]

    Returns
    -------
    CO_af, air-free CO [1]

    Source: ANSI Z21 and Z83 appliance standards, combustion test.

    >>> round(air_free_from_o2(100e-6, 0.05) * 1e6, 1)
    131.4
    """
    return co * AIR_O2 / (AIR_O2 - o2)


@formula
def air_free_from_co2(co: Number, co2: Number, largest_co2: Number) -> Number:
    """CO as it would be without excess air, from the carbon dioxide.

    CO_af = CO CO2_max / CO2

    Parameters
    ----------
    co : CO, dry, as shown, 0 to 0.01 [1]
    co2 : CO2, dry, 0.02 to 0.16 [1]
    largest_co2 : CO2_max, of this gas at no excess air, 0.1 to 0.16 [1]

    Returns
    -------
    CO_af, air-free CO [1]

    Source: ANSI Z21 and Z83 appliance standards, combustion test.

    >>> round(air_free_from_co2(100e-6, 0.09, 0.118) * 1e6, 1)
    131.1
    """
    return co * largest_co2 / co2
