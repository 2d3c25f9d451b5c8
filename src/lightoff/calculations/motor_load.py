"""What a motor gives, from its volts and amps, and again from its speed."""

from collections.abc import Mapping
from typing import Any

from lightoff.calculations.calculation import (
    Calculation,
    CannotCalculateError,
    Input,
    Note,
    Output,
)
from lightoff.calculations.electrical import QUALIFIED
from lightoff.formula import Number
from lightoff.physics import (
    motor,
    motor_current,
    motor_speed,
)
from lightoff.physics.electricity import (
    COMBINED_VARIATION,
    FREQUENCY_VARIATION,
    TOTAL_DROP,
    VOLTS_VARIATION,
    apparent_power,
    power_factor,
    sag,
)
from lightoff.physics.frequency_drive import drive_power, flux, volts_in_step
from lightoff.physics.motor_tables import (
    CODE_LETTERS,
    code_amps,
    least_efficiency,
    locked_rotor_range,
)

USUAL_POLES = 4  # where the plate's speed is not told
BLIND = 0.5  # [1] of full load: below, amps say little
APART = 0.25  # [1] two loads that differ more cannot both be right: slip 20 %, amps 10 %
PAST = 1.01  # [1] of the limit: plates are rounded
PLATE_LOW, PLATE_HIGH = 0.6, 1.25  # [1] plate amps over the code's; engineering judgement


def motor_load(**given: Any) -> dict[str, Any]:
    """The plate's one point, carried by the motor's own losses and reactance to today's amps."""
    return {
        **_by_amps(given),
        "power_limit": _limit(given),
        **_by_speed(given),
        **_starting(given),
        **_sag(given),
    }


def _by_amps(given: Mapping[str, Any]) -> dict[str, Number]:
    """Volts and amps to electric power, and that to shaft power."""
    if not given["motor_amps"] > 0:
        raise CannotCalculateError("calc-no-current", "motor_amps")
    volts, amps = given["terminal_volts"], given["motor_amps"]
    efficiency = _efficiency(given)
    power = motor_current.motor_input(
        volts=volts,
        amps=amps,
        phases=given["phases"],
        rated_amps=given["full_load_amps"],
        rated_volts=volts_in_step(given["frequency"], **_step(given)),
        power_factor=_power_factor(given, efficiency),
    )
    load = motor.load_of_input(power, rated_power=given["motor_power"], efficiency=efficiency)
    return {
        "electric_power": power,
        "motor_output": motor.motor_output(power, motor.efficiency_at_load(load, efficiency)),
        "motor_load": load,
        "running_power_factor": power_factor(
            power, apparent_power(volts, amps, phases=given["phases"])
        ),
    }


def _step(given: Mapping[str, Any]) -> dict[str, Number]:
    return {"rated_volts": given["motor_volts"], "rated_frequency": given["base_frequency"]}


def _efficiency(given: Mapping[str, Any]) -> Number:
    """The plate's; without one the least the law allows."""
    if given["motor_efficiency"] is not None:
        return given["motor_efficiency"]
    found = least_efficiency(
        float(given["motor_power"]), _poles(given), phases=round(float(given["phases"]))
    )
    if found is None:
        raise CannotCalculateError("calc-no-efficiency", "motor_efficiency")
    return found


def _power_factor(given: Mapping[str, Any], efficiency: Number) -> Number:
    """The plate's; without one what the rest of the plate implies."""
    if given["motor_power_factor"] is not None:
        return given["motor_power_factor"]
    return motor_current.plate_power_factor(
        rated_power=given["motor_power"],
        efficiency=efficiency,
        rated_volts=given["motor_volts"],
        rated_amps=given["full_load_amps"],
        phases=given["phases"],
    )


def _by_speed(given: Mapping[str, Any]) -> dict[str, Number]:
    """Slip, and the load it stands for, where both speeds are told."""
    rated_speed, speed = given["rated_speed"], given["motor_speed"]
    if rated_speed is None or speed is None:
        return {}
    poles = _poles(given)
    field = motor_speed.synchronous_speed(given["frequency"], poles)
    rated_field = motor_speed.synchronous_speed(given["base_frequency"], poles)
    load = motor_speed.load_by_speed(
        motor_speed.slip_speed(speed, field),
        motor_speed.slip_speed(rated_speed, rated_field),
        flux=flux(given["terminal_volts"], given["frequency"], **_step(given)),
    )
    return {"slip": motor_speed.slip(speed, field), "load_by_speed": load}


def _starting(given: Mapping[str, Any]) -> dict[str, Number]:
    """Amps as it is switched on, where the plate has a code letter."""
    if given["code_letter"] is None:
        return {}
    at = {"volts": given["motor_volts"], "phases": given["phases"]}
    low, high = (
        motor_current.locked_rotor_amps(given["motor_power"], code=code, **at)
        for code in locked_rotor_range(given["code_letter"])
    )
    return {"starting_amps_least": low, "starting_amps_most": high}


