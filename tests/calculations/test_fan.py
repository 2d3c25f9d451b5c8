"""Traverse, fan law, belt and sheave, against hand-worked and published figures."""

import math

import pytest

from lightoff.calculations import CALCULATIONS, Answer, CannotCalculateError, calculate
from lightoff.quantity import si

INCH = 0.0254


def asked(name: str, **given: object) -> Answer:
    return calculate(CALCULATIONS[name], given)


def said(answer: Answer) -> list[str]:
    return [note.message for note in answer.notes]


def refused(name: str, **given: object) -> tuple[str, str | None]:
    with pytest.raises(CannotCalculateError) as fault:
        asked(name, **given)
    return fault.value.message, fault.value.place


# ---- where the points lie


def test_a_rectangle_has_its_points_where_the_rule_says() -> None:
    """36 x 24 in.: 6 by 5 (published case tr-rect-powerlaw), the first 0.061 of 36 in. in."""
    found = asked("traverse-points", duct_width=36 * INCH, duct_height=24 * INCH)
    assert found.results["points"] == 30
    assert len(found.results["positions_down"]) == 5
    assert found.results["positions_across"][0] == pytest.approx(0.061 * 36 * INCH)
    assert said(found) == ["calc-probe-depth"]


def test_a_circle_has_them_on_every_diameter() -> None:
    """20 in. round: 10 on each (published case tr-round-powerlaw), log-linear."""
    found = asked("traverse-points", shape="round", duct_diameter=20 * INCH, diameters=3.0)
    assert found.results["points"] == 30
    assert "positions_down" not in found.results
    assert found.results["positions_across"][-1] == pytest.approx(0.981 * 20 * INCH)


def test_equal_areas_are_those_of_epa_method_1() -> None:
    """Table 1-2, 12 points: the third at 11.8 % (published case tr-epa1-12)."""
    given = {"shape": "round", "rule": "equal area", "duct_diameter": 1.0, "points_wanted": 12.0}
    found = asked("traverse-points", **given)
    assert found.results["positions_across"][2] == pytest.approx(0.118, abs=5e-4)


def test_every_depth_has_a_working() -> None:
    found = asked("traverse-points", duct_width=0.5, duct_height=0.5, rule="equal area")
    assert {step.formula.name for step in found.steps} == {
        "equal_area_points", "strip_position", "probe_depth", "points_in_all",
    }  # fmt: skip
    assert said(found)[0] == "calc-traverse-few"  # 16 points, where ISO 3966 asks for 25


@pytest.mark.parametrize(
    ("given", "fault"),
    [
        ({"duct_height": 1.0}, ("calc-missing", "duct_width")),
        ({"shape": "round", "duct_width": 1.0}, ("calc-missing", "duct_diameter")),
        ({"duct_width": -1.0, "duct_height": 1.0}, ("calc-impossible", "duct_width")),
        ({"points_wanted": 9.0}, ("calc-no-such-points", "points_wanted")),
        ({"points_wanted": 5.5}, ("calc-count", "points_wanted")),
        ({"points_wanted": 1e9, "rule": "equal area"}, ("calc-count", "points_wanted")),
        ({"shape": "round", "duct_diameter": 1.0, "diameters": 1.0}, ("calc-count", "diameters")),
    ],
)
def test_points_that_cannot_be_laid_out_are_refused(
    given: dict[str, object], fault: tuple[str, str]
) -> None:
    sizes = {} if fault[0] == "calc-missing" else {"duct_width": 1.0, "duct_height": 1.0}
    assert refused("traverse-points", **{**sizes, **given}) == fault


# ---- what the readings say

PLANE = {"duct_width": 36 * INCH, "duct_height": 24 * INCH}


def test_velocities_are_averaged_and_never_pressures() -> None:
    """0.04, 0.09, 0.16, 0.25 in. w.c. are 1401.75 fpm, not 1471.5 (published case tr-average-trap,
    4005 fpm to the inch: air of 1.2027 kg/m3 with an inch of 249.09 Pa)."""
    air = 2 * si(1, "inwc") / si(4005, "fpm") ** 2
    pressures = tuple(si(p, "inwc") for p in (0.04, 0.09, 0.16, 0.25))
    found = asked("traverse", **PLANE, velocity_pressures=pressures, air_density=air)
    assert found.results["velocity"] / si(1, "fpm") == pytest.approx(1401.75, rel=1e-6)
    assert found.results["duct_airflow"] / si(1, "cfm") == pytest.approx(6 * 1401.75, rel=1e-6)
    assert "density" not in found.results
    assert "calc-traverse-few" in said(found)


