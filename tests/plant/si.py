"""The trade's units in SI."""

from math import pi

INWC = 249.08891  # [Pa] of water at 4 degC, as the job file has it
INHG = 3386.389  # [Pa]
CFM = 0.028316846592 / 60.0  # [m3/s]
CUBIC_FOOT = 0.028316846592  # [m3]
FOOT = 0.3048  # [m]
INCH = 0.0254  # [m]
BTU = 1055.056  # [J]
KBTU_H = 1000.0 * BTU / 3600.0  # [W]
HP = 745.699872  # [W]
LBF = 4.4482216  # [N]
STANDARD_AIR = 1.204  # [kg/m3] the density of `design.airflow`
GAS_BASE = (101_594.0, 288.706)  # [Pa], [K] 30 inHg and 60 degF
SEA_LEVEL = 101_325.0  # [Pa]
UNIVERSAL = 8.314462618  # [J/mol K]
RPM = 2.0 * pi / 60.0  # [rad/s]


def kelvin(fahrenheit: float) -> float:
    return (fahrenheit + 459.67) / 1.8


def fahrenheit(kelvin: float) -> float:
    return kelvin * 1.8 - 459.67


def clip(value: float, least: float, most: float) -> float:
    return min(max(value, least), most)
