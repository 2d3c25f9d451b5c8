"""Unbalance, motors and control circuits as a technician asks for them."""

from typing import Any

import pytest

from lightoff.calculations import CALCULATIONS, CannotCalculateError, calculate
from lightoff.quantity import si


def answer(name: str, **given: Any) -> Any:
    return calculate(CALCULATIONS[name], given)


def said(name: str, **given: Any) -> list[str]:
    return [note.message for note in answer(name, **given).notes]


def refused(name: str, **given: Any) -> tuple[str, str | None]:
    with pytest.raises(CannotCalculateError) as refusal:
        answer(name, **given)
    return refusal.value.message, refusal.value.place


VOLTS = {"volts_ab": 462.0, "volts_bc": 463.0, "volts_ca": 455.0}


def test_the_unbalance_of_the_standards_own_example() -> None:
    """NEMA definition, the numbers of the US DOE tip sheet (mo-unbalance-nema): 1.1 %."""
    found = answer("unbalance", **VOLTS, motor_power=7457.0).results
    assert found["unbalance"] == pytest.approx(0.011, abs=5e-4)
    assert found["mean_volts"] == pytest.approx(460.0)
    assert 0.99 * 7457 < found["power_allowed"] < 7457
    assert found["current_unbalance_most"] == pytest.approx(0.109, abs=1e-3)
    assert "calc-unbalance-derate" in said("unbalance", **VOLTS)


def test_even_volts_ask_for_nothing() -> None:
    even = dict.fromkeys(VOLTS, 460.0)
    assert answer("unbalance", **even).results["unbalance_derating"] == 1.0
    assert said("unbalance", **even) == ["calc-live-work"]


def test_above_five_percent_no_power_is_allowed_at_all() -> None:
    bad = VOLTS | {"volts_ca": 400.0}
    found = answer("unbalance", **bad, motor_power=7457.0)
    assert "calc-unbalance-stop" in [note.message for note in found.notes]
    assert "power_allowed" not in found.results


def test_a_lost_phase_is_no_unbalance() -> None:
    assert refused("unbalance", **VOLTS | {"volts_bc": 0.0}) == ("calc-no-volts", "volts_bc")


# an invented plate; 460 V, 12.4 A and 91.7 % are those of the published case mo-3ph-power
PLATE = {
    "motor_power": si(10, "hp"),
    "motor_volts": 460.0,
    "full_load_amps": 12.4,
    "motor_efficiency": 0.917,
}


def test_full_load_amps_are_full_load() -> None:
    """mo-output: 8.10 kW at power factor 0.82 and 91.7 % are 9.96 hp."""
    found = answer(
        "motor-load", motor_amps=12.4, terminal_volts=460.0, motor_power_factor=0.82, **PLATE
    ).results
    assert found["electric_power"] == pytest.approx(8101.2866, rel=1e-6)
    assert found["motor_output"] == pytest.approx(si(9.962292, "hp"), rel=1e-3)
    assert found["running_power_factor"] == pytest.approx(0.82)


def test_half_load_is_not_half_the_amps() -> None:
    """US DOE's motor tool: a 10 hp, 4-pole motor draws 0.604 of its amps at half load."""
    found = answer("motor-load", motor_amps=0.604 * 12.4, terminal_volts=460.0, **PLATE).results
    assert found["motor_load"] == pytest.approx(0.5, abs=0.025)
    assert found["running_power_factor"] < 0.72


def test_speed_is_a_second_witness() -> None:
    speeds = {"rated_speed": 1760.0, "motor_speed": 1770.0}
    given = {"motor_amps": 9.8, "terminal_volts": 460.0, **PLATE, **speeds}
    found = answer("motor-load", **given).results
    assert found["slip"] == pytest.approx(30 / 1800)
    assert found["load_by_speed"] == pytest.approx(0.75)
    assert found["motor_load"] == pytest.approx(0.75, abs=0.02)
    assert "calc-loads-differ" not in said("motor-load", **given)
    assert "calc-loads-differ" in said("motor-load", **given | {"motor_speed": 1790.0})


def test_six_poles_are_known_by_their_speed() -> None:
    speeds = {"rated_speed": 1165.0, "motor_speed": 1165.0}
    found = answer("motor-load", motor_amps=12.4, terminal_volts=460.0, **PLATE, **speeds).results
    assert found["slip"] == pytest.approx(35 / 1200)


@pytest.mark.parametrize("speed", [1800.0, 3700.0, 0.0, -10.0])
def test_a_plate_speed_that_no_induction_motor_has_is_refused(speed: float) -> None:
    given = {"motor_amps": 9.8, "terminal_volts": 460.0, **PLATE, "rated_speed": speed}
    given["motor_speed"] = 1700.0
    assert refused("motor-load", **given) == ("calc-no-poles", "rated_speed")


def test_without_the_plates_efficiency_the_laws_is_taken_and_said() -> None:
    """10 CFR 431.25: 91.7 % of an enclosed 10 hp motor with four poles."""
    plate = {name: value for name, value in PLATE.items() if name != "motor_efficiency"}
    found = answer("motor-load", motor_amps=12.4, terminal_volts=460.0, **plate)
    told = {note.message: note.values for note in found.notes}
    assert told["calc-efficiency-of-law"]["efficiency"] == 0.917
    odd = plate | {"motor_power": si(11.2, "hp")}
    assert refused("motor-load", motor_amps=9.0, terminal_volts=460.0, **odd) == (
        "calc-no-efficiency",
        "motor_efficiency",
    )