def test_density_comes_from_temperature_altitude_and_the_ducts_own_pressure() -> None:
    """Published case fa-vp-actual-70f-5000ft: 0.25 in. w.c. (60 degF) is 2197.44 fpm."""
    given = {**PLANE, "velocity_pressures": (0.25 * 248.84,) * 30, "altitude": si(5000, "ft")}
    found = asked("traverse", **given).results
    assert found["velocity"] / si(1, "fpm") == pytest.approx(2197.4426, rel=2e-3)
    pressed = asked("traverse", **given, duct_static=1000.0).results
    assert pressed["density"] / found["density"] == pytest.approx(1 + 1000 / 84312, rel=1e-4)
    ratio = found["standard_airflow"] / found["duct_airflow"]
    assert ratio == pytest.approx(found["density"] / 1.204)


def test_a_good_plane_is_called_good_and_an_uneven_one_is_not() -> None:
    even = {**PLANE, "velocity_pressures": (60.0,) * 30}
    long = {"straight_before": 7.0, "straight_after": 3.0}
    assert said(asked("traverse", **even, **long)) == ["calc-plane-good"]
    close = asked("traverse", **even, straight_before=2.0, straight_after=1.0)
    assert said(close) == ["calc-plane-after-fitting", "calc-plane-before-fitting"]
    # the circle of 36 x 24 in. is 33.17 in. across
    assert close.results["diameters_before"] == pytest.approx(2.0 / (33.168 * INCH), rel=1e-4)
    half = {**PLANE, "velocity_pressures": (60.0,) * 15 + (5.0,) * 15}
    assert "calc-plane-uneven" in said(asked("traverse", **half, **long))


def test_a_pitot_tube_is_said_to_be_blind_where_it_is() -> None:
    """600 fpm of standard air is 0.0224 in. w.c., 5.6 Pa; a hot wire sees it."""
    slow = asked("traverse", **PLANE, velocity_pressures=(6.0,) * 29 + (5.0,))
    assert [(n.message, n.values.get("count")) for n in slow.notes] == [("calc-pitot-blind", 1)]
    assert said(asked("traverse", **PLANE, velocities=(2.0,) * 30)) == []


def test_air_that_turns_back_counts_as_a_point_without_velocity() -> None:
    found = asked("traverse", **PLANE, velocity_pressures=(60.0, 60.0, 60.0, -4.0))
    forward = asked("traverse", **PLANE, velocity_pressures=(60.0,) * 4)
    ratio = found.results["velocity"] / forward.results["velocity"]
    assert ratio == pytest.approx(0.75)
    assert "calc-air-turning-back" in said(found)


def test_pressures_and_velocities_of_the_same_air_agree() -> None:
    speeds = (4.0, 6.0, 8.0, 5.0)
    read = tuple(1.1 * v**2 / 2 for v in speeds)
    one = asked("traverse", **PLANE, velocities=speeds, air_density=1.1).results
    other = asked("traverse", **PLANE, velocity_pressures=read, air_density=1.1).results
    assert one == pytest.approx(other)
    assert one["mean_spread"] == pytest.approx(one["velocity_spread"] / 2)


@pytest.mark.parametrize(
    ("given", "fault"),
    [
        ({}, ("calc-pressures-or-velocities", "velocity_pressures")),
        ({"velocities": (1.0, 2.0), "velocity_pressures": (1.0, 2.0)},
         ("calc-pressures-or-velocities", "velocity_pressures")),
        ({"velocities": (3.0,)}, ("calc-traverse-empty", "velocities")),
        ({"velocity_pressures": (-3.0, 0.0)}, ("calc-traverse-empty", "velocity_pressures")),
    ],
)  # fmt: skip
def test_a_traverse_without_readings_is_refused(
    given: dict[str, object], fault: tuple[str, str]
) -> None:
    assert refused("traverse", **PLANE, **given) == fault


# ---- another speed

BEFORE = {
    "fan_speed": 800.0,
    "fan_airflow": si(10000, "cfm"),
    "fan_static": si(1.5, "inwc"),
    "shaft_power": si(4.5, "hp"),
}
TEN_HORSEPOWER = {
    "motor_power": si(10, "hp"),
    "motor_efficiency": 0.917,
    "motor_volts": 460.0,
    "full_load_amps": 12.4,
}


def test_the_fan_laws_as_worked() -> None:
    """Published case fa-laws-worked: 800 to 900 rpm."""
    found = asked("fan-law", **BEFORE, new_fan_speed=900.0).results
    assert found["airflow_after"] / si(1, "cfm") == pytest.approx(11250)
    assert found["static_after"] / si(1, "inwc") == pytest.approx(1.8984375)
    assert found["power_after"] / si(1, "hp") == pytest.approx(6.4072266)