def _sag(given: Mapping[str, Any]) -> dict[str, Number]:
    if given["open_volts"] is None:
        return {}
    return {"supply_sag": sag(given["open_volts"], given["terminal_volts"])}


def _limit(given: Mapping[str, Any]) -> Number:
    """Most shaft power: what a drive's hertz leave; on the line the service factor's."""
    frequency, base = given["frequency"], given["base_frequency"]
    power, service_factor = given["motor_power"], given["service_factor"]
    if service_factor is not None and frequency == base:
        return motor.service_factor_power(power, service_factor)
    return drive_power(frequency, rated_frequency=base, rated_power=power)


def _poles(given: Mapping[str, Any]) -> int:
    """Poles of a motor: its field is the slowest one that is still faster than the motor."""
    field, speed = 60 * given["base_frequency"], given["rated_speed"]
    if speed is None:
        return USUAL_POLES
    pairs = int(field / speed) if speed > 0 else 0
    if pairs < 1 or field == pairs * speed:
        raise CannotCalculateError("calc-no-poles", "rated_speed")
    return 2 * pairs


def remark(used: Mapping[str, Any], results: Mapping[str, Any]) -> tuple[Note, ...]:
    """What is wrong with the plate, the supply, the load or the way it was found."""
    found = (*_plate(used), *_supply(used, results), *_load(results))
    return (QUALIFIED, *found)


def _plate(used: Mapping[str, Any]) -> list[Note]:
    notes = []
    power, phases = used["motor_power"], round(used["phases"])
    if used["motor_efficiency"] is None:
        notes.append(Note("calc-efficiency-of-law", {"efficiency": _efficiency(used)}, advice=True))
    usual = code_amps(power, used["motor_volts"], phases)
    if usual and not PLATE_LOW < used["full_load_amps"] / usual < PLATE_HIGH:
        notes.append(Note("calc-plate-amps", {"usual": usual}))
    return notes


def _supply(used: Mapping[str, Any], results: Mapping[str, Any]) -> list[Note]:
    hertz = used["frequency"] / used["base_frequency"]
    step = hertz if on_drive(used) else 1.0
    volts = used["terminal_volts"] / (used["motor_volts"] * step)
    notes = [Note("calc-drive-reading", {})] if on_drive(used) else []
    together = abs(volts - 1) + (0.0 if on_drive(used) else abs(hertz - 1))
    if abs(volts - 1) > VOLTS_VARIATION or together > COMBINED_VARIATION:
        notes.append(Note("calc-volts-off", {"limit": VOLTS_VARIATION}))
    if results.get("supply_sag", 0.0) > TOTAL_DROP:
        notes.append(Note("calc-supply-sags", {"limit": TOTAL_DROP}))
    return notes


def on_drive(used: Mapping[str, Any]) -> bool:
    """Further from the plate's hertz than any supply may be."""
    return bool(abs(used["frequency"] / used["base_frequency"] - 1) > FREQUENCY_VARIATION)


def _load(results: Mapping[str, Any]) -> list[Note]:
    notes = []
    load, by_speed = results["motor_load"], results.get("load_by_speed")
    if results["motor_output"] > PAST * results["power_limit"]:
        notes.append(Note("calc-motor-overloaded", {"limit": results["power_limit"]}))
    if load < BLIND:
        notes.append(Note("calc-light-load", {}, advice=True))
    elif by_speed is not None and abs(by_speed - load) > APART:
        notes.append(Note("calc-loads-differ", {"amps": load, "speed": by_speed}))
    return notes


MOTOR_LOAD = Calculation(
    name="motor-load",
    work=motor_load,
    inputs=(
        Input("motor_amps", "current"),
        Input("terminal_volts", "voltage"),
        Input("motor_power", "shaft power"),
        Input("motor_volts", "voltage"),
        Input("full_load_amps", "current"),
        Input("motor_efficiency", "fraction", optional=True, most=1.0),
        Input("motor_power_factor", "fraction", optional=True, most=1.0),
        Input("phases", default=3.0),
        Input("rated_speed", "rotational speed", optional=True),
        Input("motor_speed", "rotational speed", optional=True),
        Input("frequency", "frequency", default=60.0),
        Input("base_frequency", "frequency", default=60.0),
        Input("service_factor", optional=True),
        Input("code_letter", choices=tuple(CODE_LETTERS), optional=True),
        Input("open_volts", "voltage", optional=True),
    ),
    outputs=(
        Output("motor_load", "fraction"),
        Output("motor_output", "shaft power"),
        Output("electric_power", "electric power"),
        Output("running_power_factor", "fraction"),
        Output("power_limit", "shaft power"),
        Output("slip", "fraction"),
        Output("load_by_speed", "fraction"),
        Output("starting_amps_least", "current"),
        Output("starting_amps_most", "current"),
        Output("supply_sag", "fraction"),
    ),
    remark=remark,
)
