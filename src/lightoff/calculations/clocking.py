"""Input by clocking the meter."""

from collections.abc import Mapping
from math import ceil
from typing import Any

from lightoff.calculations.calculation import (
    Calculation,
    CannotCalculateError,
    Input,
    Note,
    Output,
)
from lightoff.formula import Number
from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.gas_input import flow_for_input, flow_input, input_share
from lightoff.physics.meter import (
    absolute_pressure,
    base_volume_factor,
    clocked_volume,
    compensated_volume_factor,
    expected_time,
    flow_less_others,
    flow_resolution,
    metered_flow,
)

SHORTEST = 60.0  # [s] to clock for; common practice, no source
STOPWATCH = 1.0  # [s] a hand tells no finer; common practice, no source
OVER, UNDER = 1.05, 0.95  # [1] of the input allowed; common practice, no source


def clocking(
    *,
    dial: Number,
    turns: Number,
    seconds: Number,
    heating_value: Number,
    meter: str,
    gas_temperature: Number,
    gas_pressure: Number,
    altitude: Number,
    other_flow: Number,
    rated_input: Number | None,
) -> dict[str, Any]:
    """Turns of one dial, counted for a time, at the gas's own pressure and temperature."""
    volume = clocked_volume(dial, turns)
    metered = metered_flow(volume, seconds)
    if not other_flow < metered:
        raise CannotCalculateError("calc-other-flow", "other_flow", flow=float(metered))
    absolute = absolute_pressure(gas_pressure, barometric_pressure(altitude))
    factor = (
        compensated_volume_factor(absolute)
        if meter == "compensated"
        else base_volume_factor(absolute, gas_temperature)
    )
    gas = {"heating_value": heating_value, "factor": factor}
    flow = flow_less_others(metered, other_flow)
    step = flow_resolution(metered, seconds=seconds, step=STOPWATCH)
    burnt = flow_input(flow, **gas)
    found = {
        "input": burnt,
        "gas_flow": flow,
        "factor": factor,
        "one_second": flow_input(step, **gas),
    }
    if rated_input is None:
        return found
    wanted = flow_for_input(rated_input, **gas)
    return found | {
        "expected_seconds": expected_time(volume, flow=wanted, other_flow=other_flow),
        "input_share": input_share(burnt, rated_input),
    }


def remark(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """How it was clocked, and whether the input is what it should be."""
    turns, seconds = used["turns"], used["seconds"]
    notes = [Note("calc-clock-alone", {})]
    if seconds < SHORTEST:
        enough = ceil(turns * SHORTEST / seconds)
        notes.append(Note("calc-clock-longer", {"least": SHORTEST, "turns": str(enough)}))
    if turns != round(turns):
        notes.append(Note("calc-whole-turns", {}, advice=True))
    share = results.get("input_share", 1.0)
    if share > OVER:
        notes.append(Note("calc-input-high", {"share": share}))
    if share < UNDER:
        notes.append(Note("calc-input-low", {"share": share}))
    return tuple(notes)


CLOCKING = Calculation(
    name="clocking",
    work=clocking,
    inputs=(
        Input("dial", "volume"),
        Input("turns", "number"),
        Input("seconds", "time"),
        Input("heating_value", "heating value", default=38.4e6),
        Input("meter", choices=("not compensated", "compensated"), default="not compensated"),
        Input("gas_temperature", "temperature", default=288.706),
        Input("gas_pressure", "pressure", default=1743.6),
        Input("altitude", "length", default=0.0, signed=True),
        Input("other_flow", "gas flow", default=0.0),
        Input("rated_input", "heat", optional=True),
    ),
    outputs=(
        Output("input", "heat"),
        Output("gas_flow", "gas flow"),
        Output("factor"),
        Output("one_second", "heat"),
        Output("expected_seconds", "time"),
        Output("input_share", "fraction"),
    ),
    remark=remark,
)
