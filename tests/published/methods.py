"""How each family of published cases is asked of our formulas.

A method takes the case's given quantities in SI and returns what it can say, in SI; a list where
the case has one.
"""

import re
from collections.abc import Callable
from typing import Any

from lightoff.inference.conformity import CONFIDENT, probability_within
from lightoff.inference.estimate import RECTANGULAR, Estimate, Part, combine
from lightoff.physics import airflow, combustion, electricity, fuel_gas, gas_flow, moist_air
from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.constants import STANDARD_PRESSURE
from lightoff.physics.tightness import temperature_corrected_drop

Given = dict[str, Any]
Method = Callable[[Given, dict[str, str]], dict[str, Any]]
EARTH = 6356766.0


def _altitude(given: Given) -> float:
    """Geometric altitude; the handbook's tables give the geopotential one."""
    return given["z"] if "z" in given else EARTH * given["H"] / (EARTH - given["H"])


def _atmosphere(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"p": barometric_pressure(_altitude(given))}


def _clocking(given: Given, _: dict[str, str]) -> dict[str, Any]:
    factor = 1.0
    if "p_meter" in given:
        # the case's own base pressure instead of 30 inHg
        absolute = given["p_meter"] + given["p_atm"]
        base = gas_flow.GAS_BASE_PRESSURE
        factor = gas_flow.base_volume_factor(absolute * base / given["p_base"], given["t_gas"])
    flow = given["V"] / given["t"]
    out: dict[str, Any] = {"Q": flow, "Q_ft3": flow, "factor": factor}
    if "Hg" in given:
        out["input"] = gas_flow.metered_input(
            volume=given["V"], seconds=given["t"], heating_value=given["Hg"], factor=factor
        )
    return out


def _code_derate(given: Given, _: dict[str, str]) -> dict[str, Any]:
    # the rule's own column begins below the altitude at which it is applied
    return {"factor": [1 - gas_flow.CODE_DERATE * z for z in given["z"]]}


def _orifice_altitude(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"factor": [(barometric_pressure(z) / STANDARD_PRESSURE) ** 0.5 for z in given["z"]]}


def _root_law(given: Given, _: dict[str, str]) -> dict[str, Any]:
    ratio = gas_flow.orifice_input(
        rated_input=1.0,
        manifold=given["h2"],
        rated_manifold=given["h1"],
        wobbe_ratio=1.0,
        density_ratio=1.0,
    )
    return {"ratio": ratio}


def _probability(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"pc": probability_within(given["y"], given["u"], given.get("TL"), given.get("TU"))}


def _one_sided(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"pc": probability_within(0.0, 1.0, None, given["z"])}


def _two_sided(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"pc": [probability_within(0.0, 1.0, -t, t) for t in given["T_over_u"]]}


