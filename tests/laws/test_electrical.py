"""Laws of motors, three-phase power and wires."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.physics import (
    electricity,
    frequency_drive,
    motor,
    motor_current,
    motor_speed,
    wiring,
)

volts = st.floats(180, 600)
loads = st.floats(0.05, 1.25)
efficiencies = st.floats(0.6, 0.97)
power_factors = st.floats(0.5, 0.95)


@st.composite
def plates(draw: st.DrawFn) -> dict[str, Any]:
    """What a plate says of a motor's current."""
    return {
        "phases": draw(st.sampled_from([1.0, 3.0])),
        "rated_amps": draw(st.floats(1, 100)),
        "rated_volts": draw(volts),
        "power_factor": draw(power_factors),
    }


def rated_input(plate: dict[str, Any]) -> float:
    apparent = electricity.apparent_power(
        plate["rated_volts"], plate["rated_amps"], phases=plate["phases"]
    )
    return float(electricity.electric_power(apparent, plate["power_factor"]))


@given(plates(), st.floats(0.9, 1.1), st.floats(0.02, 1.4))  # at half again it may be near stalling
def test_amps_from_power_and_power_from_amps_are_one_model(
    plate: dict[str, Any], high: float, share: float
) -> None:
    at = {**plate, "volts": high * plate["rated_volts"]}
    power = share * rated_input(plate)
    amps = motor_current.motor_amps(power, **at)
    assert motor_current.motor_input(amps=amps, **at) == pytest.approx(power, rel=1e-6)


@given(plates(), st.floats(0.9, 1.1), st.floats(0.0, 1.4), st.floats(0.01, 0.1))
def test_amps_grow_with_load(plate: dict[str, Any], high: float, share: float, more: float) -> None:
    at = {**plate, "volts": high * plate["rated_volts"]}
    less, greater = (
        motor_current.motor_amps(x * rated_input(plate), **at) for x in (share, share + more)
    )
    assert less < greater


@given(plates())
def test_the_plate_is_its_own_full_load(plate: dict[str, Any]) -> None:
    full = motor_current.motor_amps(rated_input(plate), volts=plate["rated_volts"], **plate)
    assert full == pytest.approx(plate["rated_amps"])


@given(plates())
def test_what_idles_only_magnetises(plate: dict[str, Any]) -> None:
    """Without power the amps are the reactive ones, a little above the magnetising ones."""
    idle = motor_current.motor_amps(0.0, volts=plate["rated_volts"], **plate)
    own = {name: plate[name] for name in ("rated_amps", "rated_volts", "power_factor")}
    magnetising = motor_current.magnetising_current(volts=plate["rated_volts"], **own)
    assert magnetising <= idle < plate["rated_amps"]


@given(plates(), st.floats(0.25, 1.2), st.floats(0.3, 1.0))
def test_a_drive_that_keeps_the_flux_keeps_the_amps_of_a_torque(
    plate: dict[str, Any], share: float, slower: float
) -> None:
    """Half the hertz, half the volts, half the power: the same amps."""
    full = motor_current.motor_amps(share * rated_input(plate), volts=plate["rated_volts"], **plate)
    at = {**plate, "rated_volts": slower * plate["rated_volts"]}
    slow = motor_current.motor_amps(
        slower * share * rated_input(plate), volts=slower * plate["rated_volts"], **at
    )
    assert slow == pytest.approx(full)


@given(loads, st.floats(50, 50_000), efficiencies)
def test_load_and_input_are_two_ways_of_saying_one_thing(
    load: float, power: float, efficiency: float
) -> None:
    plate = {"rated_power": power, "efficiency": efficiency}
    taken = motor.input_at_load(load, **plate)
    assert motor.load_of_input(taken, **plate) == pytest.approx(load)
    given_off = motor.motor_output(taken, motor.efficiency_at_load(load, efficiency))
    assert given_off == pytest.approx(load * power)


@given(efficiencies, st.floats(0.05, 1.5))
def test_efficiency_goes_through_the_plate_and_is_best_near_three_quarters(
    efficiency: float, load: float
) -> None:
    assert motor.efficiency_at_load(1.0, efficiency) == pytest.approx(efficiency)
    best = motor.efficiency_at_load(0.75, efficiency)
    assert motor.efficiency_at_load(load, efficiency) <= best * (1 + 1e-12)
    assert best < 1


@given(st.floats(0.0, 1.5), st.floats(10, 120), st.floats(0.85, 1.15))
def test_load_from_speed_is_speed_from_load(load: float, lag: float, flux: float) -> None:
    speed = motor_speed.speed_at_load(load, synchronous=1800.0, rated_slip_speed=lag, flux=flux)
    back = motor_speed.load_by_speed(motor_speed.slip_speed(speed, 1800.0), lag, flux=flux)
    assert back == pytest.approx(load, abs=1e-9)
    assert motor_speed.slip(speed, 1800.0) == pytest.approx(
        load * lag / flux**2 / 1800.0, abs=1e-12
    )


@given(st.floats(5, 120), st.floats(200, 480))
def test_a_drive_never_gives_more_than_its_line(frequency: float, line: float) -> None:
    plate = {"rated_volts": 460.0, "rated_frequency": 60.0}
    given_off = frequency_drive.drive_volts(frequency, line_volts=line, **plate)
    flux = frequency_drive.flux(given_off, frequency, **plate)
    assert given_off <= line
    assert flux <= 1 + 1e-12


@given(st.floats(0, 0.05))
def test_unbalance_only_ever_takes_power_away(unbalance: float) -> None:
    left = electricity.unbalance_derating(unbalance)
    assert 0.75 - 1e-12 <= left <= 1.0
    low, high = electricity.current_unbalance(unbalance)
    assert unbalance <= low <= high


@given(st.integers(-3, 36))
def test_six_gauges_double_the_diameter_and_39_make_the_ladder(gauge: int) -> None:
    """92^(1/39) a step: six steps are 2.005, three halve the area to a third of a percent."""
    thin, thick = wiring.awg_diameter(gauge + 3), wiring.awg_diameter(gauge)
    assert thick / wiring.awg_diameter(gauge + 1) == pytest.approx(92 ** (1 / 39))
    ratio = wiring.wire_area(thick) / wiring.wire_area(thin)
    assert ratio == pytest.approx(2, rel=0.004)


@given(st.floats(1, 300), st.floats(0.1, 10), st.floats(1e-3, 0.1), st.floats(0.1, 5))
def test_a_drop_is_linear_in_length_and_in_current(
    length: float, amps: float, resistance: float, k: float
) -> None:
    once = wiring.two_wire_drop(length, amps, resistance=resistance)
    longer = wiring.two_wire_drop(k * length, amps, resistance=resistance)
    more = wiring.two_wire_drop(length, k * amps, resistance=resistance)
    assert longer == pytest.approx(k * once)
    assert more == pytest.approx(k * once)
    assert wiring.length_for_drop(once, amps, resistance=resistance) == pytest.approx(length)


@given(st.floats(1, 200), st.floats(0.0, 400.0))
def test_a_transformer_is_full_when_nothing_is_left(rated: float, taken: float) -> None:
    full = wiring.transformer_load(taken, rated) - 1
    assert full == pytest.approx(-wiring.transformer_reserve(taken, rated) / rated, abs=1e-9)
