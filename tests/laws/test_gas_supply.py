"""Laws of meters, orifices, gas pipes and regulators."""

from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from lightoff.physics import (
    gas_input,
    gas_pipe,
    gas_pressure,
    meter,
    orifice,
    orifice_size,
    pipe_tables,
    regulator,
)
from lightoff.physics.drills import DRILLS, drill_name, nearest_drill

flows = st.floats(1e-4, 0.5)
diameters = st.floats(0.01, 0.2)
lengths = st.floats(1, 300)
factors = st.floats(0.4, 1.5)
scales = st.floats(0.2, 5)


@given(flows, diameters, lengths, factors)
def test_the_low_pressure_equation_holds_whichever_way_it_is_turned(
    flow: float, diameter: float, length: float, factor: float
) -> None:
    pipe = {"length": length, "gas_factor": factor}
    drop = gas_pipe.low_pressure_drop(flow, diameter=diameter, **pipe)
    assert gas_pipe.low_pressure_flow(drop, diameter=diameter, **pipe) == pytest.approx(flow)
    assert gas_pipe.low_pressure_diameter(flow, drop=drop, **pipe) == pytest.approx(diameter)


@given(flows, diameters, lengths, factors, st.floats(110e3, 800e3))
def test_the_high_pressure_equation_holds_whichever_way_it_is_turned(
    flow: float, diameter: float, length: float, factor: float, inlet: float
) -> None:
    pipe = {"inlet": inlet, "length": length, "gas_factor": factor, "expansion": 0.9992}
    outlet = gas_pipe.high_pressure_outlet(flow, diameter=diameter, **pipe)
    assume(60e3 < outlet < inlet * (1 - 1e-6))
    back = gas_pipe.high_pressure_flow(diameter, outlet=outlet, **pipe)
    assert back == pytest.approx(flow, rel=1e-6)
    needed = gas_pipe.high_pressure_diameter(flow, outlet=outlet, **pipe)
    assert needed == pytest.approx(diameter, rel=1e-6)


@given(st.floats(10, 1500), diameters, lengths, factors, scales)
def test_capacity_goes_with_drop_over_length_to_the_0_54(
    drop: float, diameter: float, length: float, factor: float, k: float
) -> None:
    """The codes' 0.206 / 0.381; with the diameter to the 1 / 0.381."""
    pipe = {"diameter": diameter, "length": length, "gas_factor": factor}
    once = gas_pipe.low_pressure_flow(drop, **pipe)
    assert gas_pipe.low_pressure_flow(k * drop, **pipe) == pytest.approx(once * k**0.5406824)
    longer = gas_pipe.low_pressure_flow(k * drop, **pipe | {"length": k * length})
    assert longer == pytest.approx(once)
    wider = gas_pipe.low_pressure_flow(drop, **pipe | {"diameter": k * diameter})
    assert wider == pytest.approx(once * k**2.6246719)


@given(flows, diameters, lengths, lengths, factors)
def test_pipes_in_a_row_take_the_sum(
    flow: float, diameter: float, one: float, other: float, factor: float
) -> None:
    pipe = {"diameter": diameter, "gas_factor": factor}
    parts = [gas_pipe.low_pressure_drop(flow, length=each, **pipe) for each in (one, other)]
    whole = gas_pipe.low_pressure_drop(flow, length=one + other, **pipe)
    assert whole == pytest.approx(sum(parts))


@given(flows, diameters, lengths, lengths, factors, st.floats(150e3, 800e3))
def test_high_pressure_pipes_in_a_row_go_on_from_one_another(
    flow: float, diameter: float, one: float, other: float, factor: float, inlet: float
) -> None:
    pipe = {"diameter": diameter, "gas_factor": factor, "expansion": 0.9992}
    end = gas_pipe.high_pressure_outlet(flow, inlet=inlet, length=one + other, **pipe)
    assume(end > 60e3)
    between = gas_pipe.high_pressure_outlet(flow, inlet=inlet, length=one, **pipe)
    assert gas_pipe.high_pressure_outlet(
        flow, inlet=between, length=other, **pipe
    ) == pytest.approx(end)
    assert gas_pressure.pressure_along(inlet, end, share=one / (one + other)) == pytest.approx(
        between
    )


@given(st.floats(0.4, 2.0))
def test_a_denser_gas_loses_more(density: float) -> None:
    gas = {"viscosity": 1.1e-5, "temperature": 289.0}
    assert gas_pipe.pipe_gas_factor(density, **gas) < gas_pipe.pipe_gas_factor(
        1.01 * density, **gas
    )


@given(st.integers(0, 20), st.integers(0, 5), st.integers(0, 5), lengths)
def test_fittings_only_ever_lengthen(elbows: int, tees: int, valves: int, length: float) -> None:
    fittings = pipe_tables.fitting_diameters(elbows, tees, valves=valves)
    found = [pipe_tables.equivalent_length(length, diameter=d, fittings=fittings)
             for d in pipe_tables.SCHEDULE_40.values()]  # fmt: skip
    assert found == sorted(found)
    assert found[0] >= length


orifices = st.fixed_dictionaries({"coefficient": st.floats(0.6, 1.0), "speed": st.floats(20, 90)})


@given(st.floats(0.0004, 0.005), orifices)
def test_twice_the_area_passes_twice_the_gas(bore: float, at: dict[str, Any]) -> None:
    once = orifice_size.orifice_flow(bore, **at)
    assert orifice_size.orifice_flow(bore * 2**0.5, **at) == pytest.approx(2 * once)
    assert orifice_size.orifice_diameter(once, **at) == pytest.approx(bore)


