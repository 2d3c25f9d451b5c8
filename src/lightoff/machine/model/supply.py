"""Gas before the unit, and what its meter shows."""

from collections.abc import Mapping

from lightoff.formula import Number
from lightoff.formula.elementary import maximum, where
from lightoff.machine.model.air import Air
from lightoff.machine.model.rated import Rated
from lightoff.physics.constants import GAS_BASE_TEMPERATURE
from lightoff.physics.gas_input import flow_for_input
from lightoff.physics.meter import absolute_pressure, base_volume_factor, expected_time

NO_GAS = 1e-6  # [1] of the unit's input: less than that turns no dial
LOSS_EXPONENT = 1.8  # [1] exponent of pressure lost on flow: droop straight, pipe 1.85; judgement


def supply_pressure(values: Mapping[str, Number], load: Number) -> Number:
    """Gas pressure before the unit [Pa] under a load, heat flow over the unit's own.

    The regulator rises to lock-up when nothing flows; under load it droops, and the pipe takes its
    part.
    """
    flowing = values["gas.set"] - values["gas.lost"] * maximum(load, 0.0) ** LOSS_EXPONENT
    return where(load > NO_GAS, flowing, values["gas.set"] + values["gas.lock_up"])


def meter_pressure(values: Mapping[str, Number], load: Number) -> Number:
    """Gas pressure at the meter [Pa]: some of what is lost is lost behind it."""
    behind = values["gas.lost_behind_meter"] * values["gas.lost"]
    pipe = behind * maximum(load, 0.0) ** LOSS_EXPONENT
    return supply_pressure(values, load) + pipe + values["gas.meter_higher"]


def meter_seconds(
    rated: Rated, values: Mapping[str, Number], air: Air, dial: float, heat: Number
) -> Number:
    """Time of one turn of the meter's dial [m3] for a heat flow [W]."""
    compensated = rated.machine.site.meter_compensated
    temperature = GAS_BASE_TEMPERATURE if compensated else air.of_pipes(values["gas.meter_warmer"])
    whole = sum(burner.input for burner in rated.burners)
    pressure = absolute_pressure(meter_pressure(values, heat / whole), air.barometer)
    factor = base_volume_factor(pressure, temperature) * values["meter.factor"]
    flow = flow_for_input(
        maximum(heat, NO_GAS * whole), heating_value=values["gas.heating_value"], factor=factor
    )
    return expected_time(dial, flow=flow, other_flow=values["gas.meter.other_flow"])
