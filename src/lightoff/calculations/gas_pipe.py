"""The drop of a gas pipe, and the smallest pipe that does."""

from collections.abc import Mapping
from typing import Any

from lightoff.calculations.calculation import (
    Calculation,
    CannotCalculateError,
    Input,
    Note,
    Output,
)
from lightoff.calculations.gas_line import Line, Run, gas_factor
from lightoff.formula import Number
from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.gas_input import base_flow, flow_input, input_share
from lightoff.physics.gas_pipe import HIGH_PRESSURE, low_pressure_drop
from lightoff.physics.gas_pressure import (
    gauge_pressure,
    pressure_along,
    pressure_left,
    pressure_lost,
)
from lightoff.physics.meter import absolute_pressure
from lightoff.physics.pipe_tables import CODE_GASES, SCHEDULE_40
from lightoff.physics.regulator import (
    DROOP,
    LOCK_UP,
    carried_heat,
    carried_load,
    lock_up_pressure,
    regulated_pressure,
)

QUARTERS = (0.0, 0.25, 0.5, 0.75, 1.0)  # [1] of the length
SIZED = Note("calc-pipe-code", {}, advice=True)


def pipe_drop(*, pipe_size: str, **given: Any) -> dict[str, Any]:
    """What a pipe of one size takes of the pressure it begins with."""
    diameter = SCHEDULE_40[pipe_size]
    length = _run(given).equivalent(diameter)
    flow = base_flow(given["gas_load"], _heating_value(given))
    behind, start = _regulator(given)
    barometer = barometric_pressure(given["altitude"])
    line = _line(given, absolute_pressure(start, barometer))
    outlet = line.outlet(flow, diameter, length)
    along = (pressure_along(line.inlet, outlet, share=x) for x in QUARTERS)
    return {
        **behind,
        "drop": pressure_lost(line.inlet, outlet),
        "outlet_pressure": gauge_pressure(outlet, barometer),
        "pressures": tuple(gauge_pressure(each, barometer) for each in along),
        "base_gas_flow": flow,
        "equivalent_length": length,
        "air_pressure": barometer,
        **_carried(given, line, diameter, length),
    }


def _regulator(given: Mapping[str, Any]) -> tuple[dict[str, Number], Number]:
    """What stands behind the regulator, where one is told of, and the pressure to begin with."""
    start, capacity = given["inlet_pressure"], given["regulator_capacity"]
    if capacity is None:
        return {}, start
    load = input_share(given["gas_load"], capacity)
    lock_up = lock_up_pressure(start, given["lock_up_rise"])
    behind = regulated_pressure(start, droop=given["regulator_droop"], load=load)
    return {"regulated_pressure": behind, "lock_up": lock_up}, behind


def _carried(
    given: Mapping[str, Any], line: Line, diameter: float, length: Number
) -> dict[str, Number]:
    """The load at which the unit's pressure comes down to its least, where that is told."""
    least, capacity = given["unit_least"], given["regulator_capacity"]
    if least is None:
        return {}
    if not least < given["inlet_pressure"]:
        raise CannotCalculateError("calc-least-above-inlet", "unit_least")
    if capacity is not None and not line.high:
        rated = base_flow(capacity, _heating_value(given))
        pipe = {"diameter": diameter, "length": length, "gas_factor": line.gas_factor}
        load = carried_load(
            given["inlet_pressure"],
            droop=given["regulator_droop"],
            pipe_drop=low_pressure_drop(rated, **pipe),
            least=least,
        )
        return {"capacity": carried_heat(load, capacity)}
    outlet = absolute_pressure(least, barometric_pressure(given["altitude"]))
    return {"capacity": _heat(given, line.flow(outlet, diameter, length))}


