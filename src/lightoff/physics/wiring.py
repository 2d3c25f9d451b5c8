"""Conductors: size, resistance, and what is left of the volts at the far end."""

from math import pi

from lightoff.formula import Number, formula
from lightoff.physics.constants import FOOT

AWG_36 = 0.005 * FOOT / 12  # [m] diameter of AWG 36; ASTM B258
COPPER = 1.7241e-8  # [ohm m] annealed copper at 20 degC, 100 % IACS; IEC 60028
COPPER_RISE = 0.00393  # [1/K] of its resistance at 20 degC; IEC 60028
WIRE_REFERENCE = 293.15  # [K] 20 degC
SOLID = 1.0  # [1] resistance over that of a solid wire of one gauge
STRANDED = 1.02  # [1] the same, strands being longer than their cable; ASTM B8

CLASS_2_POWER = 100.0  # [VA] most of an inherently limited 24 V supply; NFPA 70, ch. 9 table 11(A)


@formula
def awg_diameter(gauge: Number) -> Number:
    """Diameter of a bare solid wire.

    d = 0.000127 × 92^((36 - n) / 39)

    Parameters
    ----------
    gauge : n, American wire gauge, 0000 is -3, -3 to 40 [1]

    Returns
    -------
    d, diameter [m]

    Source: ASTM B258, definition.

    >>> round(awg_diameter(18.0) * 1000, 3)
    1.024
    """
    return AWG_36 * 92 ** ((36 - gauge) / 39)


@formula
def wire_area(diameter: Number) -> Number:
    """Area of a solid wire's section.

    A = 0.785398 d^2

    Parameters
    ----------
    diameter : d, diameter, 0.00001 to 0.02 [m]

    Returns
    -------
    A, area [m2]

    Source: geometry, pi / 4.

    >>> round(wire_area(0.001) * 1e6, 4)
    0.7854
    """
    return pi / 4 * diameter**2


@formula
def resistance_at(resistance: Number, temperature: Number) -> Number:
    """Resistance of copper at a temperature, from that at 20 degC.

    r = r_20 (1 + 0.00393 (T - 293.15))

    Parameters
    ----------
    resistance : r_20, at 20 degC, for each length of wire, 1e-5 to 1 [ohm/m]
    temperature : T, of the wire, 230 to 400 [K]

    Returns
    -------
    r, resistance for each length of wire [ohm/m]

    Source: IEC 60028; NFPA 70 (2023), chapter 9, table 8.

    >>> round(resistance_at(0.021, 348.15), 5)
    0.02554
    """
    return resistance * (1 + COPPER_RISE * (temperature - WIRE_REFERENCE))


@formula
def wire_resistance(area: Number, *, lay: Number) -> Number:
    """Resistance of a copper wire at 20 degC, direct current, for each length of it.

    r_20 = 1.7241e-08 k / A

    Parameters
    ----------
    area : A, cross-section of the copper, 1e-9 to 1e-3 [m2]
    lay : k, length of the strands over that of the wire, 1 where it is solid, 1 to 1.05 [1]

    Returns
    -------
    r_20, resistance for each length of wire [ohm/m]

    Source: Ohm's law; IEC 60028, annealed copper.

    >>> round(wire_resistance(1e-6, lay=1.0), 5)
    0.01724
    """
    return COPPER * lay / area


@formula
def two_wire_drop(length: Number, current: Number, *, resistance: Number) -> Number:
    """Volts lost on the way there and back.

    dV = 2 L r I

    Parameters
    ----------
    length : L, one way, 0 to 2000 [m]
    current : I, current, 0 to 500 [A]
    resistance : r, for each length of wire, 1e-5 to 1 [ohm/m]

    Returns
    -------
    dV, voltage drop [V]

    Source: Ohm's law; the load taken as resistive.

    >>> round(two_wire_drop(50.0, 1.0, resistance=0.02), 6)
    2.0
    """
    return 2 * length * resistance * current


@formula
def volts_left(volts: Number, drop: Number) -> Number:
    """Volts at the far end.

    V_c = V - dV

    Parameters
    ----------
    volts : V, at the source under load, 0 to 1000 [V]
    drop : dV, voltage drop on the way, 0 to 1000 [V]

    Returns
    -------
    V_c, volts at the load [V]

    Source: Kirchhoff's law.

    >>> volts_left(24.0, 3.5)
    20.5
    """
    return volts - drop


@formula
def drop_allowed(volts: Number, least: Number) -> Number:
    """Drop that leaves enough at the far end.

    dV = V - V_m

    Parameters
    ----------
    volts : V, at the source under load, 0 to 1000 [V]
    least : V_m, least volts at the load, 0 to 1000 [V]

    Returns
    -------
    dV, voltage drop [V]

    Source: Kirchhoff's law.

    >>> drop_allowed(24.0, 21.0)
    3.0
    """
    return volts - least


@formula
def length_for_drop(drop: Number, current: Number, *, resistance: Number) -> Number:
    """Longest run, one way, that loses no more than this.

    L = dV / (2 r I)

    Parameters
    ----------
    drop : dV, voltage drop, 0 to 500 [V]
    current : I, current, 0.001 to 500 [A]
    resistance : r, for each length of wire, 1e-5 to 1 [ohm/m]

    Returns
    -------
    L, length, one way [m]

    Source: Ohm's law; the load taken as resistive.

    >>> round(length_for_drop(2.0, 1.0, resistance=0.02), 6)
    50.0
    """
    return drop / (2 * resistance * current)


@formula
def transformer_load(apparent_power: Number, rated_power: Number) -> Number:
    """Share of a transformer's rating in use.

    x = S / S_r

    Parameters
    ----------
    apparent_power : S, apparent power of all it feeds, 0 to 1000 [VA]
    rated_power : S_r, its rating, 1 to 1000 [VA]

    Returns
    -------
    x, share of the rating [1]

    Source: definition.

    >>> transformer_load(30.0, 75.0)
    0.4
    """
    return apparent_power / rated_power


@formula
def transformer_reserve(apparent_power: Number, rated_power: Number) -> Number:
    """What a transformer can still feed.

    S_0 = S_r - S

    Parameters
    ----------
    apparent_power : S, apparent power of all it feeds, 0 to 1000 [VA]
    rated_power : S_r, its rating, 1 to 1000 [VA]

    Returns
    -------
    S_0, reserve, negative where it is overloaded [VA]

    Source: definition.

    >>> transformer_reserve(30.0, 75.0)
    45.0
    """
    return rated_power - apparent_power
