"""The heat flue gas takes away: what is left is the combustion efficiency."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import clip
from lightoff.physics.thermochemistry import (
    HEAT_REFERENCE,
    carbon_dioxide_enthalpy,
    condensation_heat,
    nitrogen_enthalpy,
    oxygen_enthalpy,
    water_vapour_enthalpy,
)

COLDEST_CONDENSATE = 273.15  # [K] below it water would freeze
HOTTEST_CONDENSATE = 373.15  # [K] above it nothing condenses at the pressure of the air


@formula
def flue_enthalpy(
    temperature: Number,
    *,
    carbon_dioxide: Number,
    water: Number,
    nitrogen: Number,
    oxygen: Number,
) -> Number:
    """Heat held by flue gas above 25 degC, its water vapour, per amount of fuel.

    E = N_CO2 h_CO2 + N_H2O h_H2O + N_N2 h_N2 + N_O2 h_O2

    Parameters
    ----------
    temperature : T, temperature, 230 to 1000 [K]
    carbon_dioxide : N_CO2, carbon dioxide, 0 to 8 [mol/mol]
    water : N_H2O, water, 0 to 100 [mol/mol]
    nitrogen : N_N2, nitrogen, 1 to 1000 [mol/mol]
    oxygen : N_O2, oxygen, 0 to 260 [mol/mol]

    Returns
    -------
    E, enthalpy above 25 degC [J/mol]

    Source: sum over ideal gases.

    >>> E = flue_enthalpy(450.0, carbon_dioxide=1.0, water=2.0, nitrogen=11.323, oxygen=1.0)
    >>> round(E)
    71274
    """
    return (
        carbon_dioxide * carbon_dioxide_enthalpy(temperature)
        + water * water_vapour_enthalpy(temperature)
        + nitrogen * nitrogen_enthalpy(temperature)
        + oxygen * oxygen_enthalpy(temperature)
    )


@formula
def sensible_loss(flue_enthalpy: Number, air_enthalpy: Number, *, heat: Number) -> Number:
    """Share of the gross heat that goes up the flue because the flue gas is warm.

    s = (E - E_a) / H

    Parameters
    ----------
    flue_enthalpy : E, of the flue gas at its own temperature, -1e5 to 1e6 [J/mol]
    air_enthalpy : E_a, of the same gas at the combustion air's temperature, -1e5 to 1e5 [J/mol]
    heat : H, gross heating value at 25 degC, 250 000 to 5.6e6 [J/mol]

    Returns
    -------
    s, sensible loss over gross heat [1]

    Source: energy balance; the net heat itself changes by 0.03 % between 0 and 25 degC.

    >>> round(sensible_loss(71274.0, -1944.0, heat=890580.0), 4)
    0.0822
    """
    return (flue_enthalpy - air_enthalpy) / heat


@formula
def latent_loss(*, water: Number, condensed: Number, temperature: Number, heat: Number) -> Number:
    """Share of the gross heat that goes up the flue as water vapour: what condenses is gained.

    l = (n_H2O × 44013 - N_c L) / H

    Parameters
    ----------
    water : n_H2O, water made by the fire, 0 to 9 [mol/mol]
    condensed : N_c, condensate, 0 to 9 [mol/mol]
    temperature : T, of the flue gas, 230 to 1000 [K]
    heat : H, gross heating value at 25 degC, 250 000 to 5.6e6 [J/mol]

    Returns
    -------
    l, latent loss over gross heat [1]

    Source: energy balance; what the fire made counts at 25 degC, as gross heat does.

    >>> round(latent_loss(water=2.0, condensed=0.0, temperature=450.0, heat=890580.0), 4)
    0.0988
    """
    at_flue = condensation_heat(clip(temperature, COLDEST_CONDENSATE, HOTTEST_CONDENSATE))
    return (water * condensation_heat(HEAT_REFERENCE) - condensed * at_flue) / heat


@formula
def combustion_efficiency(sensible_loss: Number, latent_loss: Number) -> Number:
    """Share of the gross heat that does not go up the flue.

    eta = 1 - s - l

    Parameters
    ----------
    sensible_loss : s, over gross heat, 0 to 1 [1]
    latent_loss : l, over gross heat, -0.05 to 0.16 [1]

    Returns
    -------
    eta, combustion efficiency, gross [1]

    Source: energy balance; casing and off-time losses are not in it.

    >>> round(combustion_efficiency(0.08, 0.1), 4)
    0.82
    """
    return 1 - sensible_loss - latent_loss


@formula
def net_efficiency(efficiency: Number, *, heat: Number, net_heat: Number) -> Number:
    """The same efficiency on the net heating value, as some countries state it.

    eta_n = eta H / H_n

    Parameters
    ----------
    efficiency : eta, over gross heat, 0 to 1.1 [1]
    heat : H, gross heating value at 25 degC, 250 000 to 5.6e6 [J/mol]
    net_heat : H_n, net heating value at 25 degC, 250 000 to 5.6e6 [J/mol]

    Returns
    -------
    eta_n, efficiency, net [1]

    Source: definition.

    >>> round(net_efficiency(0.82, heat=890580.0, net_heat=802554.0), 4)
    0.9099
    """
    return efficiency * heat / net_heat
