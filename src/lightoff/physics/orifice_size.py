"""The size of an orifice: what passes a drill, and which diameter a flow asks for."""

from math import pi

from lightoff.formula import Number, formula
from lightoff.physics.constants import DRY_AIR_GAS_CONSTANT


@formula
def flowing_density(relative_density: Number, *, pressure: Number, temperature: Number) -> Number:
    """Density of a gas as it leaves an orifice.

    rho = d p / (287.042 T)

    Parameters
    ----------
    relative_density : d, density over that of dry air, 0.3 to 3 [1]
    pressure : p, absolute air pressure, 60 000 to 110 000 [Pa]
    temperature : T, of the gas, 230 to 330 [K]

    Returns
    -------
    rho, density [kg/m3]

    Source: ideal gas law.

    >>> round(flowing_density(0.6, pressure=101325.0, temperature=288.706), 4)
    0.7336
    """
    return relative_density * pressure / (DRY_AIR_GAS_CONSTANT * temperature)


@formula
def orifice_speed(drop: Number, density: Number) -> Number:
    """Speed at which a drop of pressure would drive a gas, nothing lost.

    w = (2 dp / rho)^0.5

    Parameters
    ----------
    drop : dp, pressure before the orifice over that behind it, 0 to 5000 [Pa]
    density : rho, of the gas as it leaves, 0.2 to 5 [kg/m3]

    Returns
    -------
    w, speed [m/s]

    Source: Bernoulli; to 11 in. w.c. within 0.25 % of real methane and 1.4 % of real propane.

    >>> orifice_speed(200.0, 1.0)
    20.0
    """
    return (2 * drop / density) ** 0.5


@formula
def orifice_flow(diameter: Number, *, coefficient: Number, speed: Number) -> Number:
    """Gas that passes an orifice, as it flows.

    q = 0.785398 K d^2 w

    Parameters
    ----------
    diameter : d, of the bore, 0.0003 to 0.0108 [m]
    coefficient : K, coefficient of discharge, 0.5 to 1 [1]
    speed : w, at which the drop of pressure would drive the gas, 0 to 200 [m/s]

    Returns
    -------
    q, gas flow at the pressure and temperature it leaves with [m3/s]

    Source: Bernoulli. NFPA 54 Annex E writes 1658.5 K A (h / d)^0.5 [ft3/h], 0.3 % more than this.

    >>> round(orifice_flow(0.002, coefficient=0.9, speed=50.0), 7)
    0.0001414
    """
    return pi / 4 * coefficient * diameter**2 * speed


@formula
def orifice_diameter(flow: Number, *, coefficient: Number, speed: Number) -> Number:
    """Bore that passes a flow.

    d = (q / (0.785398 K w))^0.5

    Parameters
    ----------
    flow : q, gas flow at the pressure and temperature it leaves with, 1e-7 to 0.1 [m3/s]
    coefficient : K, coefficient of discharge, 0.5 to 1 [1]
    speed : w, at which the drop of pressure would drive the gas, 1 to 200 [m/s]

    Returns
    -------
    d, diameter of the bore [m]

    Source: Bernoulli, turned round.

    >>> round(orifice_diameter(0.00014137, coefficient=0.9, speed=50.0), 5)
    0.002
    """
    return (flow / (pi / 4 * coefficient * speed)) ** 0.5


@formula
def input_of_each(total: Number, orifices: Number) -> Number:
    """Input of each of several equal orifices.

    Q_1 = Q / n

    Parameters
    ----------
    total : Q, of all of them, gross, 1000 to 2e6 [W]
    orifices : n, number of orifices, 1 to 100 [1]

    Returns
    -------
    Q_1, input of each, gross [W]

    Source: definition.

    >>> input_of_each(100.0, 4.0)
    25.0
    """
    return total / orifices
