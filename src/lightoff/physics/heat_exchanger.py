"""A furnace's heat exchanger: what part of the burner's heat the air gets, at any fire and airflow.

The number of transfer units falls as more flue gas goes through the same tubes; one rated point of
the plate fixes the rest.
"""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import exp, log

# The film inside the tubes decides. Turbulent, it grows with the flow to the 0.8 (Dittus and
# Boelter 1930), so that transfer units, film over flow, fall with the flow to the 0.2.
TURBULENT = 0.2  # [1]


@formula
def effectiveness(transfer_units: Number, capacity_ratio: Number) -> Number:
    """Heat exchanged over the most that could be, both streams in opposite directions.

    eps = (1 - exp(-N (1 - C))) / (1 - C exp(-N (1 - C)))

    Parameters
    ----------
    transfer_units : N, number of transfer units of the flue gas, 0 to 20 [1]
    capacity_ratio : C, heat capacity flow of the flue gas over that of the air, 0 to 0.9 [1]

    Returns
    -------
    eps, effectiveness [1]

    Source: Kays and London, Compact Heat Exchangers, counterflow (from memory).

    >>> round(effectiveness(1.5, 0.0), 4)
    0.7769
    """
    left = exp(-transfer_units * (1 - capacity_ratio))
    return (1 - left) / (1 - capacity_ratio * left)


@formula
def transfer_units(effectiveness: Number, capacity_ratio: Number) -> Number:
    """Number of transfer units of an exchanger that has this effectiveness.

    N = log((1 - C eps) / (1 - eps)) / (1 - C)

    Parameters
    ----------
    effectiveness : eps, heat exchanged over the most that could be, 0 to 0.999 [1]
    capacity_ratio : C, heat capacity flow of the flue gas over that of the air, 0 to 0.9 [1]

    Returns
    -------
    N, number of transfer units of the flue gas [1]

    Source: Kays and London, Compact Heat Exchangers, counterflow, turned round (from memory).

    >>> round(transfer_units(0.7768698, 0.0), 4)
    1.5
    """
    eps = effectiveness
    return log((1 - capacity_ratio * eps) / (1 - eps)) / (1 - capacity_ratio)


@formula
def transfer_units_at_flow(
    rated_transfer_units: Number, flow_ratio: Number, *, exponent: Number
) -> Number:
    """Number of transfer units when more or less flue gas flows than at the rated point.

    N = N_r / f^k

    Parameters
    ----------
    rated_transfer_units : N_r, at the rated point, 0.1 to 10 [1]
    flow_ratio : f, flue gas flow over that at the rated point, 0.05 to 2 [1]
    exponent : k, 0.2 where the flow in the tubes is turbulent, 0 to 1 [1]

    Returns
    -------
    N, number of transfer units of the flue gas [1]

    Source: Dittus and Boelter 1930, the film inside the tubes deciding (from memory).

    >>> round(transfer_units_at_flow(1.5, 0.5, exponent=0.2), 4)
    1.723
    """
    return rated_transfer_units / flow_ratio**exponent


@formula
def rated_effectiveness(*, efficiency: Number, casing_loss: Number, available: Number) -> Number:
    """Effectiveness that a rated efficiency stands for.

    eps = (eta + c) / a

    Parameters
    ----------
    efficiency : eta, thermal efficiency of the plate, gross, 0.5 to 0.85 [1]
    casing_loss : c, share of the input the casing loses to the outside, 0 to 0.05 [1]
    available : a, share of the input above the temperature of the air, uncondensed, 0.86 to 1 [1]

    Returns
    -------
    eps, effectiveness [1]

    Source: energy balance.

    >>> round(rated_effectiveness(efficiency=0.80, casing_loss=0.01, available=0.90), 4)
    0.9
    """
    return (efficiency + casing_loss) / available


@formula
def thermal_efficiency(*, effectiveness: Number, casing_loss: Number, available: Number) -> Number:
    """Share of the burner's heat that the air gets.

    eta = a eps - c

    Parameters
    ----------
    effectiveness : eps, heat exchanged over the most that could be, 0 to 1 [1]
    casing_loss : c, share of the input the casing loses to the outside, 0 to 0.05 [1]
    available : a, share of the input above the temperature of the air, uncondensed, 0.86 to 1 [1]

    Returns
    -------
    eta, thermal efficiency, gross [1]

    Source: energy balance.

    >>> round(thermal_efficiency(effectiveness=0.9, casing_loss=0.01, available=0.9), 4)
    0.8
    """
    return available * effectiveness - casing_loss