def pipe_size(**given: Any) -> dict[str, Any]:
    """The smallest of the sizes sold that loses no more than what is allowed."""
    if not 0 < given["allowed_drop"] < given["inlet_pressure"]:
        raise CannotCalculateError("calc-drop-above-inlet", "allowed_drop")
    flow = base_flow(given["gas_load"], _heating_value(given))
    barometer = barometric_pressure(given["altitude"])
    line = _line(given, absolute_pressure(given["inlet_pressure"], barometer))
    least = pressure_left(line.inlet, given["allowed_drop"])
    for name, diameter in SCHEDULE_40.items():
        length = _run(given).equivalent(diameter)
        outlet = line.outlet(flow, diameter, length)
        if outlet > least:
            return {
                "pipe_size": name,
                "least_diameter": line.diameter(flow, least, length),
                "drop": pressure_lost(line.inlet, outlet),
                "outlet_pressure": gauge_pressure(outlet, barometer),
                "capacity": _heat(given, line.flow(least, diameter, length)),
                "base_gas_flow": flow,
                "equivalent_length": length,
            }
    raise CannotCalculateError("calc-no-pipe", "gas_load")


def _run(given: Mapping[str, Any]) -> Run:
    return Run(given["pipe_length"], given["elbows"], given["tees"], given["valves"])


def _line(given: Mapping[str, Any], inlet: Number) -> Line:
    high = bool(given["inlet_pressure"] >= HIGH_PRESSURE)
    return Line(given["gas"], gas_factor(given["gas"], given["relative_density"]), inlet, high)


def _heating_value(given: Mapping[str, Any]) -> Number:
    known = given["heating_value"]
    return CODE_GASES[given["gas"]].heating_value if known is None else known


def _heat(given: Mapping[str, Any], flow: Number) -> Number:
    return flow_input(flow, heating_value=_heating_value(given), factor=1.0)


def remark_drop(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """Whether enough arrives."""
    least = used["unit_least"]
    left = results["outlet_pressure"]
    if left <= 0:
        return SIZED, Note("calc-nothing-left", {})
    if least is not None and left < least:
        return SIZED, Note("calc-too-little-left", {"left": left, "least": least})
    return (SIZED,)


def remark_size(_: Mapping[str, Any], __: Mapping[str, Any]) -> tuple[Note, ...]:
    """Whose word counts."""
    return (SIZED,)


GIVEN = (
    Input("gas", choices=tuple(CODE_GASES), default="natural gas"),
    Input("gas_load", "heat"),
    Input("pipe_length", "length"),
    Input("elbows", "number", default=0.0),
    Input("tees", "number", default=0.0),
    Input("valves", "number", default=0.0),
    Input("inlet_pressure", "pressure"),
)
GAS_OWN = (
    Input("heating_value", "heating value", optional=True),
    Input("relative_density", optional=True),
    Input("altitude", "length", default=0.0, signed=True),
)

PIPE_DROP = Calculation(
    name="pipe-drop",
    work=pipe_drop,
    inputs=(
        Input("pipe_size", choices=tuple(SCHEDULE_40)),
        *GIVEN,
        Input("unit_least", "pressure", optional=True),
        *GAS_OWN,
        Input("regulator_capacity", "heat", optional=True),
        Input("regulator_droop", "fraction", default=DROOP),
        Input("lock_up_rise", "fraction", default=LOCK_UP),
    ),
    outputs=(
        Output("drop", "pressure"),
        Output("outlet_pressure", "pressure"),
        Output("regulated_pressure", "pressure"),
        Output("lock_up", "pressure"),
        Output("capacity", "heat"),
        Output("base_gas_flow", "gas flow"),
        Output("equivalent_length", "length"),
        Output("pressures", "pressure"),
        Output("air_pressure", "absolute pressure"),
    ),
    remark=remark_drop,
    picture="pipe",
)

PIPE_SIZE = Calculation(
    name="pipe-size",
    work=pipe_size,
    inputs=(*GIVEN, Input("allowed_drop", "pressure"), *GAS_OWN),
    outputs=(
        Output("pipe_size", "word"),
        Output("least_diameter", "size"),
        Output("drop", "pressure"),
        Output("outlet_pressure", "pressure"),
        Output("capacity", "heat"),
        Output("base_gas_flow", "gas flow"),
        Output("equivalent_length", "length"),
    ),
    remark=remark_size,
)