def test_on_a_drive_volts_in_step_are_right_and_line_volts_are_not() -> None:
    slow = {"motor_amps": 9.8, "frequency": 45.0, **PLATE}
    told = said("motor-load", terminal_volts=345.0, **slow)
    assert "calc-drive-reading" in told
    assert "calc-volts-off" not in told
    assert "calc-volts-off" in said("motor-load", terminal_volts=460.0, **slow)
    found = answer("motor-load", terminal_volts=345.0, **slow).results
    assert found["power_limit"] == pytest.approx(0.75 * si(10, "hp"))


def test_a_230_v_motor_on_208_v_is_said_at_its_limit() -> None:
    """NEMA MG 1: within 10 % of the plate; 208 is 9.6 % under 230, 200 is 13 %."""
    motor = {"motor_volts": 230.0, "motor_amps": 20.0, **PLATE, "full_load_amps": 24.8}
    motor["motor_volts"] = 230.0
    assert "calc-volts-off" not in said("motor-load", terminal_volts=208.0, **motor)
    assert "calc-volts-off" in said("motor-load", terminal_volts=200.0, **motor)


def test_too_much_is_said_and_the_service_factor_counts() -> None:
    hot = {"motor_amps": 13.8, "terminal_volts": 460.0, **PLATE}
    assert "calc-motor-overloaded" in said("motor-load", **hot)
    assert "calc-motor-overloaded" not in said("motor-load", **hot, service_factor=1.15)


def test_light_load_sagging_supply_and_a_misread_plate_are_said() -> None:
    light = {"motor_amps": 5.5, "terminal_volts": 460.0, **PLATE}
    assert "calc-light-load" in said("motor-load", **light)
    assert "calc-supply-sags" in said("motor-load", **light, open_volts=490.0)
    wrong = light | {"full_load_amps": 28.0, "motor_amps": 20.0}
    assert "calc-plate-amps" in said("motor-load", **wrong)


def test_starting_amps_by_the_code_letter() -> None:
    """mo-lra-g: 70.3 to 78.9 A."""
    found = answer("motor-load", motor_amps=9.8, terminal_volts=460.0, code_letter="G", **PLATE)
    assert found.results["starting_amps_least"] == pytest.approx(70.28612, rel=1e-6)
    assert found.results["starting_amps_most"] == pytest.approx(78.946374, rel=1e-6)


def test_no_amps_no_motor() -> None:
    assert refused("motor-load", motor_amps=0.0, terminal_volts=460.0, **PLATE) == (
        "calc-no-current",
        "motor_amps",
    )


def test_a_single_phase_motor_counts_one_phase() -> None:
    """3/4 hp at 115 V, 13.8 A (NEC 430.248) and 81.8 % (10 CFR 431.446): power factor 0.43."""
    plate = {"motor_power": si(0.75, "hp"), "motor_volts": 115.0, "full_load_amps": 13.8}
    found = answer("motor-load", motor_amps=13.8, terminal_volts=115.0, phases=1.0, **plate).results
    assert found["running_power_factor"] == pytest.approx(
        si(0.75, "hp") / 0.818 / (115 * 13.8), rel=1e-6
    )
    assert found["motor_load"] == pytest.approx(1.0)


RUN = {"control_amps": 1.5, "wire": "18 AWG", "wire_length": si(150, "ft")}


def test_a_24_volt_circuit_by_the_codes_resistance() -> None:
    """wi-drop-18-150ft: 3.4965 V lost of 24, on a table of three figures."""
    found = answer("control-circuit", **RUN).results
    assert found["voltage_drop"] == pytest.approx(3.4965, rel=2e-3)
    assert found["coil_volts"] == pytest.approx(20.5035, rel=1e-3)
    assert "calc-coil-low" in said("control-circuit", **RUN)


def test_the_longest_wire_leaves_just_enough() -> None:
    longest = answer("control-circuit", **RUN).results["longest_wire"]
    found = answer("control-circuit", **RUN | {"wire_length": longest}).results
    assert found["coil_volts"] == pytest.approx(21.0)
    weak = answer("control-circuit", **RUN, control_volts=20.0).results
    assert "longest_wire" not in weak


def test_what_the_transformer_still_has() -> None:
    found = answer("control-circuit", **RUN, transformer_power=40.0).results
    assert found["control_power"] == pytest.approx(36.0)
    assert found["transformer_load"] == pytest.approx(0.9)
    assert found["transformer_reserve"] == pytest.approx(4.0)
    assert "calc-transformer-full" in said("control-circuit", **RUN, transformer_power=30.0)
    assert "calc-not-class-2" in said("control-circuit", **RUN, transformer_power=150.0)


def test_stranded_wire_is_a_little_worse() -> None:
    solid, stranded = (
        answer("control-circuit", **RUN, strands=strands).results["voltage_drop"]
        for strands in ("solid", "stranded")
    )
    assert stranded / solid == pytest.approx(1.02)


def test_nothing_flows_nothing_is_lost() -> None:
    assert refused("control-circuit", **RUN | {"control_amps": 0.0}) == (
        "calc-no-current",
        "control_amps",
    )


@pytest.mark.parametrize("name", ["unbalance", "motor-load", "control-circuit"])
def test_live_measurements_are_for_the_qualified(name: str) -> None:
    given = {
        "unbalance": VOLTS,
        "motor-load": {"motor_amps": 12.4, "terminal_volts": 460.0, **PLATE},
        "control-circuit": RUN,
    }[name]
    assert "calc-live-work" in said(name, **given)
