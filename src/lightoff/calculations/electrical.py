"""Unbalance of the supply, and the drop on a control circuit."""

from collections.abc import Mapping
from typing import Any

from lightoff.calculations.calculation import (
    Calculation,
    CannotCalculateError,
    Input,
    Note,
    Output,
)
from lightoff.formula import Number
from lightoff.physics import wiring
from lightoff.physics.electricity import (
    apparent_power,
    current_unbalance,
    mean_of_three,
    unbalance,
    unbalance_derating,
)
from lightoff.physics.motor import derated_power

DERATED_ABOVE = 0.01  # [1] NEMA MG 1
NEVER_ABOVE = 0.05  # [1] NEMA MG 1
LEAST_COIL_VOLTS = 21.0  # [V] on a 24 V circuit; common practice, no source
QUALIFIED = Note("calc-live-work", {})
GAUGES = tuple(f"{n} AWG" for n in (22, 20, 18, 16, 14, 12, 10))
LAY = {"solid": wiring.SOLID, "stranded": wiring.STRANDED}


def supply_unbalance(
    *, volts_ab: Number, volts_bc: Number, volts_ca: Number, motor_power: Number | None
) -> dict[str, Any]:
    """How uneven the three volts are, and what a motor may give on them."""
    volts = {"volts_ab": volts_ab, "volts_bc": volts_bc, "volts_ca": volts_ca}
    for name, each in volts.items():
        if not each > 0:
            raise CannotCalculateError("calc-no-volts", name)
    share = unbalance(*volts.values())
    found: dict[str, Any] = {"unbalance": share, "mean_volts": mean_of_three(*volts.values())}
    if share > NEVER_ABOVE:
        return found
    low, high = current_unbalance(share)
    found |= {"current_unbalance_least": low, "current_unbalance_most": high}
    factor = unbalance_derating(share)
    found["unbalance_derating"] = factor
    if motor_power is not None:
        found["power_allowed"] = derated_power(motor_power, factor)
    return found


def remark_unbalance(_: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """What this unbalance asks for."""
    share = results["unbalance"]
    if share > NEVER_ABOVE:
        return QUALIFIED, Note("calc-unbalance-stop", {"limit": NEVER_ABOVE})
    if share > DERATED_ABOVE:
        return QUALIFIED, Note("calc-unbalance-derate", {"limit": DERATED_ABOVE})
    return (QUALIFIED,)


def control_circuit(
    *,
    control_volts: Number,
    control_amps: Number,
    wire: str,
    strands: str,
    wire_length: Number,
    wire_temperature: Number,
    transformer_power: Number | None,
) -> dict[str, Any]:
    """What the wire leaves of the volts for the coil, and of the transformer for more."""
    if not control_amps > 0:
        raise CannotCalculateError("calc-no-current", "control_amps")
    area = wiring.wire_area(wiring.awg_diameter(float(wire.split()[0])))
    cold = wiring.wire_resistance(area, lay=LAY[strands])
    resistance = wiring.resistance_at(cold, wire_temperature)
    drop = wiring.two_wire_drop(wire_length, control_amps, resistance=resistance)
    load = apparent_power(control_volts, control_amps, phases=1.0)
    found = {
        "voltage_drop": drop,
        "coil_volts": wiring.volts_left(control_volts, drop),
        "control_power": load,
    }
    if control_volts > LEAST_COIL_VOLTS:
        allowed = wiring.drop_allowed(control_volts, LEAST_COIL_VOLTS)
        found["longest_wire"] = wiring.length_for_drop(allowed, control_amps, resistance=resistance)
    if transformer_power is None:
        return found
    return found | {
        "transformer_load": wiring.transformer_load(load, transformer_power),
        "transformer_reserve": wiring.transformer_reserve(load, transformer_power),
    }


def remark_control(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """Whether the coil gets enough, and whether the transformer can give it."""
    notes = [QUALIFIED]
    if results["coil_volts"] < LEAST_COIL_VOLTS:
        notes.append(Note("calc-coil-low", {"least": LEAST_COIL_VOLTS}))
    if results.get("transformer_load", 0.0) > 1:
        notes.append(Note("calc-transformer-full", {}))
    if (used["transformer_power"] or 0.0) > wiring.CLASS_2_POWER:
        notes.append(Note("calc-not-class-2", {"limit": wiring.CLASS_2_POWER}))
    return tuple(notes)


UNBALANCE = Calculation(
    name="unbalance",
    work=supply_unbalance,
    inputs=(
        Input("volts_ab", "voltage"),
        Input("volts_bc", "voltage"),
        Input("volts_ca", "voltage"),
        Input("motor_power", "shaft power", optional=True),
    ),
    outputs=(
        Output("unbalance", "fraction"),
        Output("mean_volts", "voltage"),
        Output("unbalance_derating", "fraction"),
        Output("power_allowed", "shaft power"),
        Output("current_unbalance_least", "fraction"),
        Output("current_unbalance_most", "fraction"),
    ),
    remark=remark_unbalance,
)

CONTROL_CIRCUIT = Calculation(
    name="control-circuit",
    work=control_circuit,
    inputs=(
        Input("control_volts", "voltage", default=24.0),
        Input("control_amps", "current"),
        Input("wire", choices=GAUGES, default="18 AWG"),
        Input("strands", choices=tuple(LAY), default="solid"),
        Input("wire_length", "length"),
        Input("wire_temperature", "temperature", default=348.15),
        Input("transformer_power", "apparent power", optional=True),
    ),
    outputs=(
        Output("coil_volts", "voltage"),
        Output("voltage_drop", "voltage"),
        Output("longest_wire", "length"),
        Output("control_power", "apparent power"),
        Output("transformer_load", "fraction"),
        Output("transformer_reserve", "apparent power"),
    ),
    remark=remark_control,
)
