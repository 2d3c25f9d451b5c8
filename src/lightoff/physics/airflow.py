"""Airflow from a traverse, and the heat it carries."""

from lightoff.physics.constants import AIR_HEAT_CAPACITY, STANDARD_AIR_DENSITY
from lightoff.physics.elementary import Number


def pitot_velocity(velocity_pressure: Number, density: Number) -> Number:
    """Air velocity from velocity pressure: V = (2 pv / rho)^0.5.

    Parameters
    ----------
    velocity_pressure : total minus static [Pa]
    density : of the air at the plane [kg/m3]

    Returns
    -------
    velocity [m/s]

    Source: Bernoulli; ASHRAE Standard 111.

    >>> round(pitot_velocity(60.2, 1.204), 6)
    10.0
    """
    return (2 * velocity_pressure / density) ** 0.5


def standard_airflow(airflow: Number, density: Number) -> Number:
    """The same mass flow at 1.204 kg/m3.

    Parameters
    ----------
    airflow : as it flows [m3/s]
    density : of the air where it was measured [kg/m3]

    Returns
    -------
    airflow at standard density [m3/s]

    Source: conservation of mass.

    >>> standard_airflow(2.0, 0.602)
    1.0
    """
    return airflow * density / STANDARD_AIR_DENSITY


def sensible_heat(mass_flow: Number, rise: Number) -> Number:
    """Heat carried by air: Q = m cp dT.

    Parameters
    ----------
    mass_flow : of dry air [kg/s]
    rise : temperature rise [K]

    Returns
    -------
    heat flow [W]

    Source: ASHRAE Fundamentals; cp 1006 J/(kg K).

    >>> sensible_heat(1.0, 10.0)
    10060.0
    """
    return mass_flow * AIR_HEAT_CAPACITY * rise