def test_sheave_frequency_and_airflow_are_ways_to_the_same_speed() -> None:
    ways = (
        {"new_fan_speed": 900.0},
        {"motor_sheave": 0.16, "new_motor_sheave": 0.18},
        {"frequency": 48.0, "new_frequency": 54.0},
        {"wanted_airflow": si(11250, "cfm")},
    )
    for way in ways:
        found = asked("fan-law", **BEFORE, **way).results
        assert found["speed_ratio"] == pytest.approx(1.125)
        # what was typed is not told back
        after = None if "new_fan_speed" in way else pytest.approx(900.0)
        assert found.get("fan_speed_after") == after


def test_colder_air_at_the_same_speed_takes_more_power() -> None:
    """Published case fa-winter: 70 to 0 degF, 15.3 %."""
    given = {**BEFORE, "air_density": 1.2, "new_air_density": 1.2 * 1.1528595}
    found = asked("fan-law", **given).results
    assert found["airflow_after"] == BEFORE["fan_airflow"]
    assert found["power_after"] / BEFORE["shaft_power"] == pytest.approx(1.1528595)
    assert "speed_ratio" not in found


def test_amps_in_proportion_go_with_power_and_on_a_drive_with_torque() -> None:
    """The cube of the speed; with volts in step with the hertz the square of it. Hand-worked."""
    sheaves = asked("fan-law", motor_sheave=0.16, new_motor_sheave=0.18, motor_amps=8.0)
    assert sheaves.results["amps_after"] == pytest.approx(8.0 * 1.125**3)
    assert "calc-amps-in-proportion" in said(sheaves)
    drive = asked("fan-law", frequency=48.0, new_frequency=54.0, motor_amps=8.0)
    assert drive.results["amps_after"] == pytest.approx(8.0 * 1.125**2)
    beyond = asked("fan-law", frequency=60.0, new_frequency=66.0, motor_amps=8.0)
    assert beyond.results["amps_after"] == pytest.approx(8.0 * 1.1**3)
    assert "calc-over-base" in said(beyond)


def test_by_the_plate_amps_move_less_than_power() -> None:
    """Part of the amps magnetises and does not grow; at full load the plate's amps come out."""
    given = {**TEN_HORSEPOWER, "fan_speed": 800.0, "new_fan_speed": 900.0}
    found = asked("fan-law", **given, motor_amps=8.0)
    assert 8.0 * 1.125 < found.results["amps_after"] < 8.0 * 1.125**3
    assert "calc-amps-in-proportion" not in said(found)
    same = asked("fan-law", **{**given, "new_fan_speed": 800.0}, motor_amps=8.0)
    assert same.results["amps_after"] == pytest.approx(8.0)
    # and back again
    amps = found.results["amps_after"]
    back = asked("fan-law", **{**given, "fan_speed": 900.0, "new_fan_speed": 800.0},
                 motor_amps=amps)  # fmt: skip
    assert back.results["amps_after"] == pytest.approx(8.0)


def test_on_a_drive_by_the_plate_the_square_of_the_speed_is_an_upper_bound() -> None:
    given = {**TEN_HORSEPOWER, "frequency": 45.0, "new_frequency": 60.0, "motor_amps": 7.0}
    found = asked("fan-law", **given).results["amps_after"]
    assert 7.0 < found < 7.0 * (60 / 45) ** 2


def test_what_would_be_passed_is_said() -> None:
    given = {**BEFORE, **TEN_HORSEPOWER, "motor_amps": 11.0, "max_fan_speed": 880.0}
    found = asked("fan-law", **given, new_fan_speed=900.0)
    assert said(found) == ["calc-over-wheel", "calc-over-amps", "calc-same-system"]
    assert found.notes[0].values == {"value": pytest.approx(900.0), "limit": 880.0}
    strong = {**given, "shaft_power": si(8, "hp")}
    assert "calc-over-power" in said(asked("fan-law", **strong, new_fan_speed=900.0))
    calm = asked("fan-law", **BEFORE, new_fan_speed=810.0, max_fan_speed=880.0)
    assert said(calm) == ["calc-same-system"]


@pytest.mark.parametrize(
    ("given", "fault"),
    [
        ({}, ("calc-one-change", "new_fan_speed")),
        ({"fan_speed": 800.0, "new_fan_speed": 900.0, "frequency": 50.0, "new_frequency": 55.0},
         ("calc-one-change", "new_fan_speed")),
        ({"new_frequency": 55.0}, ("calc-missing", "frequency")),
        ({"new_air_density": 1.3}, ("calc-missing", "air_density")),
        ({"fan_speed": 0.0, "new_fan_speed": 900.0}, ("calc-impossible", None)),
    ],
)  # fmt: skip
def test_a_change_that_is_not_told_is_refused(
    given: dict[str, object], fault: tuple[str, str | None]
) -> None:
    assert refused("fan-law", **given) == fault


# ---- belt

SHEAVES = {"motor_sheave": 4.6 * INCH, "fan_sheave": 9 * INCH}


