"""Clocking, orifices, manifold pressures and gas pipes as a technician asks for them."""

from typing import Any

import pytest

from lightoff.calculations import CALCULATIONS, CannotCalculateError, calculate
from lightoff.quantity import si

RATED = si(400, "kBtu/h")


def answer(name: str, **given: Any) -> Any:
    return calculate(CALCULATIONS[name], given)


def said(name: str, **given: Any) -> list[str]:
    return [note.message for note in answer(name, **given).notes]


def refused(name: str, **given: Any) -> tuple[str, str | None]:
    with pytest.raises(CannotCalculateError) as refusal:
        answer(name, **given)
    return refusal.value.message, refusal.value.place


def degF(number: float) -> float:
    return (number + 459.67) * 5 / 9


DIAL = {"dial": si(2, "ft3"), "turns": 4.0, "seconds": 72.0}


def test_clocked_at_the_gas_own_pressure_and_temperature() -> None:
    """me-corrected-1: 2 ft3 in 41.3 s, 7 in. w.c., 50 degF, 14.4 psi: 174.334 ft3/h and factor
    1.014283 at base 14.73 psi; 30 inHg is 14.7346 psi, and 14.4 psi is the air at 560 ft."""
    found = answer(
        "clocking",
        dial=si(2, "ft3"),
        turns=1.0,
        seconds=41.3,
        heating_value=si(1035, "Btu/ft3"),
        gas_temperature=degF(50),
        gas_pressure=7 * 248.84,
        altitude=170.3,
    ).results
    assert found["gas_flow"] == pytest.approx(si(174.33414, "ft3/h"), rel=1e-6)
    assert found["factor"] == pytest.approx(1.014283, rel=5e-4)
    assert found["input"] == pytest.approx(si(183013, "Btu/h"), rel=5e-4)


def test_a_compensated_meter_has_brought_the_gas_to_60_degf_itself() -> None:
    cold = DIAL | {"gas_temperature": degF(20)}
    plain, compensated = (
        answer("clocking", **cold, meter=meter).results["input"]
        for meter in ("not compensated", "compensated")
    )
    assert plain / compensated == pytest.approx(degF(60) / degF(20))


def test_other_appliances_are_taken_off() -> None:
    alone = answer("clocking", **DIAL).results
    shared = answer("clocking", **DIAL, other_flow=si(40, "ft3/h")).results
    assert alone["gas_flow"] - shared["gas_flow"] == pytest.approx(si(40, "ft3/h"))
    assert alone["gas_flow"] == pytest.approx(si(400, "ft3/h"))
    assert refused("clocking", **DIAL, other_flow=si(400.1, "ft3/h")) == (
        "calc-other-flow",
        "other_flow",
    )


def test_the_seconds_to_expect_are_those_at_which_the_input_is_right() -> None:
    told = {"rated_input": RATED, "other_flow": si(25, "ft3/h")}
    seconds = answer("clocking", **DIAL, **told).results["expected_seconds"]
    found = answer("clocking", **DIAL | {"seconds": seconds}, **told).results
    assert found["input"] == pytest.approx(RATED)
    assert found["input_share"] == pytest.approx(1.0)
    assert "expected_seconds" not in answer("clocking", **DIAL).results


def test_one_second_is_one_part_in_the_seconds() -> None:
    found = answer("clocking", **DIAL).results
    assert found["one_second"] == pytest.approx(found["input"] / 72)


def test_a_hurried_or_broken_count_is_said() -> None:
    assert said("clocking", **DIAL) == ["calc-clock-alone"]
    hurried = answer("clocking", **DIAL | {"turns": 3.0, "seconds": 25.0})
    told = {note.message: note.values for note in hurried.notes}
    assert told["calc-clock-longer"]["turns"] == "8"  # 3 x 60 / 25 = 7.2
    assert "calc-whole-turns" in said("clocking", **DIAL | {"turns": 3.5})


@pytest.mark.parametrize(
    ("rated", "message"), [(0.90, "calc-input-high"), (1.10, "calc-input-low")]
)
def test_input_off_its_rating_is_said(rated: float, message: str) -> None:
    burnt = answer("clocking", **DIAL).results["input"]
    assert message in said("clocking", **DIAL, rated_input=rated * burnt)
    assert message not in said("clocking", **DIAL, rated_input=burnt)


BURNER = {"rated_input": RATED, "orifices": 10.0, "manifold": si(3.5, "inwc")}


def test_the_drill_of_the_code_table_passes_what_the_table_says() -> None:
    """or-bc-70: a number 70 drill passes 2.220 ft3/h of gas 0.60 at 3.5 in. w.c., K 0.90."""
    given = {"rated_input": si(2.220 * 1000, "Btu/h"), "manifold": 3.5 * 248.84}
    found = answer("orifice", **given, heating_value=si(1000, "Btu/ft3")).results
    assert found["drill"] == "no. 70"
    # base is 30 inHg and the table's air 14.7 psi: 0.3 % of flow; its constant another 0.3 %
    assert found["drill_input"] == pytest.approx(given["rated_input"], rel=0.007)
    assert found["orifice_diameter"] == pytest.approx(si(0.028, "in"), rel=0.004)


