"""Gas pipes: drop, capacity and size by the equations of the fuel gas codes.

One equation serves below 1.5 psi, where the gas may be taken as incompressible, one above. Each is
written by the code for the diameter; here it is turned three ways. Flow is at base conditions, 60
degF and 30 inHg; diameters are actual inside diameters.
"""

from lightoff.formula import Number, formula
from lightoff.formula.elementary import maximum
from lightoff.quantity import si

# Units the codes write the equations in
INCH = si(1, "in")  # [m]
FOOT = si(1, "ft")  # [m]
HOURLY = si(1, "ft3/h")  # [m3/s]
WATER = si(1, "psi") / 27.7  # [Pa] an inch of water: 27.7 of the codes make one psi
SQUARE = si(1, "psi") ** 2  # [Pa2]

LOW = 19.17  # [1] NFPA 54 / IFGC, low pressure, below 1.5 psi
HIGH = 18.93  # [1] NFPA 54 / IFGC, high pressure, 1.5 psi and above
FLOW_POWER, LOSS_POWER = 0.381, 0.206  # [1] the same
HIGH_PRESSURE = si(1.5, "psi")  # [Pa] gauge, at the inlet


@formula
def pipe_gas_factor(relative_density: Number, *, viscosity: Number, temperature: Number) -> Number:
    """Factor of the codes for viscosity, density and temperature of a gas.

    C_r = 0.00354 d × 1.8 T (1000 mu / d)^0.152

    Parameters
    ----------
    relative_density : d, density over that of dry air, 0.3 to 3 [1]
    viscosity : mu, dynamic viscosity, 5e-6 to 2e-5 [Pa s]
    temperature : T, of the gas, 250 to 320 [K]

    Returns
    -------
    C_r, factor for the gas [1]

    Source: IFGC A.4 (NFPA 54 Annex B): 0.00354 S T (Z / S)^0.152 in degrees Rankine and centipoise;
    gives the codes' 0.6094 and 1.2462 at 520 degR.

    >>> round(pipe_gas_factor(0.6, viscosity=1.2e-5, temperature=520 / 1.8), 4)
    0.6094
    """
    d, mu, T = relative_density, viscosity, temperature
    return 0.00354 * d * (1.8 * T) * (1000 * mu / d) ** 0.152


@formula
def low_pressure_diameter(
    flow: Number, *, drop: Number, length: Number, gas_factor: Number
) -> Number:
    """Diameter a low-pressure pipe needs.

    D = 0.0254 (q / 7.86579e-06)^0.381 / (19.17 (dp / 248.908 / (C_r L / 0.3048))^0.206)

    Parameters
    ----------
    flow : q, gas flow at base conditions, 1e-5 to 5 [m3/s]
    drop : dp, pressure drop, 10 to 5000 [Pa]
    length : L, of straight pipe and what counts as such, 0.5 to 1000 [m]
    gas_factor : C_r, factor for the gas, 0.2 to 3 [1]

    Returns
    -------
    D, inside diameter [m]

    Source: NFPA 54 / IFGC 402.4, low-pressure equation, below 1.5 psi.

    >>> D = low_pressure_diameter(0.0075, drop=125.0, length=30.0, gas_factor=0.6094)
    >>> round(D, 5)
    0.04844
    """
    loss = drop / WATER / (gas_factor * length / FOOT)
    return INCH * (flow / HOURLY) ** FLOW_POWER / (LOW * loss**LOSS_POWER)


@formula
def low_pressure_flow(
    drop: Number, *, diameter: Number, length: Number, gas_factor: Number
) -> Number:
    """Flow a low-pressure pipe carries at a drop of pressure.

    q = 7.86579e-06 (19.17 D / 0.0254 (dp / 248.908 / (C_r L / 0.3048))^0.206)^2.62467

    Parameters
    ----------
    drop : dp, pressure drop, 0 to 5000 [Pa]
    diameter : D, inside diameter, 0.005 to 0.3 [m]
    length : L, of straight pipe and what counts as such, 0.5 to 1000 [m]
    gas_factor : C_r, factor for the gas, 0.2 to 3 [1]

    Returns
    -------
    q, gas flow at base conditions [m3/s]

    Source: NFPA 54 / IFGC 402.4, low-pressure equation, turned round.

    >>> q = low_pressure_flow(125.0, diameter=0.04844, length=30.0, gas_factor=0.6094)
    >>> round(q, 5)
    0.0075
    """
    loss = drop / WATER / (gas_factor * length / FOOT)
    return HOURLY * (LOW * diameter / INCH * loss**LOSS_POWER) ** (1 / FLOW_POWER)


@formula
def low_pressure_drop(
    flow: Number, *, diameter: Number, length: Number, gas_factor: Number
) -> Number:
    """Pressure a low-pressure pipe takes.

    dp = 248.908 C_r L / 0.3048 ((q / 7.86579e-06)^0.381 / (19.17 D / 0.0254))^4.85437

    Parameters
    ----------
    flow : q, gas flow at base conditions, 0 to 5 [m3/s]
    diameter : D, inside diameter, 0.005 to 0.3 [m]
    length : L, of straight pipe and what counts as such, 0.5 to 1000 [m]
    gas_factor : C_r, factor for the gas, 0.2 to 3 [1]

    Returns
    -------
    dp, pressure drop [Pa]

    Source: NFPA 54 / IFGC 402.4, low-pressure equation, turned round.

    >>> dp = low_pressure_drop(0.0075, diameter=0.04844, length=30.0, gas_factor=0.6094)
    >>> round(dp)
    125
    """
    narrow = (flow / HOURLY) ** FLOW_POWER / (LOW * diameter / INCH)
    return WATER * gas_factor * length / FOOT * narrow ** (1 / LOSS_POWER)


