"""Input by clocking the meter."""

from typing import Any

from lightoff.calculations.calculation import Calculation, Input, Output
from lightoff.formula import Number
from lightoff.physics.atmosphere import barometric_pressure
from lightoff.physics.meter import (
    absolute_pressure,
    base_volume_factor,
    clocked_volume,
    metered_flow,
    metered_input,
)


def clocking(
    *,
    dial: Number,
    turns: Number,
    seconds: Number,
    heating_value: Number,
    gas_temperature: Number,
    gas_pressure: Number,
    altitude: Number,
) -> dict[str, Any]:
    """Whole turns of one dial, counted for a time, at the gas's own pressure and temperature."""
    volume = clocked_volume(dial, turns)
    absolute = absolute_pressure(gas_pressure, barometric_pressure(altitude))
    factor = base_volume_factor(absolute, gas_temperature)
    burnt = metered_input(
        volume=volume, seconds=seconds, heating_value=heating_value, factor=factor
    )
    return {"input": burnt, "gas_flow": metered_flow(volume, seconds), "factor": factor}


CLOCKING = Calculation(
    name="clocking",
    work=clocking,
    inputs=(
        Input("dial", "volume"),
        Input("turns", "number"),
        Input("seconds", "time"),
        Input("heating_value", "heating value", default=38.4e6),
        Input("gas_temperature", "temperature", default=288.706),
        Input("gas_pressure", "pressure", default=1743.6),
        Input("altitude", "length", default=0.0),
    ),
    outputs=(Output("input", "heat"), Output("gas_flow", "gas flow"), Output("factor")),
)
