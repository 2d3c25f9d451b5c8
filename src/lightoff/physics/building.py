"""The building round the unit: leaks, the pressure a surplus of air makes, doors, stack effect."""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import where
from lightoff.physics.airstream import moist_heat_capacity
from lightoff.physics.constants import DRY_AIR_GAS_CONSTANT, STANDARD_GRAVITY
from lightoff.quantity import si

LEAKAGE_EXPONENT = 0.65  # [1] of a building's cracks; ASTM E779, typical
OPENING_COEFFICIENT = 0.65  # [1] discharge of a sharp-edged opening; NFPA 92
HANDLE_DISTANCE = 0.0762  # [m] 3 in. from the lock edge of a door; NFPA 92, annex
UNLATCH_FORCE = si(15, "lbf")  # [N] NFPA 101, 7.2.1.4.5 (from memory)
START_FORCE = si(30, "lbf")  # [N] to set it in motion; the same
OPEN_FORCE = si(15, "lbf")  # [N] to open it fully; the same
LEAST_PRESSURE = si(-0.02, "inwc")  # [Pa] indoors less outdoors; NFPA 96 (from memory)
MOST_PRESSURE = si(0.05, "inwc")  # [Pa] the same; common practice, no source


@formula
def airflow_at_temperature(airflow: Number, temperature: Number, *, other: Number) -> Number:
    """The same mass flow at another temperature.

    V_2 = V_1 T_2 / T_1

    Parameters
    ----------
    airflow : V_1, as it was measured, 0 to 50 [m3/s]
    temperature : T_1, there, 220 to 420 [K]
    other : T_2, the other temperature, 220 to 420 [K]

    Returns
    -------
    V_2, airflow at the other temperature [m3/s]

    Source: conservation of mass; ideal gas law.

    >>> airflow_at_temperature(2.0, 300.0, other=330.0)
    2.2
    """
    return airflow * other / temperature


@formula
def air_surplus(supply: Number, exhaust: Number) -> Number:
    """What is blown into a building beyond what is drawn out: it leaks out.

    V = V_s - V_e

    Parameters
    ----------
    supply : V_s, all supply of outdoor air, at indoor temperature, 0 to 100 [m3/s]
    exhaust : V_e, all exhaust, at indoor temperature, 0 to 100 [m3/s]

    Returns
    -------
    V, surplus, below 0 where more is drawn out [m3/s]

    Source: conservation of mass.

    >>> air_surplus(5.0, 4.5)
    0.5
    """
    return supply - exhaust


@formula
def envelope_leakage(
    pressure: Number, *, leakage: Number, test_pressure: Number, exponent: Number
) -> Number:
    """Air that leaks out of a building through its cracks; in, where it is below 0.

    V = V_t (abs(Delta_p) / p_t)^n if Delta_p > 0 else -V_t (abs(Delta_p) / p_t)^n

    Parameters
    ----------
    pressure : Delta_p, pressure indoors less outdoors, -200 to 250 [Pa]
    leakage : V_t, leakage at the pressure of the test, 0.01 to 50 [m3/s]
    test_pressure : p_t, pressure of the leakage test, 1 to 100 [Pa]
    exponent : n, of the power law, 0.5 to 1 [1]

    Returns
    -------
    V, leakage outwards [m3/s]

    Source: ASTM E779, power law.

    >>> envelope_leakage(-25.0, leakage=2.0, test_pressure=100.0, exponent=0.5)
    -1.0
    """
    flow = leakage * (abs(pressure) / test_pressure) ** exponent
    return where(pressure > 0, flow, -flow)


@formula
def pressure_of_surplus(
    surplus: Number, *, leakage: Number, test_pressure: Number, exponent: Number
) -> Number:
    """Pressure at which a building leaks out what is blown into it.

    Delta_p = p_t (abs(V) / V_t)^(1 / n) if V > 0 else -p_t (abs(V) / V_t)^(1 / n)

    Parameters
    ----------
    surplus : V, supply less exhaust, -50 to 60 [m3/s]
    leakage : V_t, leakage at the pressure of the test, 0.01 to 50 [m3/s]
    test_pressure : p_t, pressure of the leakage test, 1 to 100 [Pa]
    exponent : n, of the power law, 0.5 to 1 [1]

    Returns
    -------
    Delta_p, pressure indoors less outdoors [Pa]

    Source: ASTM E779, power law turned round.

    >>> pressure_of_surplus(-1.0, leakage=2.0, test_pressure=100.0, exponent=0.5)
    -25.0
    """
    pressure = test_pressure * (abs(surplus) / leakage) ** (1 / exponent)
    return where(surplus > 0, pressure, -pressure)


@formula
def opening_airflow(
    pressure: Number, *, area: Number, coefficient: Number, density: Number
) -> Number:
    """Air through an opening, such as a door ajar or a relief damper.

    V = C A (2 p / rho)^0.5

    Parameters
    ----------
    pressure : p, size of the pressure difference across it, 0 to 250 [Pa]
    area : A, of the opening, 0.0001 to 20 [m2]
    coefficient : C, discharge coefficient, 0.4 to 1 [1]
    density : rho, of the air, 0.6 to 1.6 [kg/m3]

    Returns
    -------
    V, airflow [m3/s]

    Source: Bernoulli; NFPA 92, orifice equation.

    >>> opening_airflow(1.2, area=1.0, coefficient=0.5, density=0.6)
    1.0
    """
    return coefficient * area * (2 * pressure / density) ** 0.5


