"""What a flue reading says: of the air that went through the fire, and of carbon monoxide."""

from lightoff.formula import Number, formula
from lightoff.physics.constants import AIR_O2
from lightoff.physics.stoichiometry import AIR_OXYGEN

# largest CO2 of a dry flue, at no excess air [1]: stoichiometry of TYPICAL (gas_components.py)
LARGEST_CO2 = {"natural gas": 0.1192, "propane": 0.1372}

# fuel factor within which an O2 and a CO2 reading can both be right [1]
# US EPA, 40 CFR 60 appendix A-2, method 3B, 12.3 (from memory)
FUEL_FACTORS = {"natural gas": (1.600, 1.836), "propane": (1.434, 1.586)}

CO_CLASS_LIMIT = 400e-6  # [1] air-free; the appliance class limit of ANSI Z83 (from memory)
CO_LOOK = 100e-6  # [1] air-free; look for the cause above it; common practice, no source
MOST_O2 = 0.15  # [1] above it a sample is too diluted to reckon from; common practice, no source


@formula
def excess_air_from_o2(o2: Number, ratio: Number) -> Number:
    """Excess air over the air needed, from the oxygen left in the dry flue.

    e = O2 / (0.20946 - O2) r

    Parameters
    ----------
    o2 : O2, dry, 0 to 0.2 [1]
    ratio : r, dry flue gas over dry air at no excess air, 0.7 to 1.3 [1]

    Returns
    -------
    e, excess air [1]

    Source: stoichiometry; exact for complete combustion.

    >>> round(excess_air_from_o2(0.06, 0.89527), 4)
    0.3594
    """
    return o2 / (AIR_OXYGEN - o2) * ratio


@formula
def excess_air_from_co2(co2: Number, *, largest_co2: Number, ratio: Number) -> Number:
    """Excess air over the air needed, from the carbon dioxide of the dry flue.

    e = (CO2_max / CO2 - 1) r

    Parameters
    ----------
    co2 : CO2, dry, 0.005 to 0.16 [1]
    largest_co2 : CO2_max, of this gas at no excess air, 0.05 to 0.35 [1]
    ratio : r, dry flue gas over dry air at no excess air, 0.7 to 1.3 [1]

    Returns
    -------
    e, excess air [1]

    Source: stoichiometry; exact for complete combustion.

    >>> round(excess_air_from_co2(0.0834717, largest_co2=0.1169815, ratio=0.89527), 4)
    0.3594
    """
    return (largest_co2 / co2 - 1) * ratio


@formula
def o2_from_excess_air(excess_air: Number, ratio: Number) -> Number:
    """Oxygen of the dry flue at an excess air.

    O2 = 0.20946 e / (e + r)

    Parameters
    ----------
    excess_air : e, air beyond what is needed over what is needed, 0 to 20 [1]
    ratio : r, dry flue gas over dry air at no excess air, 0.7 to 1.3 [1]

    Returns
    -------
    O2, dry [1]

    Source: stoichiometry; exact for complete combustion.

    >>> round(o2_from_excess_air(0.3594, 0.89527), 4)
    0.06
    """
    return AIR_OXYGEN * excess_air / (excess_air + ratio)


@formula
def co2_from_o2(o2: Number, largest_co2: Number) -> Number:
    """Carbon dioxide that goes with an oxygen reading, both dry.

    CO2 = CO2_max (1 - O2 / 0.20946)

    Parameters
    ----------
    o2 : O2, dry, 0 to 0.2 [1]
    largest_co2 : CO2_max, of this gas at no excess air, 0.05 to 0.35 [1]

    Returns
    -------
    CO2, dry [1]

    Source: stoichiometry; exact for complete combustion.

    >>> round(co2_from_o2(0.06, 0.117), 4)
    0.0835
    """
    return largest_co2 * (1 - o2 / AIR_OXYGEN)


@formula
def o2_from_co2(co2: Number, largest_co2: Number) -> Number:
    """Oxygen that goes with a carbon dioxide reading, both dry.

    O2 = 0.20946 (1 - CO2 / CO2_max)

    Parameters
    ----------
    co2 : CO2, dry, 0 to 0.16 [1]
    largest_co2 : CO2_max, of this gas at no excess air, 0.05 to 0.35 [1]

    Returns
    -------
    O2, dry [1]

    Source: stoichiometry; exact for complete combustion.

    >>> round(o2_from_co2(0.0835, 0.117), 3)
    0.06
    """
    return AIR_OXYGEN * (1 - co2 / largest_co2)


@formula
def fuel_factor(o2: Number, co2: Number) -> Number:
    """What an O2 and a CO2 reading say of the fuel: out of its range one of them is wrong.

    F_o = (0.209 - O2) / CO2

    Parameters
    ----------
    o2 : O2, dry, 0 to 0.2 [1]
    co2 : CO2, dry, 0.005 to 0.16 [1]

    Returns
    -------
    F_o, fuel factor [1]

    Source: US EPA, 40 CFR 60 appendix A-2, method 3B (from memory).

    >>> round(fuel_factor(0.06, 0.0835), 3)
    1.784
    """
    return (AIR_O2 - o2) / co2


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
