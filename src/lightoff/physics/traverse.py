"""Airflow from a traverse of a duct: where its points lie, and what they say."""

from lightoff.formula import Number, formula


@formula
def pitot_velocity(velocity_pressure: Number, density: Number) -> Number:
    """Air velocity from velocity pressure.

    V = (2 p_v / rho)^0.5

    Parameters
    ----------
    velocity_pressure : p_v, total minus static pressure, 0 to 2500 [Pa]
    density : rho, density of the air at the plane, 0.6 to 1.6 [kg/m3]

    Returns
    -------
    V, velocity [m/s]

    Source: Bernoulli; ASHRAE Standard 111.

    >>> round(pitot_velocity(60.2, 1.204), 6)
    10.0
    """
    return (2 * velocity_pressure / density) ** 0.5
