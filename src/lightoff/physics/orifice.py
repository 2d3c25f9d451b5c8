"""Gas through an orifice: what a burner gets at its manifold pressure, gas and altitude."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import where
from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.constants import FOOT, STANDARD_PRESSURE
from lightoff.physics.fuel_gas import wobbe

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
def code_derate(altitude: Number) -> Number:
    """The codes' rule for altitude: 4 % less input for each 1000 ft.

    f_c = 1 - 0.000131234 z

    Parameters
    ----------
    altitude : z, geometric altitude, -500 to 4000 [m]

    Returns
    -------
    f_c, factor on the input, before the rule's own exemption [1]

    Source: NFPA 54 (2015), Annex E, heading of table E.1.1(d).

    >>> round(code_derate(5000 * 0.3048), 6)
    0.8
    """
    return 1 - CODE_DERATE * altitude


@formula
def code_derate_factor(altitude: Number) -> Number:
    """Input the codes allow at altitude over that at sea level: none is taken off to 2000 ft.

    f = f_c if z > 609.6 else 1

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
    return where(altitude > CODE_DERATE_ABOVE, code_derate(altitude), 1.0)


@formula
def derated_input(rated_input: Number, factor: Number) -> Number:
    """Input that is left of a rated one.

    Q = f Q_r

    Parameters
    ----------
    rated_input : Q_r, at sea level, gross, 1000 to 2e6 [W]
    factor : f, factor on the input, 0.4 to 1 [1]

    Returns
    -------
    Q, input to be set, gross [W]

    Source: definition.

    >>> derated_input(100.0, 0.8)
    80.0
    """
    return factor * rated_input


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


@formula
def manifold_for_gas(
    *, rated_manifold: Number, input_factor: Number, wobbe_ratio: Number, density_ratio: Number
) -> Number:
    """Manifold pressure that gives a share of the rated input with another gas, at altitude.

    p = p_r m

    Parameters
    ----------
    rated_manifold : p_r, the plate's manifold pressure, 100 to 5000 [Pa]
    input_factor : f, wanted input over rated input, 0.1 to 1.5 [1]
    wobbe_ratio : w, Wobbe number of the gas over that of the rating, 0.8 to 1.3 [1]
    density_ratio : d, gas density as it flows over that of the rating, 0.5 to 1.2 [1]

    Returns
    -------
    p, gauge pressure before the orifice [Pa]

    Source: the root law turned round.

    >>> round(manifold_for_gas(rated_manifold=872.0, input_factor=1.0, wobbe_ratio=1.1,
    ...     density_ratio=1.0), 1)
    720.7
    """
    return rated_manifold * manifold_for_input_factor(input_factor / wobbe_ratio, density_ratio)


@formula
def wobbe_ratio(
    *,
    heating_value: Number,
    relative_density: Number,
    rated_heating_value: Number,
    rated_relative_density: Number,
) -> Number:
    """Wobbe number of a gas over that of the rating.

    w = W / W'

    Parameters
    ----------
    heating_value : H, gross heating value, 1e7 to 1.5e8 [J/m3]
    relative_density : d, density over that of dry air, 0.3 to 3 [1]
    rated_heating_value : H_r, gross heating value of the rating, 3e7 to 1.1e8 [J/m3]
    rated_relative_density : d_r, relative density of the rating, 0.3 to 3 [1]

    Returns
    -------
    w, ratio of the Wobbe numbers [1]

    Source: ISO 6976:2016, eq. 14.

    >>> wobbe_ratio(heating_value=1000.0, relative_density=0.64, rated_heating_value=1000.0,
    ...     rated_relative_density=0.81)
    1.125
    """
    return wobbe(heating_value, relative_density) / wobbe(
        rated_heating_value, rated_relative_density
    )


@formula
def altitude_density_ratio(altitude: Number) -> Number:
    """Gas density at altitude over that at sea level, at one temperature.

    d = p / 101325

    Parameters
    ----------
    altitude : z, geometric altitude, -500 to 4000 [m]

    Returns
    -------
    d, density ratio [1]

    Source: ideal gas law; ISO 2533 standard atmosphere.

    >>> round(altitude_density_ratio(1524.0), 4)
    0.8321
    """
    return barometric_pressure(altitude) / STANDARD_PRESSURE


@formula
def untouched_factor(wobbe_ratio: Number, density_ratio: Number) -> Number:
    """Input of an orifice over its rating, the manifold left at the rated pressure.

    f = w d^0.5

    Parameters
    ----------
    wobbe_ratio : w, Wobbe number of the gas over that of the rating, 0.8 to 1.3 [1]
    density_ratio : d, gas density as it flows over that of the rating, 0.5 to 1.2 [1]

    Returns
    -------
    f, input over rated input [1]

    Source: Bernoulli: about 1.8 % less for each 1000 ft of altitude, not the 4 % of the codes'
    derate.

    >>> round(untouched_factor(1.0, 0.81), 6)
    0.9
    """
    return wobbe_ratio * density_ratio**0.5


@formula
def relative_density_multiplier(relative_density: Number, reference: Number) -> Number:
    """Flow of a gas through an orifice over that of the gas a table was made for.

    m = (d_r / d)^0.5

    Parameters
    ----------
    relative_density : d, of the gas, density over that of dry air, 0.3 to 3 [1]
    reference : d_r, of the table's gas, 0.3 to 3 [1]

    Returns
    -------
    m, multiplier on the table's flow [1]

    Source: NFPA 54 Annex E, table E.1.1(c); Bernoulli.

    >>> round(relative_density_multiplier(0.45, 0.60), 3)
    1.155
    """
    return (reference / relative_density) ** 0.5
