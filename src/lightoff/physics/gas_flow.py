"""Gas through an orifice and through a meter: what a furnace burns."""

from lightoff.physics.constants import FOOT, GAS_BASE_PRESSURE, GAS_BASE_TEMPERATURE
from lightoff.physics.elementary import Number, where

CODE_DERATE = 0.04 / (1000 * FOOT)  # [1/m] 4 % per 1000 ft; NFPA 54 (2015) 11.1.2
CODE_DERATE_ABOVE = 2000 * FOOT  # [m] no derate at or below; NFPA 54 (2015) 11.1.2


def base_volume_factor(pressure: Number, temperature: Number) -> Number:
    """Volume at base conditions over volume as metered: (p / pb) (Tb / T).

    Parameters
    ----------
    pressure : absolute pressure of the gas [Pa]
    temperature : of the gas [K]

    Returns
    -------
    factor to 60 degF and 30 inHg [1]

    Source: ideal gas law; base state of the US gas trade.

    >>> round(base_volume_factor(101325.0, 288.706), 4)
    0.9974
    """
    return pressure / GAS_BASE_PRESSURE * GAS_BASE_TEMPERATURE / temperature


def metered_input(
    *, volume: Number, seconds: Number, heating_value: Number, factor: Number
) -> Number:
    """Heat flow clocked at a meter: Q = H V f / t.

    Parameters
    ----------
    volume : turned by the dial, as metered [m3]
    seconds : for that volume [s]
    heating_value : gross, at base conditions [J/m3]
    factor : volume at base conditions over volume as metered [1]

    Returns
    -------
    heat flow, gross [W]

    Source: definition; clocking after NFPA 54 annex.

    >>> round(metered_input(volume=0.0566, seconds=30.0, heating_value=38.4e6, factor=1.0))
    72448
    """
    return heating_value * volume * factor / seconds


def orifice_input(
    *,
    rated_input: Number,
    manifold: Number,
    rated_manifold: Number,
    wobbe_ratio: Number,
    density_ratio: Number,
) -> Number:
    """Heat flow of a fixed orifice: Q = Qr (W / Wr) (p / pr)^0.5 (rho / rho_ref)^0.5.

    Parameters
    ----------
    rated_input : at rated manifold pressure and gas [W]
    manifold : gauge pressure before the orifice [Pa]
    rated_manifold : the plate's [Pa]
    wobbe_ratio : Wobbe number of the gas over that of the rating [1]
    density_ratio : gas density as it flows over that of the rating [1]

    Returns
    -------
    heat flow, gross [W]

    Source: Bernoulli; NFPA 54 Annex E (root law).

    >>> Q = orifice_input(rated_input=100.0, manifold=0.81, rated_manifold=1.0,
    ...     wobbe_ratio=1.0, density_ratio=1.0)
    >>> round(Q, 6)
    90.0
    """
    return rated_input * wobbe_ratio * (manifold / rated_manifold * density_ratio) ** 0.5


def code_derate_factor(altitude: Number) -> Number:
    """Input the codes allow at altitude over that at sea level: 1 - 0.04 z / 1000 ft.

    Parameters
    ----------
    altitude : geometric [m]

    Returns
    -------
    factor, 1 at or below 2000 ft [1]

    Source: NFPA 54 (2015), 11.1.2 and Annex E.

    >>> round(code_derate_factor(5000 * 0.3048), 6)
    0.8
    """
    return where(altitude > CODE_DERATE_ABOVE, 1 - CODE_DERATE * altitude, 1.0)


def manifold_for_input_factor(input_factor: Number, density_ratio: Number) -> Number:
    """Manifold over rated manifold that gives an input factor: (f / (rho/rho_ref)^0.5)^2.

    Parameters
    ----------
    input_factor : wanted input over rated input [1]
    density_ratio : gas density as it flows over that of the rating [1]

    Returns
    -------
    manifold pressure over rated manifold pressure [1]

    Source: the root law above, turned round.

    >>> round(manifold_for_input_factor(0.9, 0.81), 6)
    1.0
    """
    return input_factor**2 / density_ratio
