"""Laws of belt drives."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.physics import belt, sheave

SHEAVE = st.floats(0.05, 0.5)


@st.composite
def drives(draw: st.DrawFn) -> dict[str, float]:
    """Two sheaves that do not touch."""
    motor, fan = draw(SHEAVE), draw(SHEAVE)
    apart = draw(st.floats(1.02, 6.0)) * (motor + fan) / 2
    return {"motor_sheave": motor, "fan_sheave": fan, "centres": apart}


def turned_round(drive: dict[str, float]) -> dict[str, float]:
    return {**drive, "motor_sheave": drive["fan_sheave"], "fan_sheave": drive["motor_sheave"]}


@given(drives())
def test_a_belt_does_not_know_which_sheave_drives(drive: dict[str, float]) -> None:
    other = turned_round(drive)
    for measure in (belt.belt_length, belt.belt_length_in_short, belt.belt_span):
        assert measure(**drive) == pytest.approx(measure(**other))
    assert belt.belt_lean(**drive) == pytest.approx(-belt.belt_lean(**other))


@given(drives())
def test_the_wraps_are_one_turn_together_and_the_larger_sheave_has_more(
    drive: dict[str, float],
) -> None:
    lean = belt.belt_lean(**drive)
    wraps = belt.wrap_angle(lean), belt.fan_wrap_angle(lean)
    assert sum(wraps) == pytest.approx(2 * math.pi)
    assert (wraps[1] - wraps[0]) * (drive["fan_sheave"] - drive["motor_sheave"]) >= 0


@given(drives())
def test_a_belt_is_two_spans_and_two_arcs(drive: dict[str, float]) -> None:
    lean = belt.belt_lean(**drive)
    arcs = belt.wrap_angle(lean) * drive["motor_sheave"] / 2
    arcs += belt.fan_wrap_angle(lean) * drive["fan_sheave"] / 2
    assert belt.belt_length(**drive) == pytest.approx(2 * belt.belt_span(**drive) + arcs)


@given(drives())
def test_the_short_formula_is_never_too_long(drive: dict[str, float]) -> None:
    """The term left out is positive, (D - d)^4 / (192 C^3) and smaller ones."""
    exact, short = belt.belt_length(**drive), belt.belt_length_in_short(**drive)
    apart = abs(drive["fan_sheave"] - drive["motor_sheave"])
    assert -1e-12 <= exact - short <= apart**4 / (64 * drive["centres"] ** 3) + 1e-12


@given(drives())
def test_centres_to_length_and_back(drive: dict[str, float]) -> None:
    sheaves = {name: drive[name] for name in ("motor_sheave", "fan_sheave")}
    found = belt.centres_of_length(belt.belt_length(**drive), **sheaves)
    assert found == pytest.approx(drive["centres"], rel=1e-12)


@given(SHEAVE, SHEAVE, st.floats(0.1, 0.99))
def test_a_belt_too_short_to_go_round_is_no_crash(motor: float, fan: float, share: float) -> None:
    """Where the sheaves lie one in the other the belt has the length of the larger one's rim."""
    rim = math.pi * max(motor, fan)
    found = belt.centres_of_length(share * rim, motor_sheave=motor, fan_sheave=fan)
    assert found == pytest.approx(abs(motor - fan) / 2, abs=1e-9)


@given(st.floats(500, 3600), SHEAVE, SHEAVE, st.floats(0, 0.05), st.floats(300, 2000))
def test_the_sheave_for_a_speed_gives_that_speed(
    motor_speed: float, motor: float, fan: float, slip: float, wanted: float
) -> None:
    """With the slip that was there before, and whichever sheave is changed."""

    def speed(motor_sheave: float, fan_sheave: float) -> float:
        return float(sheave.belt_fan_speed(motor_speed, motor_sheave=motor_sheave,
                                           fan_sheave=fan_sheave, slip=slip))  # fmt: skip

    speeds = {"speed": speed(motor, fan), "wanted": wanted}
    by_motor = speed(sheave.motor_sheave_for_speed(motor, **speeds), fan)
    by_fan = speed(motor, sheave.fan_sheave_for_speed(fan, **speeds))
    assert by_motor == pytest.approx(wanted)
    assert by_fan == pytest.approx(wanted)


@given(st.floats(500, 3600), SHEAVE, SHEAVE, st.floats(0, 0.1))
def test_only_the_ratio_of_two_sheaves_counts(
    motor_speed: float, motor: float, fan: float, slip: float
) -> None:
    by_ratio = sheave.fan_speed_at_ratio(motor_speed, ratio=motor / fan, slip=slip)
    by_sheaves = sheave.belt_fan_speed(motor_speed, motor_sheave=motor, fan_sheave=fan, slip=slip)
    assert by_ratio == pytest.approx(by_sheaves, rel=1e-12)


@given(st.floats(500, 3600), SHEAVE, SHEAVE, st.floats(0, 0.1))
def test_slip_is_found_again_from_the_speeds(
    motor_speed: float, motor: float, fan: float, slip: float
) -> None:
    sheaves = {"motor_sheave": motor, "fan_sheave": fan}
    turning = sheave.belt_fan_speed(motor_speed, slip=slip, **sheaves)
    found = sheave.belt_slip(turning, motor_speed=motor_speed, **sheaves)
    assert found == pytest.approx(slip, abs=1e-12)


@given(st.floats(0.1, 0.2), st.floats(0.01, 0.05), st.floats(1, 8), st.floats(0, 1))
def test_turns_open_give_the_diameter_back(
    closed: float, less: float, turns: float, share: float
) -> None:
    per_turn = sheave.diameter_per_turn(closed, closed - less, turns=turns)
    wanted = closed - share * turns * per_turn
    opened = sheave.turns_for_diameter(wanted, closed=closed, per_turn=per_turn)
    assert opened == pytest.approx(share * turns, abs=1e-9)


@given(st.floats(0.1, 2), st.floats(1, 100))
def test_at_the_trades_deflection_the_pull_is_sixteen_forces(span: float, force: float) -> None:
    """What drive manuals call sixteen times the deflection force."""
    pull = belt.belt_tension(force, deflection=belt.belt_deflection(span), span=span)
    assert pull == pytest.approx(16 * force)


@given(drives(), st.floats(500, 3600))
def test_both_sheaves_run_with_the_belt(drive: dict[str, float], speed: float) -> None:
    sheaves = {name: drive[name] for name in ("motor_sheave", "fan_sheave")}
    fan_speed = sheave.belt_fan_speed(speed, slip=0.0, **sheaves)
    by_fan = belt.belt_speed(drive["fan_sheave"], fan_speed)
    assert belt.belt_speed(drive["motor_sheave"], speed) == pytest.approx(by_fan)