@pytest.mark.parametrize(
    ("bore", "drill", "message"),
    [(0.1236, "no. 31", "calc-drill-small"), (0.1245, "no. 30", "calc-drill-large")],
)
def test_between_two_drills_the_nearer_misses_and_is_said(
    bore: float, drill: str, message: str
) -> None:
    """Drills 31 and 30 are 0.120 and 0.1285 in.: input goes with the square."""
    found = answer("orifice", **BURNER).results
    wider = (si(bore, "in") / found["orifice_diameter"]) ** 2
    wanted = BURNER | {"rated_input": wider * RATED}
    assert answer("orifice", **wanted).results["drill"] == drill
    assert message in said("orifice", **wanted)


def test_the_codes_derate_asks_for_a_smaller_orifice_though_thin_gas_for_a_larger() -> None:
    """0.80 of the input in air of 0.832 of the density: area 0.8 / 0.832^0.5 = 0.877."""
    high = BURNER | {"altitude": si(5000, "ft")}
    low = answer("orifice", **BURNER).results["orifice_diameter"]
    derated = answer("orifice", **high, derate="code derate").results["orifice_diameter"]
    assert (derated / low) ** 2 == pytest.approx(0.8 / 0.8321**0.5, rel=1e-3)
    assert "calc-no-derate" in said("orifice", **high)
    assert "calc-no-derate" not in said("orifice", **high, derate="code derate")


def test_an_orifice_without_pressure_has_no_size() -> None:
    assert refused("orifice", **BURNER | {"manifold": 0.0}) == ("calc-no-manifold", "manifold")


@pytest.mark.parametrize("name", ["orifice", "manifold"])
def test_gas_work_is_for_those_licensed_to(name: str) -> None:
    given = {"orifice": BURNER, "manifold": {"rated_manifold": si(3.5, "inwc")}}[name]
    assert said(name, **given)[0] == "calc-gas-licensed"


MANIFOLD = {"rated_manifold": si(3.5, "inwc")}


def test_a_richer_gas_needs_less_pressure() -> None:
    """Wobbe 10 % up: pressure down by 1 / 1.21."""
    found = answer(
        "manifold",
        **MANIFOLD,
        rated_heating_value=si(1000, "Btu/ft3"),
        heating_value=si(1100, "Btu/ft3"),
    ).results
    assert found["manifold"] == pytest.approx(si(3.5, "inwc") / 1.21)
    assert found["untouched_share"] == pytest.approx(1.1)


def test_altitude_alone_moves_no_pressure_unless_a_derate_is_to_be_made() -> None:
    """At 5000 ft 0.80 of the input is had at 0.80^2 / 0.832 of the pressure: decision 6."""
    high = MANIFOLD | {"altitude": si(5000, "ft")}
    assert answer("manifold", **high).results["manifold"] == pytest.approx(si(3.5, "inwc"))
    made = answer("manifold", **high, derate="code derate").results
    assert made["manifold"] == pytest.approx(si(3.5, "inwc") * 0.64 / 0.8321, rel=1e-3)
    assert made["wanted_share"] == pytest.approx(0.8)


def test_outside_the_makers_range_orifices_are_changed() -> None:
    weak = MANIFOLD | {"heating_value": si(850, "Btu/ft3")}
    limits = {"manifold_least": si(3.0, "inwc"), "manifold_most": si(3.7, "inwc")}
    assert "calc-change-orifices" in said("manifold", **weak, **limits)
    assert "calc-change-orifices" not in said("manifold", **MANIFOLD, **limits)
    assert "calc-manifold-high" in said("manifold", **weak)
    assert "calc-maker-range" in said("manifold", **MANIFOLD)


PIPE = {"pipe_length": si(60, "ft"), "inlet_pressure": si(14, "inwc")}
TABLE_HEAT = si(1000, "Btu/ft3")


def test_a_pipe_of_the_codes_table_takes_the_tables_drop() -> None:
    """IFGC table 402.4(3), 60 ft: 2 in. carries 4020 ft3/h at 3.0 in. w.c.; it sits up to 1.2 %
    under its equation, and drop goes with the flow to the 1.85."""
    given = PIPE | {"gas_load": si(4020 * 1000, "Btu/h"), "heating_value": TABLE_HEAT}
    found = answer("pipe-drop", **given, pipe_size="2 in").results
    assert found["drop"] == pytest.approx(si(3.0, "inwc"), rel=0.023)
    assert found["outlet_pressure"] == pytest.approx(si(14, "inwc") - found["drop"])
    assert found["base_gas_flow"] == pytest.approx(si(4020, "ft3/h"))