@formula
def high_pressure_diameter(
    flow: Number,
    *,
    inlet: Number,
    outlet: Number,
    length: Number,
    gas_factor: Number,
    expansion: Number,
) -> Number:
    """Diameter a high-pressure pipe needs.

    D = 0.0254 (q / 7.86579e-06)^0.381 / (18.93 (max(p_1^2 - p_2^2, 1) / 4.75377e+07 Y /
    (C_r L / 0.3048))^0.206)

    Parameters
    ----------
    flow : q, gas flow at base conditions, 1e-5 to 5 [m3/s]
    inlet : p_1, absolute pressure, 60 000 to 800 000 [Pa]
    outlet : p_2, absolute pressure, below the inlet's, 60 000 to 800 000 [Pa]
    length : L, of straight pipe and what counts as such, 0.5 to 1000 [m]
    gas_factor : C_r, factor for the gas, 0.2 to 3 [1]
    expansion : Y, superexpansibility of the gas, 0.9 to 1.1 [1]

    Returns
    -------
    D, inside diameter [m]

    Source: NFPA 54 / IFGC 402.4, high-pressure equation, 1.5 psi and above.

    >>> D = high_pressure_diameter(0.05, inlet=122000.0, outlet=108000.0, length=30.0,
    ...     gas_factor=0.6094, expansion=0.9992)
    >>> round(D, 5)
    0.0368
    """
    squares = maximum(inlet**2 - outlet**2, 1.0)
    loss = squares / SQUARE * expansion / (gas_factor * length / FOOT)
    return INCH * (flow / HOURLY) ** FLOW_POWER / (HIGH * loss**LOSS_POWER)


@formula
def high_pressure_flow(
    diameter: Number,
    *,
    inlet: Number,
    outlet: Number,
    length: Number,
    gas_factor: Number,
    expansion: Number,
) -> Number:
    """Flow a high-pressure pipe carries between two pressures.

    q = 7.86579e-06 (18.93 D / 0.0254 (max(p_1^2 - p_2^2, 0) / 4.75377e+07 Y /
    (C_r L / 0.3048))^0.206)^2.62467

    Parameters
    ----------
    diameter : D, inside diameter, 0.005 to 0.3 [m]
    inlet : p_1, absolute pressure, 60 000 to 800 000 [Pa]
    outlet : p_2, absolute pressure, below the inlet's, 60 000 to 800 000 [Pa]
    length : L, of straight pipe and what counts as such, 0.5 to 1000 [m]
    gas_factor : C_r, factor for the gas, 0.2 to 3 [1]
    expansion : Y, superexpansibility of the gas, 0.9 to 1.1 [1]

    Returns
    -------
    q, gas flow at base conditions [m3/s]

    Source: NFPA 54 / IFGC 402.4, high-pressure equation, turned round.

    >>> q = high_pressure_flow(0.0368, inlet=122000.0, outlet=108000.0, length=30.0,
    ...     gas_factor=0.6094, expansion=0.9992)
    >>> round(q, 4)
    0.05
    """
    squares = maximum(inlet**2 - outlet**2, 0.0)
    loss = squares / SQUARE * expansion / (gas_factor * length / FOOT)
    return HOURLY * (HIGH * diameter / INCH * loss**LOSS_POWER) ** (1 / FLOW_POWER)


@formula
def high_pressure_outlet(
    flow: Number,
    *,
    inlet: Number,
    diameter: Number,
    length: Number,
    gas_factor: Number,
    expansion: Number,
) -> Number:
    """Pressure left at the end of a high-pressure pipe.

    p_2 = max(p_1^2 - 4.75377e+07 C_r L / 0.3048 / Y ((q / 7.86579e-06)^0.381 /
    (18.93 D / 0.0254))^4.85437, 0)^0.5

    Parameters
    ----------
    flow : q, gas flow at base conditions, 0 to 5 [m3/s]
    inlet : p_1, absolute pressure, 60 000 to 800 000 [Pa]
    diameter : D, inside diameter, 0.005 to 0.3 [m]
    length : L, of straight pipe and what counts as such, 0.5 to 1000 [m]
    gas_factor : C_r, factor for the gas, 0.2 to 3 [1]
    expansion : Y, superexpansibility of the gas, 0.9 to 1.1 [1]

    Returns
    -------
    p_2, absolute pressure at the outlet, zero where the pipe cannot carry the flow [Pa]

    Source: NFPA 54 / IFGC 402.4, high-pressure equation, turned round.

    >>> p = high_pressure_outlet(0.05, inlet=122000.0, diameter=0.0368, length=30.0,
    ...     gas_factor=0.6094, expansion=0.9992)
    >>> round(p, -2)
    108000.0
    """
    narrow = (flow / HOURLY) ** FLOW_POWER / (HIGH * diameter / INCH)
    lost = SQUARE * gas_factor * length / FOOT / expansion * narrow ** (1 / LOSS_POWER)
    return maximum(inlet**2 - lost, 0.0) ** 0.5
