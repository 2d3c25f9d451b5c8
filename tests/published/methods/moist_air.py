"""Moist air."""

from typing import Any

from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.moist_air import (
    humidity_ratio,
    moist_air_density,
    moist_air_enthalpy,
    moist_air_volume,
    relative_humidity,
    saturated_humidity_ratio,
    vapour_pressure_of_ratio,
)
from lightoff.physics.psychrometer import humidity_ratio_from_wet_bulb, wet_bulb
from lightoff.physics.saturation import dew_point, saturation_pressure
from published.cases import Given, Method

ZERO_F = 459.67 * 5 / 9


def saturation(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"p_ws": saturation_pressure(given["t"] if "t" in given else given["T"])}


def saturated(given: Given, _: dict[str, str]) -> dict[str, Any]:
    ratio = saturated_humidity_ratio(given["t"], given["p"])
    return {"W_s": ratio, "h_s": moist_air_enthalpy(given["t"], ratio)}


def dry(given: Given, _: dict[str, str]) -> dict[str, Any]:
    volume = moist_air_volume(given["t"], humidity_ratio=0.0, pressure=given["p"])
    return {"h_da": moist_air_enthalpy(given["t"], 0.0), "v_da": volume}


def state(temperature: float, ratio: float, pressure: float) -> dict[str, Any]:
    """All that is said of air at a dry bulb and a humidity ratio."""
    air = {"humidity_ratio": ratio, "pressure": pressure}
    vapour = vapour_pressure_of_ratio(ratio, pressure)
    damp = {"t_dp": dew_point(vapour)} if vapour > 0 else {}
    return damp | {
        "p": pressure,
        "W": ratio,
        "RH": relative_humidity(temperature, **air),
        "h": moist_air_enthalpy(temperature, ratio),
        "v": moist_air_volume(temperature, **air),
        "rho": moist_air_density(temperature, **air),
        "t_wb": wet_bulb(temperature, **air),
    }


def known_ratio(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return state(given["t"], given["W"], given["p"])


def from_humidity(given: Given, _: dict[str, str]) -> dict[str, Any]:
    pressure = given["p"] if "p" in given else barometric_pressure(given["z"])
    ratio = humidity_ratio(given["t"], relative_humidity=given["RH"], pressure=pressure)
    return state(given["t"], ratio, pressure)


def from_wet_bulb(given: Given, _: dict[str, str]) -> dict[str, Any]:
    ratio = humidity_ratio_from_wet_bulb(given["t"], wet_bulb=given["t_wb"], pressure=given["p"])
    return state(given["t"], ratio, given["p"])


def inch_pound(method: Method) -> Method:
    """The inch-pound handbook counts the enthalpy of dry air from 0 degF."""

    def counted(given: Given, label: dict[str, str]) -> dict[str, Any]:
        found = method(given, label)
        shift = moist_air_enthalpy(ZERO_F, 0.0)
        return found | {name: found[name] - shift for name in ("h", "h_da") if name in found}

    return counted


METHODS: tuple[tuple[str, Method], ...] = (
    (r"ma-p(ws|ice)-.*", saturation),
    (r"ma-[wh]s-.*", saturated),
    (r"ma-dry-77f", inch_pound(dry)),
    (r"ma-dry-.*", dry),
    (r"ma-example1-ip", inch_pound(from_wet_bulb)),
    (r"ma-(example1-si|w-from-wb-.*)", from_wet_bulb),
    (r"ma-state-.*", known_ratio),
    (r"ma-ip-.*", inch_pound(from_humidity)),
    (r"ma-cp-.*", from_humidity),
)
