"""Flue gas readings."""

from lightoff.physics.constants import AIR_O2
from lightoff.physics.elementary import Number

# largest CO2 a dry flue can hold, at no excess air [1]
# methane 11.7 %, with the usual ethane and nitrogen 11.8 %; propane 13.8 %: stoichiometry
LARGEST_CO2 = {"natural gas": 0.118, "propane": 0.138}


def air_free_from_o2(co: Number, o2: Number) -> Number:
    """CO as it would be without excess air: CO 20.9 / (20.9 - O2).

    Parameters
    ----------
    co : dry, as shown [1]
    o2 : dry, below 0.209 [1]

    Returns
    -------
    air-free CO [1]

    Source: ANSI Z21 and Z83 appliance standards, combustion test.

    >>> round(air_free_from_o2(100e-6, 0.05) * 1e6, 1)
    131.4
    """
    return co * AIR_O2 / (AIR_O2 - o2)


def air_free_from_co2(co: Number, co2: Number, largest_co2: Number) -> Number:
    """CO as it would be without excess air: CO CO2max / CO2.

    Parameters
    ----------
    co : dry, as shown [1]
    co2 : dry [1]
    largest_co2 : of this gas at no excess air [1]

    Returns
    -------
    air-free CO [1]

    Source: ANSI Z21 and Z83 appliance standards, combustion test.

    >>> round(air_free_from_co2(100e-6, 0.09, 0.118) * 1e6, 1)
    131.1
    """
    return co * largest_co2 / co2