@given(st.floats(50, 3000), st.floats(0.4, 2.0), scales)
def test_an_orifice_feels_the_root_of_pressure_and_of_density(
    drop: float, density: float, k: float
) -> None:
    once = orifice_size.orifice_speed(drop, density)
    assert orifice_size.orifice_speed(k * drop, density) == pytest.approx(once * k**0.5)
    assert orifice_size.orifice_speed(drop, k * density) == pytest.approx(once / k**0.5)
    multiplier = orifice.relative_density_multiplier(k * density, density)
    assert orifice_size.orifice_speed(drop, k * density) == pytest.approx(once * multiplier)


@given(st.floats(100, 3000), st.floats(0.5, 1.2), st.floats(0.8, 1.3), st.floats(0.5, 1.2))
def test_the_manifold_that_was_set_gives_the_input_that_was_wanted(
    rated: float, factor: float, wobbe: float, density: float
) -> None:
    gas = {"wobbe_ratio": wobbe, "density_ratio": density}
    manifold = orifice.manifold_for_gas(rated_manifold=rated, input_factor=factor, **gas)
    back = orifice.orifice_input(rated_input=1.0, manifold=manifold, rated_manifold=rated, **gas)
    assert back == pytest.approx(factor)
    untouched = orifice.orifice_input(rated_input=1.0, manifold=rated, rated_manifold=rated, **gas)
    assert orifice.untouched_factor(wobbe, density) == pytest.approx(untouched)


@given(st.floats(-500, 4000))
def test_the_codes_take_more_than_nature_above_2000_ft_and_nothing_below(altitude: float) -> None:
    code = orifice.code_derate_factor(altitude)
    nature = orifice.untouched_factor(1.0, orifice.altitude_density_ratio(altitude))
    assert (code == 1.0) if altitude <= 2000 * 0.3048 else (code < nature)


@given(st.floats(0.0004, 0.0104))
def test_no_drill_is_nearer(diameter: float) -> None:
    nearest = nearest_drill(diameter)
    assert DRILLS[drill_name(diameter)] == nearest
    assert all(abs(d - diameter) >= abs(nearest - diameter) for d in DRILLS.values())


def test_the_drills_are_a_ladder() -> None:
    sizes = list(DRILLS.values())
    assert len(sizes) == 80 + 26
    assert sizes == sorted(set(sizes))


heating_values = st.floats(3e7, 1.1e8)


@given(st.floats(0.01, 1), st.floats(10, 600), heating_values, st.floats(0.7, 2), st.floats(0, 0.9))
def test_the_time_expected_of_an_input_is_the_time_it_was_clocked_in(
    volume: float, seconds: float, value: float, factor: float, other: float
) -> None:
    flow = meter.metered_flow(volume, seconds)
    own = meter.flow_less_others(flow, other * flow)
    burnt = gas_input.flow_input(own, heating_value=value, factor=factor)
    wanted = gas_input.flow_for_input(burnt, heating_value=value, factor=factor)
    assert meter.expected_time(volume, flow=wanted, other_flow=other * flow) == pytest.approx(
        seconds
    )


@given(st.floats(0.01, 1), st.floats(60, 600))
def test_a_second_is_what_the_flow_changes_by_in_a_second(volume: float, seconds: float) -> None:
    flow = meter.metered_flow(volume, seconds)
    step = meter.flow_resolution(flow, seconds=seconds, step=1.0)
    later = flow - meter.metered_flow(volume, seconds + 1)
    assert later < step
    assert later == pytest.approx(step, rel=1 / 60)


@given(st.floats(70e3, 200e3), st.floats(240, 320))
def test_a_compensated_meter_needs_no_temperature(pressure: float, temperature: float) -> None:
    plain = meter.base_volume_factor(pressure, temperature)
    own = meter.compensated_volume_factor(pressure)
    assert plain * temperature == pytest.approx(own * (60 + 459.67) * 5 / 9)


lines = st.fixed_dictionaries({"droop": st.floats(0.01, 0.3), "pipe_drop": st.floats(1, 1000)})


@given(st.floats(500, 5000), lines, st.floats(0.05, 2), st.floats(0, 1))
def test_the_pressure_at_the_unit_falls_with_load_from_below_lock_up(
    pressure: float, line: dict[str, Any], load: float, rise: float
) -> None:
    left = regulator.unit_pressure(pressure, load=load, **line)
    assert left < regulator.unit_pressure(pressure, load=0.9 * load, **line)
    assert left < pressure <= regulator.lock_up_pressure(pressure, rise)


@given(st.floats(500, 5000), lines, st.floats(0.01, 2))
def test_the_load_a_line_carries_is_where_its_pressure_meets_the_least(
    pressure: float, line: dict[str, Any], load: float
) -> None:
    least = regulator.unit_pressure(pressure, load=load, **line)
    assert regulator.carried_load(pressure, least=least, **line) == pytest.approx(load, rel=1e-6)


@given(flows, diameters, lengths)
def test_a_regulators_line_and_the_pipes_equation_bend_alike(
    flow: float, diameter: float, length: float
) -> None:
    pipe = {"diameter": diameter, "length": length, "gas_factor": 0.6094}
    rated, half = (gas_pipe.low_pressure_drop(q, **pipe) for q in (flow, flow / 2))
    left = regulator.unit_pressure(1e5, droop=0.0, load=0.5, pipe_drop=rated)
    assert 1e5 - left == pytest.approx(half, rel=1e-6, abs=1e-6)
