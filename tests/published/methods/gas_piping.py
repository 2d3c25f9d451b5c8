"""Gas pipes."""

from math import log
from typing import Any

from lightoff.physics import gas_pipe
from lightoff.physics.gas_input import flow_input
from lightoff.physics.pipe_tables import CODE_GASES, CODE_TEMPERATURE, SCHEDULE_40, CodeGas
from published.cases import Given, Method

NATURAL, PROPANE = CODE_GASES["natural gas"], CODE_GASES["propane"]
BAROMETER = 14.7 * 6894.757293168  # the code's, where a case gives none


def factor(gas: CodeGas) -> float:
    return float(
        gas_pipe.pipe_gas_factor(
            gas.relative_density, viscosity=gas.viscosity, temperature=CODE_TEMPERATURE
        )
    )


def diameters(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"id": list(SCHEDULE_40.values())[: len(given["nominal"])]}


def low(given: Given, gas: CodeGas) -> list[float]:
    pipe = {"length": given["L"], "gas_factor": factor(gas)}
    return [gas_pipe.low_pressure_flow(given["dH"], diameter=d, **pipe) for d in given["id"]]


def high(given: Given, gas: CodeGas) -> list[float]:
    inlet = given["p1"] + given.get("p_atm", BAROMETER)
    pipe = {
        "inlet": inlet,
        "outlet": inlet - given["dp"],
        "length": given["L"],
        "gas_factor": factor(gas),
        "expansion": gas.expansion,
    }
    return [gas_pipe.high_pressure_flow(d, **pipe) for d in given["id"]]


def natural(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"Q": low(given, NATURAL) if "dH" in given else high(given, NATURAL)}


def propane(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """The code's propane tables are in heat."""
    flows = low(given, PROPANE) if "dH" in given else high(given, PROPANE)
    value = PROPANE.heating_value
    return {"Q": [flow_input(flow, heating_value=value, factor=1.0) for flow in flows]}


def exponents(_: Given, __: dict[str, str]) -> dict[str, Any]:
    """By how much the flow grows where diameter or drop is doubled."""
    plain = {"drop": 125.0, "diameter": 0.05, "length": 30.0, "gas_factor": 0.6094}
    once = gas_pipe.low_pressure_flow(**plain)
    wider = gas_pipe.low_pressure_flow(**plain | {"diameter": 0.1})
    steeper = gas_pipe.low_pressure_flow(**plain | {"drop": 250.0})
    return {"exp_D": log(wider / once) / log(2), "exp_dH": log(steeper / once) / log(2)}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"pi-schedule40-id", diameters),
    (r"pi-ng-.*", natural),
    (r"pi-lp-.*", propane),
    (r"pi-exponents", exponents),
)