def test_a_high_pressure_pipe_of_the_codes_table() -> None:
    """IFGC table 402.4(6), 50 ft: 1 in. carries 3880 ft3/h from 3 psi at a drop of 2 psi."""
    given = {"pipe_length": si(50, "ft"), "inlet_pressure": si(3, "psi"), "pipe_size": "1 in"}
    heat = {"gas_load": si(3880 * 1000, "Btu/h"), "heating_value": TABLE_HEAT}
    found = answer("pipe-drop", **given, **heat).results
    assert found["drop"] == pytest.approx(si(2, "psi"), rel=0.025)
    first, *_, last = found["pressures"]
    assert first == pytest.approx(si(3, "psi"))
    assert last == pytest.approx(found["outlet_pressure"])
    assert list(found["pressures"]) == sorted(found["pressures"], reverse=True)


def test_propane_is_sized_as_propane() -> None:
    """IFGC table 402.4(28), 50 ft, 0.5 in. w.c.: 3/4 in. carries 255 kBtu/h."""
    found = answer(
        "pipe-drop",
        gas="propane",
        pipe_size="3/4 in",
        gas_load=si(255, "kBtu/h"),
        pipe_length=si(50, "ft"),
        inlet_pressure=si(11, "inwc"),
    ).results
    assert found["drop"] == pytest.approx(si(0.5, "inwc"), rel=0.033)


def test_the_smallest_pipe_that_does_is_the_one_before_too_small() -> None:
    """The table's 2 in. at 60 ft: 4010 ft3/h fit it, 4100 do not."""
    asked = PIPE | {"allowed_drop": 3 * 248.9, "heating_value": TABLE_HEAT}
    fits = answer("pipe-size", **asked, gas_load=si(4010 * 1000, "Btu/h")).results
    more = answer("pipe-size", **asked, gas_load=si(4100 * 1000, "Btu/h")).results
    assert (fits["pipe_size"], more["pipe_size"]) == ("2 in", "2 1/2 in")
    assert fits["least_diameter"] < si(2.067, "in") < more["least_diameter"]
    assert fits["drop"] < 3 * 248.9
    assert fits["capacity"] == pytest.approx(si(4020 * 1000, "Btu/h"), rel=0.012)


def test_the_pipe_that_was_sized_takes_the_drop_that_was_told() -> None:
    asked = PIPE | {"gas_load": si(2.1e6, "Btu/h"), "elbows": 6.0, "tees": 1.0, "valves": 2.0}
    sized = answer("pipe-size", **asked, allowed_drop=si(1, "inwc")).results
    found = answer("pipe-drop", **asked, pipe_size=sized["pipe_size"]).results
    assert found["drop"] == pytest.approx(sized["drop"])
    assert found["equivalent_length"] == pytest.approx(sized["equivalent_length"])
    assert found["equivalent_length"] > si(60, "ft")


def test_what_no_pipe_carries_is_refused() -> None:
    asked = PIPE | {"allowed_drop": si(0.5, "inwc")}
    assert refused("pipe-size", **asked, gas_load=si(1e9, "Btu/h")) == ("calc-no-pipe", "gas_load")


@pytest.mark.parametrize("drop", [0.0, 14.0, 20.0])
def test_no_more_can_be_lost_than_there_is(drop: float) -> None:
    asked = PIPE | {"allowed_drop": si(drop, "inwc"), "gas_load": RATED}
    assert refused("pipe-size", **asked) == ("calc-drop-above-inlet", "allowed_drop")


DROP = PIPE | {"gas_load": RATED, "pipe_size": "1 in"}


def test_the_capacity_is_the_load_that_leaves_just_the_least() -> None:
    least = {"unit_least": si(13, "inwc")}
    capacity = answer("pipe-drop", **DROP, **least).results["capacity"]
    at = answer("pipe-drop", **DROP | {"gas_load": capacity}, **least).results
    assert at["outlet_pressure"] == pytest.approx(si(13, "inwc"))
    over = DROP | {"gas_load": 1.1 * capacity}
    assert "calc-too-little-left" in said("pipe-drop", **over, **least)
    assert refused("pipe-drop", **DROP, unit_least=si(14, "inwc"))[0] == "calc-least-above-inlet"


def test_a_regulator_droops_under_load_and_rises_without() -> None:
    behind = {"regulator_capacity": 2 * RATED, "unit_least": si(11, "inwc")}
    found = answer("pipe-drop", **DROP, **behind).results
    assert found["regulated_pressure"] == pytest.approx(si(14, "inwc") * 0.95)
    assert found["lock_up"] == pytest.approx(si(14, "inwc") * 1.15)
    at = answer("pipe-drop", **DROP | {"gas_load": found["capacity"]}, **behind).results
    assert at["outlet_pressure"] == pytest.approx(si(11, "inwc"), rel=1e-4)


def test_a_pipe_far_too_small_is_said_to_leave_nothing() -> None:
    assert "calc-nothing-left" in said(
        "pipe-drop", **DROP | {"pipe_size": "1/2 in", "gas_load": 2 * RATED}
    )
    flood = DROP | {"gas_load": si(1e8, "Btu/h"), "inlet_pressure": si(2, "psi")}
    assert "calc-nothing-left" in said("pipe-drop", **flood)
