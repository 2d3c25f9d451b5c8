"""Heat held by the gases of a flue, and by the water that condenses out of them."""

from lightoff.formula import Number, formula
from lightoff.formula.dual import sloped
from lightoff.formula.elementary import interpolate
from lightoff.physics.constants import GAS_CONSTANT

HEAT_REFERENCE = 298.15  # [K] 25 degC, where enthalpies are zero and gross heat is reckoned

# Coefficients of heat capacity over the gas constant, 200 to 1000 K: McBride, Gordon and Reno, NASA
# TM-4513 (1993). Within 0.11 % (CO2), 0.04 % (H2O), 0.07 % (N2), 0.05 % (O2) of the heat that newer
# equations of state give between 25 degC and 500 degC (tests/grids/test_combustion.py); the older
# nitrogen of GRI-Mech 3.0, good from 300 K only, is 0.16 % off at 500 K.
_CO2 = (2.35677352, 8.98459677e-3, -7.12356269e-6, 2.45919022e-9, -1.43699548e-13)
_H2O = (4.19864056, -2.0364341e-3, 6.52040211e-6, -5.48797062e-9, 1.77197817e-12)
_N2 = (3.53100528, -1.23660987e-4, -5.02999437e-7, 2.43530612e-9, -1.40881235e-12)
_O2 = (3.78245636, -2.99673415e-3, 9.847302e-6, -9.68129508e-9, 3.24372836e-12)

# heat of condensing water vapour as an ideal gas [J/mol]: ISO 6976:2016, table A.4, to 25 degC;
# above it IAPWS-95 by CoolProp 8.0.0, which is 1 J/mol more than the standard at 25 degC
_CONDENSATION = ((273.15, 45064.0), (288.15, 44431.0), (293.15, 44222.0), (298.15, 44013.0),
                 (333.15, 42556.0), (373.15, 40886.0))  # fmt: skip


def _bend(T: Number, coefficients: tuple[float, ...]) -> Number:
    _, b, c, d, e = coefficients
    return GAS_CONSTANT * (b + T * (2 * c + T * (3 * d + T * (4 * e))))


@sloped(_bend)
def _capacity(T: Number, coefficients: tuple[float, ...]) -> Number:
    a, b, c, d, e = coefficients
    return GAS_CONSTANT * (a + T * (b + T * (c + T * (d + T * e))))


def _enthalpy(T: Number, coefficients: tuple[float, ...]) -> Number:
    a, b, c, d, e = coefficients
    return GAS_CONSTANT * T * (a + T * (b / 2 + T * (c / 3 + T * (d / 4 + T * (e / 5)))))


_AT_REFERENCE: dict[tuple[float, ...], float] = {
    each: _enthalpy(HEAT_REFERENCE, each) for each in (_CO2, _H2O, _N2, _O2)
}


@sloped(_capacity)
def _above_reference(T: Number, coefficients: tuple[float, ...]) -> Number:
    return _enthalpy(T, coefficients) - _AT_REFERENCE[coefficients]


def molar_heat_capacities(temperature: Number) -> tuple[Number, Number, Number, Number]:
    """How steeply the heat held rises: of CO2, water vapour, N2 and O2 [J/(mol K)]."""
    T = temperature
    return _capacity(T, _CO2), _capacity(T, _H2O), _capacity(T, _N2), _capacity(T, _O2)


@formula
def carbon_dioxide_enthalpy(temperature: Number) -> Number:
    """Heat held by carbon dioxide above 25 degC, per amount.

    h_CO2 = 8.31446 T (2.35677 + T (0.0044923 + T (-2.37452e-06 + T (6.14798e-10 +
    T (-2.87399e-14))))) - 8679.18

    Parameters
    ----------
    temperature : T, temperature, 200 to 1000 [K]

    Returns
    -------
    h_CO2, enthalpy above 25 degC [J/mol]

    Source: McBride, Gordon and Reno, NASA TM-4513 (1993).

    >>> round(carbon_dioxide_enthalpy(500.0))
    8300
    """
    return _above_reference(temperature, _CO2)


@formula
def water_vapour_enthalpy(temperature: Number) -> Number:
    """Heat held by water vapour above 25 degC, per amount.

    h_H2O = 8.31446 T (4.19864 + T (-0.00101822 + T (2.17347e-06 + T (-1.37199e-09 +
    T × 3.54396e-13)))) - 10051.4

    Parameters
    ----------
    temperature : T, temperature, 200 to 1000 [K]

    Returns
    -------
    h_H2O, enthalpy above vapour of 25 degC [J/mol]

    Source: McBride, Gordon and Reno, NASA TM-4513 (1993).

    >>> round(water_vapour_enthalpy(500.0))
    6925
    """
    return _above_reference(temperature, _H2O)


@formula
def nitrogen_enthalpy(temperature: Number) -> Number:
    """Heat held by nitrogen above 25 degC, per amount.

    h_N2 = 8.31446 T (3.53101 + T (-6.18305e-05 + T (-1.67666e-07 + T (6.08827e-10 +
    T (-2.81762e-13))))) - 8705.05

    Parameters
    ----------
    temperature : T, temperature, 200 to 1000 [K]

    Returns
    -------
    h_N2, enthalpy above 25 degC [J/mol]

    Source: McBride, Gordon and Reno, NASA TM-4513 (1993).

    >>> round(nitrogen_enthalpy(500.0))
    5915
    """
    return _above_reference(temperature, _N2)


@formula
def oxygen_enthalpy(temperature: Number) -> Number:
    """Heat held by oxygen above 25 degC, per amount.

    h_O2 = 8.31446 T (3.78246 + T (-0.00149837 + T (3.28243e-06 + T (-2.42032e-09 +
    T × 6.48746e-13)))) - 8846.12

    Parameters
    ----------
    temperature : T, temperature, 200 to 1000 [K]

    Returns
    -------
    h_O2, enthalpy above 25 degC [J/mol]

    Source: McBride, Gordon and Reno, NASA TM-4513 (1993).

    >>> round(oxygen_enthalpy(500.0))
    6086
    """
    return _above_reference(temperature, _O2)


@formula
def condensation_heat(temperature: Number) -> Number:
    """Heat that water vapour gives when it condenses, per amount.

    L = table(T)

    Parameters
    ----------
    temperature : T, temperature, 273.15 to 373.15 [K]

    Returns
    -------
    L, heat of condensation [J/mol]

    Source: ISO 6976:2016, table A.4; IAPWS-95 above 25 degC.

    >>> round(condensation_heat(288.15))
    44431
    """
    return interpolate(temperature, _CONDENSATION)
