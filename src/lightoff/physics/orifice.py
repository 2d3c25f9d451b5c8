"""Gas through an orifice: what a burner gets at its manifold pressure, gas and altitude."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import where
from lightoff.physics.constants import FOOT

CODE_DERATE = 0.04 / (1000 * FOOT)  # [1/m] 4 % per 1000 ft; NFPA 54 (2015) 11.1.2
CODE_DERATE_ABOVE = 2000 * FOOT  # [m] no derate at or below; NFPA 54 (2015) 11.1.2


@formula
def orifice_input(
    *,
    rated_input: Number,
    manifold: Number,
    rated_manifold: Number,
    wobbe_ratio: Number,
    density_ratio: Number,
) -> Number:
    """Heat flow of a fixed orifice, from what it is rated for.

    Q = Q_r w (p / p_r d)^0.5

    Parameters
    ----------
    rated_input : Q_r, at rated manifold pressure and gas, 1000 to 2e6 [W]
    manifold : p, gauge pressure before the orifice, 0 to 5000 [Pa]
    rated_manifold : p_r, the plate's manifold pressure, 100 to 5000 [Pa]
    wobbe_ratio : w, Wobbe number of the gas over that of the rating, 0.8 to 1.3 [1]
    density_ratio : d, gas density as it flows over that of the rating, 0.5 to 1.2 [1]

    Returns
    -------
    Q, heat flow, gross [W]

    Source: Bernoulli; NFPA 54 Annex E (root law).

    >>> Q = orifice_input(rated_input=100.0, manifold=0.81, rated_manifold=1.0,
    ...     wobbe_ratio=1.0, density_ratio=1.0)
    >>> round(Q, 6)
    90.0
    """
    return rated_input * wobbe_ratio * (manifold / rated_manifold * density_ratio) ** 0.5


@formula
def code_derate_factor(altitude: Number) -> Number:
    """Input the codes allow at altitude over that at sea level: 4 % less for each 1000 ft.

    f = 1 - 0.000131234 z if z > 609.6 else 1

    Parameters
    ----------
    altitude : z, geometric altitude, -500 to 4000 [m]

    Returns
    -------
    f, factor on the input [1]

    Source: NFPA 54 (2015), 11.1.2 and Annex E.

    >>> round(code_derate_factor(5000 * 0.3048), 6)
    0.8
    """
    return where(altitude > CODE_DERATE_ABOVE, 1 - CODE_DERATE * altitude, 1.0)


@formula
def manifold_for_input_factor(input_factor: Number, density_ratio: Number) -> Number:
    """Manifold pressure over the rated one that gives a share of the rated input.

    m = f^2 / d

    Parameters
    ----------
    input_factor : f, wanted input over rated input, 0.1 to 1.5 [1]
    density_ratio : d, gas density as it flows over that of the rating, 0.5 to 1.2 [1]

    Returns
    -------
    m, manifold pressure over rated manifold pressure [1]

    Source: the root law turned round.

    >>> round(manifold_for_input_factor(0.9, 0.81), 6)
    1.0
    """
    return input_factor**2 / density_ratio