def test_a_belt_drive_as_published() -> None:
    """Published cases dr-belt-20-9-4p6, dr-span and dr-ratio-1750-4p6-9p0."""
    found = asked("belt", **SHEAVES, shaft_centres=20 * INCH, motor_speed=1750.0,
                  belt_slip=0.015).results  # fmt: skip
    assert found["pitch_length"] / INCH == pytest.approx(61.605075, rel=1e-6)
    assert found["motor_wrap"] == pytest.approx(167.36937, abs=0.01)
    assert found["motor_wrap"] + found["fan_wrap"] == pytest.approx(360.0)
    assert found["span"] / INCH == pytest.approx(19.878632, rel=1e-7)
    assert found["deflection"] == pytest.approx(found["span"] / 64)
    assert found["driven_speed"] == pytest.approx(881.02778, rel=1e-7)
    assert found["belt_speed"] == pytest.approx(math.pi * 4.6 * INCH * 1750 / 60)


def test_the_length_gives_the_centres_back() -> None:
    found = asked("belt", **SHEAVES, belt_length=61.605075 * INCH)
    assert found.results["centre_distance"] / INCH == pytest.approx(20.0, rel=1e-6)
    assert "pitch_length" not in found.results
    assert said(found) == ["calc-belt-locked-out", "calc-belt-again"]


def test_a_force_shows_the_pull() -> None:
    """At 1/64 of the span the pull is sixteen times the force: statics."""
    found = asked("belt", **SHEAVES, shaft_centres=0.5, belt_force=20.0)
    assert found.results["belt_pull"] == pytest.approx(320.0)


def test_a_small_wrap_and_a_fast_belt_are_said() -> None:
    close = asked("belt", motor_sheave=0.1, fan_sheave=0.5, shaft_centres=0.35)
    assert said(close)[0] == "calc-small-wrap"
    fast = asked("belt", **SHEAVES, shaft_centres=0.5, motor_speed=6000.0)
    assert said(fast)[0] == "calc-fast-belt"


@pytest.mark.parametrize(
    ("given", "fault"),
    [
        ({}, ("calc-centres-or-length", "shaft_centres")),
        ({"shaft_centres": 0.5, "belt_length": 1.5}, ("calc-centres-or-length", "shaft_centres")),
        ({"shaft_centres": 0.17}, ("calc-sheaves-touch", "shaft_centres")),
        ({"belt_length": 0.5}, ("calc-sheaves-touch", "belt_length")),
    ],
)
def test_a_belt_that_cannot_be_is_refused(given: dict[str, object], fault: tuple[str, str]) -> None:
    assert refused("belt", **SHEAVES, **given) == fault


# ---- sheave


def test_the_sheave_for_a_speed() -> None:
    """Hand-worked: 4.6 in. x 950/881 and 9 in. x 881/950."""
    given = {**SHEAVES, "fan_speed": 881.0, "wanted_fan_speed": 950.0}
    found = asked("sheave", **given)
    assert found.results["new_motor_sheave"] / INCH == pytest.approx(4.6 * 950 / 881)
    assert found.results["new_fan_sheave"] / INCH == pytest.approx(9 * 881 / 950)
    assert said(found) == ["calc-amps-by-cube"]
    assert said(asked("sheave", **{**given, "wanted_fan_speed": 800.0})) == []


def test_turns_of_an_adjustable_sheave() -> None:
    """Hand-worked: 4.0 to 5.0 in. in 5 turns is 0.2 in. a turn; 4.4 in. is 3 turns open."""
    given = {"fan_speed": 1000.0, "motor_sheave": 4.0 * INCH, "closed_diameter": 5 * INCH,
             "open_diameter": 4 * INCH, "open_turns": 5.0}  # fmt: skip
    found = asked("sheave", **given, wanted_fan_speed=1100.0)
    assert found.results["turns_open"] == pytest.approx(3.0)
    assert "calc-half-turns" in said(found)
    assert "calc-out-of-reach" in said(asked("sheave", **given, wanted_fan_speed=1300.0))


@pytest.mark.parametrize(
    ("given", "fault"),
    [
        ({}, ("calc-missing", "motor_sheave")),
        ({"fan_sheave": 0.2, "max_fan_speed": 850.0},
         ("calc-wanted-over-wheel", "wanted_fan_speed")),
        ({"motor_sheave": 0.1, "closed_diameter": 0.12}, ("calc-missing", "open_diameter")),
        ({"motor_sheave": 0.1, "closed_diameter": 0.1, "open_diameter": 0.12, "open_turns": 5.0},
         ("calc-impossible", "open_diameter")),
    ],
)  # fmt: skip
def test_a_speed_that_no_sheave_should_give_is_refused(
    given: dict[str, object], fault: tuple[str, str]
) -> None:
    assert refused("sheave", fan_speed=800.0, wanted_fan_speed=900.0, **given) == fault
