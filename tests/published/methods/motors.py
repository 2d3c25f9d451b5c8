"""Motors."""

from typing import Any

from lightoff.physics import electricity, motor, motor_current, motor_tables
from published.cases import Given, Method


def unbalance(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {
        "unbalance": electricity.unbalance(*given["V"]),
        "mean": electricity.mean_of_three(*given["V"]),
    }


def derating(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"factor": [electricity.unbalance_derating(u) for u in given["unbalance"]]}


def current_unbalance(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return dict(electricity.current_unbalance(given["unbalance_V"])._asdict())


def variation(_: Given, __: dict[str, str]) -> dict[str, Any]:
    return {
        "dV": electricity.VOLTS_VARIATION,
        "df": electricity.FREQUENCY_VARIATION,
        "sum": electricity.COMBINED_VARIATION,
    }


def three_phase_amps(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {f"I_{volts}V": motor_tables.code_amps(given["P"], volts, 3)
            for volts in motor_tables.THREE_PHASE_VOLTS}  # fmt: skip


def single_phase_amps(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {f"I_{volts}V": motor_tables.code_amps(given["P"], volts, 1)
            for volts in motor_tables.SINGLE_PHASE_VOLTS}  # fmt: skip


def code_letters(given: Given, _: dict[str, str]) -> dict[str, Any]:
    letters = list(motor_tables.CODE_LETTERS)
    ranges = [motor_tables.locked_rotor_range(letters[int(i) - 1]) for i in given["index"]]
    return {"low": [low for low, _ in ranges], "high": [high for _, high in ranges]}


def locked_rotor(given: Given, _: dict[str, str]) -> dict[str, Any]:
    low, high = (
        motor_current.locked_rotor_amps(given["P"], code=code, volts=given["V"], phases=3)
        for code in motor_tables.locked_rotor_range("G")
    )
    return {"I_low": low, "I_high": high}


def three_phase_power(given: Given, _: dict[str, str]) -> dict[str, Any]:
    apparent = electricity.apparent_power(given["V"], given["I"], phases=3)
    return {"S": apparent, "P": electricity.electric_power(apparent, given["pf"])}


def output(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"P_out": motor.motor_output(given["P_in"], given["eta"])}


def least_efficiency(given: Given, _: dict[str, str]) -> dict[str, Any]:
    def of(enclosed: bool) -> list[float | None]:
        poles = (int(p) for p in given["poles"])
        return [motor_tables.least_efficiency(given["P"], p, enclosed=enclosed) for p in poles]

    return {"open": of(False), "enclosed": of(True)}


def part_load(given: Given, _: dict[str, str]) -> dict[str, Any]:
    """Points of efficiency lost against full load, for a motor of 90 %."""
    return {"drop": [0.90 - motor.efficiency_at_load(load, 0.90) for load in given["load"]]}


def service_factor(given: Given, _: dict[str, str]) -> dict[str, Any]:
    return {"P_max": motor.service_factor_power(given["P"], given["SF"])}


METHODS: tuple[tuple[str, Method], ...] = (
    (r"mo-unbalance-.*", unbalance),
    (r"mo-derating", derating),
    (r"mo-current-unbalance", current_unbalance),
    (r"mo-voltage-range", variation),
    (r"mo-nec250-.*", three_phase_amps),
    (r"mo-nec248-.*", single_phase_amps),
    (r"mo-code-letters", code_letters),
    (r"mo-lra-g", locked_rotor),
    (r"mo-3ph-power", three_phase_power),
    (r"mo-output", output),
    (r"mo-eff-.*", least_efficiency),
    (r"mo-part-load", part_load),
    (r"mo-fuses-unused", service_factor),
)
