"""Units of the published cases: factor and offset to SI. Kept apart from `lightoff.quantity`, so
that one does not vouch for the other (inches of water here are those of 60 degF)."""

import re

INCH_60F = 248.84
PSI = 6894.757293168
CODE_INCH = PSI / 27.7  # the inch of water of the gas codes
BTU = 1055.05585262
FOOT = 0.3048

POUND = 0.45359237
HP = 550 * POUND * 9.80665 * FOOT
CMIL = 3.141592653589793 / 4 * (FOOT / 12 / 1000) ** 2

TO_SI: dict[str, tuple[float, float]] = {
    "1": (1, 0), "percent": (1e-2, 0), "ppm": (1e-6, 0), "mol/mol": (1, 0), "kg/kg": (1, 0),
    "lb/lb": (1, 0), "deg": (3.141592653589793 / 180, 0), "rad": (1, 0),
    "s": (1, 0), "min": (60, 0), "h": (3600, 0), "rpm": (1, 0), "Hz": (1, 0),
    "K": (1, 0), "degC": (1, 273.15), "degF": (5 / 9, 459.67 * 5 / 9), "delta_degF": (5 / 9, 0),
    "1/K": (1, 0), "K2": (1, 0), "K d": (86400, 0),
    "m": (1, 0), "nm": (1e-9, 0), "ft": (FOOT, 0), "in": (FOOT / 12, 0),
    "m2": (1, 0), "ft2": (FOOT**2, 0), "cmil": (CMIL, 0), "mm2/s": (1e-6, 0),
    "m3": (1, 0), "ft3": (FOOT**3, 0), "m3/kg": (1, 0), "ft3/lb": (FOOT**3 / POUND, 0),
    "m3/kmol": (1e-3, 0), "ft3/lbmol": (FOOT**3 / POUND / 1000, 0), "kg/kmol": (1, 0),
    "kg/m3": (1, 0), "lb/ft3": (POUND / FOOT**3, 0),
    "Pa": (1, 0), "kPa": (1e3, 0), "mbar": (100, 0), "psi": (PSI, 0), "psi_gauge": (PSI, 0),
    "in_wc": (INCH_60F, 0), "in_wc/psi": (1, 0), "lbf": (POUND * 9.80665, 0),
    "m/s": (1, 0), "ft/min": (FOOT / 60, 0), "m3/s": (1, 0), "m3/h": (1 / 3600, 0),
    "ft3/h": (FOOT**3 / 3600, 0), "ft3/min": (FOOT**3 / 60, 0),
    "J/kg": (1, 0), "J/kg/K": (1, 0), "kJ/mol": (1e3, 0), "MJ/kg": (1e6, 0), "MJ/m3": (1e6, 0),
    "Btu/lb": (BTU / POUND, 0), "Btu/ft3": (BTU / FOOT**3, 0),
    "ft3/MMBtu": (FOOT**3 / BTU / 1e6, 0), "kg/MMBtu": (1 / BTU / 1e6, 0),
    "Btu/h": (BTU / 3600, 0), "kBtu/h": (BTU / 3.6, 0), "kWh": (3.6e6, 0), "hp": (HP, 0),
    "kW": (1e3, 0), "kVA": (1e3, 0), "VA": (1, 0), "V": (1, 0), "A": (1, 0), "mA": (1e-3, 0),
    "ohm": (1, 0), "uohm": (1e-6, 0), "ohm/kft": (1 / FOOT / 1000, 0), "kVA/hp": (1e3 / HP, 0),
    "ft3/min*in_wc/hp": (FOOT**3 / 60 * INCH_60F / HP, 0),
    "m3/s/Pa^n": (1, 0), "ft3/min/in_wc^n": (FOOT**3 / 60, 0),  # the flow at a pressure of 1
    "lbf/ft2/in_wc": (POUND * 9.80665 / FOOT**2 / INCH_60F, 0),
    "in_wc/delta_degF": (CODE_INCH * 9 / 5, 0),
    "Btu/h/cfm/degF": (BTU / 60 / FOOT**3 * 9 / 5, 0),
}  # fmt: skip

_NUMBER = r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?"
_SCALAR = re.compile(rf"({_NUMBER}) (\S+)")
_LIST = re.compile(rf"\[({_NUMBER}(?:, {_NUMBER})*)\] (\S+)")


def read(text: str) -> tuple[list[float], str]:
    """'21.5 degC' or '[1, 2] ft' as numbers and their unit."""
    if match := _SCALAR.fullmatch(text):
        return [float(match[1])], match[2]
    match = _LIST.fullmatch(text)
    assert match is not None, text
    return [float(each) for each in match[1].split(", ")], match[2]


def si(text: str) -> list[float]:
    """The same in SI."""
    values, unit = read(text)
    factor, offset = TO_SI[unit]
    return [value * factor + offset for value in values]
