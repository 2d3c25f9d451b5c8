"""Fans: laws, density, velocity pressure, power, system curve."""

from typing import Any

from lightoff.physics import fan
from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.duct import component_drop, effective_duct_length
from lightoff.physics.moist_air import moist_air_density
from lightoff.physics.traverse import pitot_velocity
from published.cases import Given, Method
from published.units import FOOT, POUND

STANDARD = 0.075 * POUND / FOOT**3  # what the head of the file calls standard air
ROOM = (70 + 459.67) * 5 / 9
SAME = {"size_ratio": 1.0, "density_ratio": 1.0}


def dry(temperature: float, altitude: float = 0.0) -> float:
    """Density of dry air."""
    pressure = barometric_pressure(altitude)
    return float(moist_air_density(temperature, humidity_ratio=0.0, pressure=pressure))


def pitot(given: Given, _: dict[str, str]) -> dict[str, Any]:
    density = dry(given["t"], given["z"]) if "z" in given else given.get("rho", STANDARD)
    if not isinstance(given["pv"], list):
        return {"V": pitot_velocity(given["pv"], density), "rho": density}
    return {"V": [pitot_velocity(each, density) for each in given["pv"]]}


def standard_air(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"rho": moist_air_density(given["t"], humidity_ratio=0.0, pressure=given["p"])}


def laws(given: Given, _: dict[str, str]) -> dict[str, Any]:
    n = given["N_ratio"]
    return {
        "Q_ratio": fan.airflow_by_fan_law(1.0, speed_ratio=n, size_ratio=1.0),
        "p_ratio": fan.pressure_by_fan_law(1.0, speed_ratio=n, **SAME),
        "P_ratio": fan.power_by_fan_law(1.0, speed_ratio=n, **SAME),
    }


def worked(given: Given, _: dict[str, str]) -> dict[str, Any]:
    n = fan.speed_ratio(given["N2"], given["N1"])
    return {
        "Q2": fan.airflow_by_fan_law(given["Q"], speed_ratio=n, size_ratio=1.0),
        "p2": fan.pressure_by_fan_law(given["p"], speed_ratio=n, **SAME),
        "P2": fan.power_by_fan_law(given["P"], speed_ratio=n, **SAME),
    }


def by_altitude(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"factor": [fan.density_ratio(dry(ROOM, z), dry(ROOM)) for z in given["z"]]}


def by_temperature(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"factor": [fan.density_ratio(dry(t), dry(ROOM)) for t in given["t"]]}


def denver(given: Given, _: dict[str, str]) -> dict[str, Any]:
    density = dry(given["t"], given["z"])
    return {"rho": density, "ratio": fan.density_ratio(density, STANDARD)}


def corrected(given: Given, _: dict[str, str]) -> dict[str, Any]:
    r = given["factor"]
    power = fan.power_by_fan_law(given["P_std"], speed_ratio=1.0, size_ratio=1.0, density_ratio=r)
    return {"p_std": fan.catalogue_pressure(given["p"], r), "P": power}


def power(given: Given, _: dict[str, str]) -> dict[str, Any]:
    flow, pressure = given["Q"], given["p"]
    return {
        "P_air": fan.air_power(flow, pressure),
        "P_shaft": fan.shaft_power(flow, pressure, efficiency=given["eta"]),
    }


def constant(_given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"k": 1.0 / fan.air_power(1.0, 1.0)}


def system(given: Given, _: dict[str, str]) -> dict[str, Any]:
    def at(exponent: float) -> Any:
        return component_drop(given["Q2"], rated_airflow=given["Q1"], rated_drop=given["p"],
                              exponent=exponent, density_ratio=1.0)  # fmt: skip

    return {"p2": at(2.0), "p2_19": at(1.9)}


def effective(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"L_over_D": [effective_duct_length(v, 1.0) for v in given["V"]]}


def winter(given: Given, _: dict[str, str]) -> dict[str, Any]:
    r = fan.density_ratio(dry(given["t2"]), dry(given["t1"]))
    return {
        "ratio": fan.power_by_fan_law(1.0, speed_ratio=1.0, size_ratio=1.0, density_ratio=r),
    }


METHODS: tuple[tuple[str, Method], ...] = (
    (r"fa-(4005|10967|vp-.*)", pitot),
    (r"fa-standard-air", standard_air),
    (r"fa-laws-\dp\d+", laws),
    (r"fa-laws-worked", worked),
    (r"fa-density-altitude", by_altitude),
    (r"fa-density-temperature", by_temperature),
    (r"fa-density-denver", denver),
    (r"fa-correct-static", corrected),
    (r"fa-airpower", power),
    (r"fa-constants", constant),
    (r"fa-system-curve", system),
    (r"fa-effective-length", effective),
    (r"fa-winter", winter),
)