@formula
def leakage_area(airflow: Number, pressure: Number, *, density: Number) -> Number:
    """Area of one ideal opening that leaks as much: effective leakage area.

    A = V (rho / (2 p))^0.5

    Parameters
    ----------
    airflow : V, leakage at that pressure, 0 to 50 [m3/s]
    pressure : p, size of the pressure difference, commonly 4 Pa, 1 to 100 [Pa]
    density : rho, of the air, 0.6 to 1.6 [kg/m3]

    Returns
    -------
    A, effective leakage area, discharge coefficient 1 [m2]

    Source: ASTM E779; ASHRAE Fundamentals, ventilation and infiltration.

    >>> round(leakage_area(0.24622888, 4.0, density=1.2), 6)
    0.095364
    """
    return airflow * (density / (2 * pressure)) ** 0.5


@formula
def door_force(
    pressure: Number, *, width: Number, height: Number, handle: Number, closer: Number
) -> Number:
    """Force at the handle that opens a door against its closer and the pressure of the air.

    F = F_c + w^2 h p / (2 (w - d))

    Parameters
    ----------
    pressure : p, pressure difference that holds the door shut, -250 to 250 [Pa]
    width : w, of the door, 0.6 to 2.5 [m]
    height : h, of the door, 1.5 to 3.5 [m]
    handle : d, from the handle to the lock edge, 0 to 0.3 [m]
    closer : F_c, force at the handle without pressure, 0 to 150 [N]

    Returns
    -------
    F, force at the handle; below 0 where the air pushes it open [N]

    Source: International Building Code, 909.6.2, and NFPA 92: F = F_c + K W A p / (2 (W - d)), with
    the door's area A = w h, and K = 1 in SI.

    >>> door_force(10.0, width=1.0, height=2.0, handle=0.0, closer=20.0)
    30.0
    """
    return closer + width**2 * height * pressure / (2 * (width - handle))


@formula
def pressure_of_door_force(
    force: Number, *, width: Number, height: Number, handle: Number, closer: Number
) -> Number:
    """Largest pressure difference against which a door can be opened with a force.

    p = 2 (F - F_c) (w - d) / (w^2 h)

    Parameters
    ----------
    force : F, force at the handle, 20 to 500 [N]
    width : w, of the door, 0.6 to 2.5 [m]
    height : h, of the door, 1.5 to 3.5 [m]
    handle : d, from the handle to the lock edge, 0 to 0.3 [m]
    closer : F_c, force at the handle without pressure, 0 to 150 [N]

    Returns
    -------
    p, pressure difference; below 0 where the closer alone is too strong [Pa]

    Source: International Building Code, 909.6.2, turned round.

    >>> pressure_of_door_force(30.0, width=1.0, height=2.0, handle=0.0, closer=20.0)
    10.0
    """
    return 2 * (force - closer) * (width - handle) / (width**2 * height)


@formula
def stack_pressure(height: Number, *, outdoor: Number, indoor: Number, barometer: Number) -> Number:
    """Pressure between the bottom and the top of a building that is warmer than the air outside.

    Delta_p = 0.0341645 p_b h (1 / T_o - 1 / T_i)

    Parameters
    ----------
    height : h, between the lowest and the highest opening, 0 to 200 [m]
    outdoor : T_o, temperature outdoors, 220 to 330 [K]
    indoor : T_i, temperature indoors, 270 to 320 [K]
    barometer : p_b, absolute air pressure, 60 000 to 110 000 [Pa]

    Returns
    -------
    Delta_p, pressure difference, half of it at either end where openings are even [Pa]

    Source: ASHRAE Fundamentals; NFPA 92, stack effect; weight of two columns of dry air.

    >>> round(stack_pressure(10.0, outdoor=253.15, indoor=294.15, barometer=101325.0), 1)
    19.1
    """
    weight = STANDARD_GRAVITY / DRY_AIR_GAS_CONSTANT * barometer * height
    return weight * (1 / outdoor - 1 / indoor)


@formula
def heat_of_airflow(
    airflow: Number, rise: Number, *, density: Number, humidity_ratio: Number
) -> Number:
    """Heat that warms an airflow: the rule of 1.08 Btu/h a cfm and degree F, at any altitude.

    Q = V rho c Delta_T / (1 + W)

    Parameters
    ----------
    airflow : V, as it flows where the density is that given, 0 to 50 [m3/s]
    rise : Delta_T, temperature rise, -100 to 150 [K]
    density : rho, of the moist air there, 0.6 to 1.6 [kg/m3]
    humidity_ratio : W, mass of water per mass of dry air, 0 to 0.2 [kg/kg]

    Returns
    -------
    Q, heat flow [W]

    Source: ASHRAE Fundamentals, sensible heat, with the density as it is.

    >>> round(heat_of_airflow(1.0, 10.0, density=1.2, humidity_ratio=0.0))
    12072
    """
    capacity = moist_heat_capacity(humidity_ratio)
    return airflow * density * capacity * rise / (1 + humidity_ratio)
