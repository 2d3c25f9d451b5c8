"""Doors, leakage, sensible heat, stack effect."""

from typing import Any

from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.building import (
    OPEN_FORCE,
    START_FORCE,
    UNLATCH_FORCE,
    door_force,
    envelope_leakage,
    heat_of_airflow,
    leakage_area,
    opening_airflow,
    pressure_of_door_force,
    pressure_of_surplus,
    stack_pressure,
)
from lightoff.physics.moist_air import moist_air_density
from published.cases import Given, Method
from published.units import INCH_60F

ROOM = 294.261  # [K] 70 degF
CFM_OF_STANDARD_AIR = 0.3048**3 / 60  # [m3/s]
DEGREE_F = 5 / 9  # [K]
DRY_IN_STANDARD_AIR = 0.075 * 0.45359237 / 0.3048**3  # [kg/m3]


def coefficient(_: Given, __: dict[str, str]) -> dict[str, Any]:
    """A handle in the middle of a door of 1 m2, without a closer, takes area times pressure."""
    force = door_force(1.0, width=1.0, height=1.0, handle=0.5, closer=0.0)
    return {"K_ip": force, "K_si": force}


def door(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {
        "F": door_force(
            given["dp"],
            width=given["W"],
            height=given["H"],
            handle=given["d"],
            closer=given["F_closer"],
        )
    }


def widths(given: Given, _: dict[str, str]) -> dict[str, Any]:
    closer, handle, height = given["F_closer"], given["d"], given["H"]
    return {
        "dp": [
            pressure_of_door_force(
                given["F"], width=width, height=height, handle=handle, closer=closer
            )
            for width in given["W"]
        ]
    }


def limits(_: Given, __: dict[str, str]) -> dict[str, Any]:
    return {"unlatch": UNLATCH_FORCE, "motion": START_FORCE, "open": OPEN_FORCE}


def opening(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """Coefficient 0.65 and, in inch-pound, 0.075 lb/ft3; in SI 1.2 kg/m3."""
    metric = "C" not in given
    density = 1.2 if metric else DRY_IN_STANDARD_AIR
    flow = opening_airflow(
        given["dp"], area=given["A"], coefficient=given.get("C", 0.65), density=density
    )
    return {"Q": flow}


def ratios(given: Given, _: dict[str, str]) -> dict[str, Any]:
    at_4, at_12 = (
        envelope_leakage(p, leakage=1.0, test_pressure=50.0, exponent=given["n"])
        for p in (4.0, 12.5)
    )
    return {"Q4_Q50": at_4, "Q12_Q50": at_12}


def effective_area(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """The coefficient is the leakage at 1 Pa."""
    at_4 = envelope_leakage(4.0, leakage=given["C"], test_pressure=1.0, exponent=given["n"])
    return {"Q4": at_4, "A_L": leakage_area(at_4, 4.0, density=1.2)}


def surplus(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """The coefficient is the leakage at 1 in. w.c."""
    pressure = pressure_of_surplus(
        given["Q"], leakage=given["C"], test_pressure=INCH_60F, exponent=given["n"]
    )
    return {"dp": pressure}


def rule(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """Heat for a cfm and a degree F of air with 0.075 lb of dry air in the cubic foot."""
    ratio = given.get("W", 0.0)
    heat = heat_of_airflow(
        CFM_OF_STANDARD_AIR,
        DEGREE_F,
        density=DRY_IN_STANDARD_AIR * (1 + ratio),
        humidity_ratio=ratio,
    )
    return {"k": heat / CFM_OF_STANDARD_AIR / DEGREE_F}


def sensible(given: Given, _: dict[str, str]) -> dict[str, Any]:
    density = moist_air_density(ROOM, humidity_ratio=0.0, pressure=barometric_pressure(given["z"]))
    heat = heat_of_airflow(given["Q"], given["dT"], density=density, humidity_ratio=0.0)
    return {"k": heat / given["Q"] / given["dT"], "q": heat}


def stack(given: Given, _: dict[str, str]) -> dict[str, Any]:
    pressure = stack_pressure(
        given["H"], outdoor=given["t_out"], indoor=given["t_in"], barometer=101325.0
    )
    return {"dp": pressure}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"bu-door-formula", coefficient),
    (r"bu-door-max-.*", widths),
    (r"bu-door-limits", limits),
    (r"bu-door-\dx.*", door),
    (r"bu-orifice.*", opening),
    (r"bu-power-.*", ratios),
    (r"bu-ela", effective_area),
    (r"bu-pressurise", surplus),
    (r"bu-1\d\d", rule),
    (r"bu-sensible-.*", sensible),
    (r"bu-stack", stack),
)
