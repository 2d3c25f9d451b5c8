"""The airstream through the unit: what furnaces and fan add to it, and what it says of the flow."""

from lightoff.formula import Number, formula
from lightoff.physics.constants import (
    AIR_HEAT_CAPACITY,
    STANDARD_AIR_DENSITY,
    VAPOUR_HEAT_CAPACITY,
)


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
def dry_air_flow(*, airflow: Number, density: Number, humidity_ratio: Number) -> Number:
    """Flow of the dry air in moist air: what stays the same all along the unit.

    m = V rho / (1 + W)

    Parameters
    ----------
    airflow : V, as it flows, 0 to 50 [m3/s]
    density : rho, of the moist air there, 0.6 to 1.6 [kg/m3]
    humidity_ratio : W, mass of water per mass of dry air, 0 to 0.2 [kg/kg]

    Returns
    -------
    m, dry air [kg/s]

    Source: conservation of mass.

    >>> dry_air_flow(airflow=2.0, density=1.2, humidity_ratio=0.0)
    2.4
    """
    return airflow * density / (1 + humidity_ratio)


@formula
def moist_heat_capacity(humidity_ratio: Number) -> Number:
    """Heat capacity of moist air per mass of dry air.

    c = 1006 + 1860 W

    Parameters
    ----------
    humidity_ratio : W, mass of water per mass of dry air, 0 to 0.2 [kg/kg]

    Returns
    -------
    c, heat capacity [J/(kg K)]

    Source: ASHRAE Fundamentals, psychrometrics, eq. 30.

    >>> round(moist_heat_capacity(0.01), 1)
    1024.6
    """
    return AIR_HEAT_CAPACITY + VAPOUR_HEAT_CAPACITY * humidity_ratio


@formula
def sensible_heat(mass_flow: Number, rise: Number) -> Number:
    """Heat carried by dry air that gets warmer.

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


@formula
def furnace_output(heat_input: Number, efficiency: Number) -> Number:
    """Heat a furnace gives to the air.

    Q = eta Q_in

    Parameters
    ----------
    heat_input : Q_in, gas burnt, gross, 0 to 2e6 [W]
    efficiency : eta, thermal efficiency, gross, 0 to 1 [1]

    Returns
    -------
    Q, heat to the air [W]

    Source: definition.

    >>> furnace_output(100e3, 0.8)
    80000.0
    """
    return efficiency * heat_input


@formula
def rise_between(entering: Number, leaving: Number) -> Number:
    """Temperature rise between two places of the airstream.

    dT = T_2 - T_1

    Parameters
    ----------
    entering : T_1, before, 220 to 330 [K]
    leaving : T_2, after, 220 to 420 [K]

    Returns
    -------
    dT, temperature rise [K]

    Source: definition.

    >>> rise_between(280.0, 300.0)
    20.0
    """
    return leaving - entering


@formula
def temperature_rise(heat: Number, mass_flow: Number, *, humidity_ratio: Number) -> Number:
    """Rise of the air's temperature through a furnace, or through a fan whose motor stands in it.

    dT = Q / (m c)

    Parameters
    ----------
    heat : Q, heat to the air, 0 to 2e6 [W]
    mass_flow : m, dry air, 0.1 to 60 [kg/s]
    humidity_ratio : W, mass of water per mass of dry air, 0 to 0.2 [kg/kg]

    Returns
    -------
    dT, temperature rise [K]

    Source: energy balance.

    >>> round(temperature_rise(80e3, 4.0, humidity_ratio=0.0), 2)
    19.88
    """
    return heat / (mass_flow * moist_heat_capacity(humidity_ratio))


@formula
def enthalpy_after(enthalpy: Number, heat: Number, *, mass_flow: Number) -> Number:
    """Enthalpy of moist air after heat was added to it, per mass of dry air.

    h_2 = h_1 + Q / m

    Parameters
    ----------
    enthalpy : h_1, before, -50 000 to 200 000 [J/kg]
    heat : Q, heat to the air, 0 to 2e6 [W]
    mass_flow : m, dry air, 0.1 to 60 [kg/s]

    Returns
    -------
    h_2, after [J/kg]

    Source: energy balance.

    >>> enthalpy_after(10e3, 80e3, mass_flow=4.0)
    30000.0
    """
    return enthalpy + heat / mass_flow


@formula
def airflow_from_rise(
    heat: Number, rise: Number, *, density: Number, humidity_ratio: Number
) -> Number:
    """Airflow that takes up a known heat with a measured temperature rise.

    V = Q (1 + W) / (rho c dT)

    Parameters
    ----------
    heat : Q, heat to the air, 100 to 2e6 [W]
    rise : dT, temperature rise, 1 to 150 [K]
    density : rho, of the moist air where the flow is wanted, 0.6 to 1.6 [kg/m3]
    humidity_ratio : W, mass of water per mass of dry air, 0 to 0.2 [kg/kg]

    Returns
    -------
    V, airflow as it flows there [m3/s]

    Source: energy balance.

    >>> round(airflow_from_rise(80e3, 20.0, density=1.2, humidity_ratio=0.0), 4)
    3.3135
    """
    c = moist_heat_capacity(humidity_ratio)
    return heat * (1 + humidity_ratio) / (density * c * rise)
