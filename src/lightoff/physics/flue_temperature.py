"""How warm the flue gas must be that holds a known heat."""

from lightoff.formula import Number, formula
from lightoff.formula.dual import still
from lightoff.physics.flue_gas import condensed_water, dry_flue, vapour_capacity
from lightoff.physics.flue_loss import flue_enthalpy
from lightoff.physics.saturation import saturation_pressure, steepness
from lightoff.physics.thermochemistry import condensation_heat, molar_heat_capacities

_START = 450.0  # [K] in the middle of what flues are
_LIQUID = 75.3  # [J/(mol K)] of water; IAPWS-95
_STEPS = 3  # the last leaves 3e-8 K between 280 and 700 K, 4e-6 K between 230 and 1000 K


@formula
def flue_temperature(
    enthalpy: Number,
    *,
    carbon_dioxide: Number,
    water: Number,
    nitrogen: Number,
    oxygen: Number,
) -> Number:
    """Temperature of flue gas that holds this heat above 25 degC, its water still vapour.

    E = E(T, N_CO2, N_H2O, N_N2, N_O2), solved for T

    Parameters
    ----------
    enthalpy : E, per amount of fuel, above 25 degC, -20 000 to 400 000 [J/mol]
    carbon_dioxide : N_CO2, carbon dioxide, 0.9 to 3 [mol/mol]
    water : N_H2O, water, 1 to 5 [mol/mol]
    nitrogen : N_N2, nitrogen, 7 to 60 [mol/mol]
    oxygen : N_O2, oxygen, 0 to 10 [mol/mol]

    Returns
    -------
    T, temperature [K]

    Source: sum over ideal gases, turned round by Newton's method.

    >>> T = flue_temperature(71274.0, carbon_dioxide=1.0, water=2.0, nitrogen=11.323, oxygen=1.0)
    >>> round(T, 1)
    450.0
    """
    T: Number = _START
    flue = {
        "carbon_dioxide": carbon_dioxide, "water": water, "nitrogen": nitrogen, "oxygen": oxygen,
    }  # fmt: skip
    plain = {name: still(moles) for name, moles in flue.items()}
    for _ in range(_STEPS - 1):
        T = T + (still(enthalpy) - flue_enthalpy(T, **plain)) / _rise(T, plain)
    return T + (enthalpy - flue_enthalpy(T, **flue)) / _rise(T, plain)


def _rise(T: Number, flue: dict[str, Number]) -> Number:
    """How the heat grows with the temperature."""
    return sum(n * c for n, c in zip(flue.values(), molar_heat_capacities(T), strict=True))


@formula
def wet_flue_enthalpy(
    temperature: Number,
    *,
    pressure: Number,
    carbon_dioxide: Number,
    water: Number,
    nitrogen: Number,
    oxygen: Number,
) -> Number:
    """Heat held by flue gas above 25 degC, less what its water has given by condensing.

    E_w = E - N_c L

    Parameters
    ----------
    temperature : T, temperature, 274 to 360 [K]
    pressure : p, absolute pressure, 60 000 to 110 000 [Pa]
    carbon_dioxide : N_CO2, carbon dioxide, 0.9 to 3 [mol/mol]
    water : N_H2O, water, 1 to 5 [mol/mol]
    nitrogen : N_N2, nitrogen, 7 to 60 [mol/mol]
    oxygen : N_O2, oxygen, 0 to 10 [mol/mol]

    Returns
    -------
    E_w, enthalpy above 25 degC, vapour counting nothing and condensate less [J/mol]

    Source: sum over ideal gases, saturated.

    >>> flue = {"carbon_dioxide": 1.0, "water": 2.0, "nitrogen": 11.323, "oxygen": 1.0}
    >>> round(wet_flue_enthalpy(313.15, pressure=101325.0, **flue))
    -34384
    """
    flue = {
        "carbon_dioxide": carbon_dioxide, "water": water, "nitrogen": nitrogen, "oxygen": oxygen,
    }  # fmt: skip
    dry = dry_flue(carbon_dioxide=carbon_dioxide, nitrogen=nitrogen, oxygen=oxygen)
    held = vapour_capacity(dry, temperature=temperature, pressure=pressure)
    condensed = condensed_water(water, held)
    return flue_enthalpy(temperature, **flue) - condensed * condensation_heat(temperature)


def flue_capacity(
    temperature: Number, *, pressure: Number, saturated: bool, **flue: Number
) -> Number:
    """How the heat of flue gas grows with its temperature, saturated or not [J/(mol K)]."""
    water = flue["water"]
    moles = (flue["carbon_dioxide"], water, flue["nitrogen"], flue["oxygen"])
    heats = molar_heat_capacities(temperature)
    plain: Number = sum(n * c for n, c in zip(moles, heats, strict=True))
    if not saturated:
        return plain
    dry = dry_flue(
        carbon_dioxide=flue["carbon_dioxide"], nitrogen=flue["nitrogen"], oxygen=flue["oxygen"]
    )
    held = vapour_capacity(dry, temperature=temperature, pressure=pressure)
    vapour = saturation_pressure(temperature)
    grown = held * pressure / (pressure - vapour) * steepness(temperature) / temperature**2
    warmed = condensed_water(water, held) * (_LIQUID - heats[1])
    return plain + warmed + grown * condensation_heat(temperature)