def _guard_band(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """The guard band is where the probability of conformity reaches the confidence asked for."""
    low, high = 0.0, 5 * given["u"]
    for _step in range(60):
        middle = (low + high) / 2
        enough = probability_within(-middle, given["u"], None, 0.0) >= CONFIDENT
        low, high = (low, middle) if enough else (middle, high)
    return {"w": high}


def _saturation(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"p_ws": moist_air.saturation_pressure(given["t"])}


def _saturated_ratio(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"W_s": moist_air.humidity_ratio(given["t"], relative_humidity=1.0, pressure=given["p"])}


def _moist(given: Given, _: dict[str, str]) -> dict[str, Any]:
    ratio = moist_air.humidity_ratio(given["t"], relative_humidity=given["RH"], pressure=given["p"])
    density = moist_air.moist_air_density(given["t"], humidity_ratio=ratio, pressure=given["p"])
    return {"W": ratio, "rho": density, "v": (1 + ratio) / density}


def _component(_: Given, label: dict[str, str]) -> dict[str, Any]:
    mass, summation, heat = fuel_gas.COMPONENTS[label["gas"]]
    z = fuel_gas.compressibility({label["gas"]: 1.0}, STANDARD_PRESSURE)
    return {"M": mass, "s_15": summation, "Hg_60F": heat, "Z_15": z}


def _mixture(given: Given, _: dict[str, str]) -> dict[str, Any]:
    fractions = {
        name.replace("carbon_", "carbon ").replace("n_", "n-"): x for name, x in given.items()
    }
    base = 14.73 * 6894.757293168  # the example's own base pressure
    value = fuel_gas.heating_value(fractions) * base / gas_flow.GAS_BASE_PRESSURE
    density = fuel_gas.relative_density(fractions)
    return {
        "Z": fuel_gas.compressibility(fractions, base),
        "Hg_v": value,
        "d": density,
        "W_g": fuel_gas.wobbe(value, density),
    }


def _wobbe(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"W_g": fuel_gas.wobbe(given["Hg"], given["d"])}


def _unbalance(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {
        "unbalance": electricity.unbalance(*given["V"]),
        "mean": sum(given["V"]) / len(given["V"]),
    }


def _derating(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"factor": [electricity.unbalance_derating(u) for u in given["unbalance"]]}


def _air_free(given: Given, _: dict[str, str]) -> dict[str, Any]:
    if "CO2" in given:
        return {
            "CO_af": combustion.air_free_from_co2(given["CO"], given["CO2"], given["CO2_ultimate"])
        }
    return {"CO_af": combustion.air_free_from_o2(given["CO"], given["O2"])}


def _warmed_pipe(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """The end pressure at which nothing has leaked."""
    start, ratio = given["p1"] + given["p_atm"], given["t2"] / given["t1"]
    end = start * ratio - given["p_atm"]
    left = temperature_corrected_drop(
        start=given["p1"],
        end=end,
        start_temperature=given["t1"],
        end_temperature=given["t2"],
        barometer=given["p_atm"],
    )
    assert abs(left) < 1e-6
    return {"p2": end, "dp": end - given["p1"]}


def _pitot(given: Given, _: dict[str, str]) -> dict[str, Any]:
    pressures = given["pv"] if isinstance(given["pv"], list) else [given["pv"]]
    density = given.get("rho", 0.075 * 0.45359237 / 0.3048**3)
    if "z" in given:
        density = moist_air.moist_air_density(
            given["t"], humidity_ratio=0.0, pressure=barometric_pressure(given["z"])
        )
    speeds = [airflow.pitot_velocity(p, density) for p in pressures]
    return {"V": speeds if isinstance(given["pv"], list) else speeds[0], "rho": density}


def _rectangle(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"u": given["a"] * RECTANGULAR}


def _resolution(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"u": given["step"] / 2 * RECTANGULAR}


def _roots(given: Given, _: dict[str, str]) -> dict[str, Any]:
    speed = combine(lambda p: p**0.5, Estimate(1.0, {Part("pv", "x"): given["u_pv"]}))
    power = combine(lambda n: n**3, Estimate(1.0, {Part("N", "x"): given["u_N"]}))
    return {"u_V": round(speed.u, 4), "u_P": round(power.u, 4)}


def _end_gauge(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """GUM H.1: l = ls + d - ls (d_alpha theta + alpha_s d_theta), first order as printed."""
    difference = {
        Part("d0", "d"): given["u_d0"], Part("d1", "d"): given["u_d1"],
        Part("d2", "d"): given["u_d2"],
    }  # fmt: skip
    length = combine(
        lambda ls, d, da, dt: ls + d - ls * (da * given["theta"] + given["alpha_s"] * dt),
        Estimate(given["l_s"], {Part("calibration", "ls"): given["u_ls"]}),
        Estimate(given["d"], difference),
        Estimate(0.0, {Part("expansion", "d_alpha"): given["a_d_alpha"] * RECTANGULAR}),
        Estimate(0.0, {Part("temperature", "d_theta"): given["a_d_theta"] * RECTANGULAR}),
    )
    return {"l": length.value, "u_l": length.u}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"at-.*", _atmosphere),
    (r"me-.*", _clocking),
    (r"or-alt-rule", _code_derate),
    (r"or-alt-physics", _orifice_altitude),
    (r"or-sqrt-.*", _root_law),
    (r"cf-106-.*", _probability),
    (r"cf-pc-.*", _one_sided),
    (r"cf-two-sided-mid", _two_sided),
    (r"cf-guard-95", _guard_band),
    (r"ma-p(ws|ice)-.*", _saturation),
    (r"ma-ws-.*", _saturated_ratio),
    (r"ma-cp-.*", _moist),
    (r"gp-iso6976-.*", _component),
    (r"gp-aga5-example", _mixture),
    (r"gp-wobbe-.*", _wobbe),
    (r"mo-unbalance-.*", _unbalance),
    (r"mo-derating", _derating),
    (r"co-airfree-.*", _air_free),
    (r"ti-temp-.*", _warmed_pipe),
    (r"fa-.*", _pitot),
    (r"un-type-b-rect", _rectangle),
    (r"un-resolution", _resolution),
    (r"un-sqrt", _roots),
    (r"un-gum-h1", _end_gauge),
)


def method_for(case_id: str) -> Method:
    """The method of a case."""
    return next(method for pattern, method in METHODS if re.fullmatch(pattern, case_id))
