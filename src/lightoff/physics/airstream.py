"""The airstream through the unit: what each furnace adds to it, and what is mixed into it."""

from lightoff.formula import Number, formula
from lightoff.physics.constants import AIR_HEAT_CAPACITY, STANDARD_AIR_DENSITY


@formula
def standard_airflow(airflow: Number, density: Number) -> Number:
    """The same mass flow at standard density.

    V_s = V rho / 1.204

    Parameters
    ----------
    airflow : V, as it flows, 0 to 50 [m3/s]
    density : rho, density of the air where it was measured, 0.6 to 1.6 [kg/m3]

    Returns
    -------
    V_s, airflow at 1.204 kg/m3 [m3/s]

    Source: conservation of mass.

    >>> standard_airflow(2.0, 0.602)
    1.0
    """
    return airflow * density / STANDARD_AIR_DENSITY


@formula
def sensible_heat(mass_flow: Number, rise: Number) -> Number:
    """Heat carried by air that gets warmer.

    Q = 1006 m dT

    Parameters
    ----------
    mass_flow : m, dry air, 0 to 60 [kg/s]
    rise : dT, temperature rise, -100 to 150 [K]

    Returns
    -------
    Q, heat flow [W]

    Source: ASHRAE Fundamentals; dry air of 1006 J/(kg K).

    >>> sensible_heat(1.0, 10.0)
    10060.0
    """
    return AIR_HEAT_CAPACITY * mass_flow * rise
