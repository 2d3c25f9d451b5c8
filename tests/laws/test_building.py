"""Buildings, doors, closed pipes: what is blown in leaks out, what is pushed pushes back."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.physics.airstream import temperature_rise
from lightoff.physics.building import (
    air_surplus,
    airflow_at_temperature,
    door_force,
    envelope_leakage,
    heat_of_airflow,
    leakage_area,
    opening_airflow,
    pressure_of_door_force,
    pressure_of_surplus,
    stack_pressure,
)
from lightoff.physics.tightness import (
    code_test_pressure,
    code_test_time,
    end_at_first_barometer,
    leak_rate,
    pressure_per_degree,
    temperature_corrected_drop,
    tight_end_pressure,
)

envelopes = st.fixed_dictionaries(
    {
        "leakage": st.floats(0.05, 50),
        "test_pressure": st.floats(1, 100),
        "exponent": st.floats(0.5, 1),
    }
)
doors = st.fixed_dictionaries(
    {
        "width": st.floats(0.6, 2.5),
        "height": st.floats(1.5, 3.5),
        "handle": st.floats(0, 0.3),
        "closer": st.floats(0, 150),
    }
)
temperatures = st.floats(230, 330)
barometers = st.floats(60e3, 110e3)
gauges = st.floats(0, 700e3)


@given(st.floats(-200, 200), envelopes)
def test_leakage_knows_no_direction(pressure: float, envelope: dict[str, float]) -> None:
    out, back = (envelope_leakage(p, **envelope) for p in (pressure, -pressure))
    assert back == pytest.approx(-out)
    assert envelope_leakage(0.0, **envelope) == 0


@given(st.floats(-200, 200), envelopes)
def test_a_building_takes_the_pressure_that_leaks_its_surplus(
    pressure: float, envelope: dict[str, float]
) -> None:
    flow = envelope_leakage(pressure, **envelope)
    assert pressure_of_surplus(flow, **envelope) == pytest.approx(pressure, rel=1e-6, abs=1e-9)


@given(st.floats(-150, 150), st.floats(0.1, 50), envelopes)
def test_more_pressure_leaks_more(p: float, more: float, envelope: dict[str, float]) -> None:
    assert envelope_leakage(p + more, **envelope) > envelope_leakage(p, **envelope)


@given(st.floats(1, 100), st.floats(0.001, 10), st.floats(0.6, 1.6))
def test_an_ideal_opening_has_its_own_leakage_area(p: float, area: float, rho: float) -> None:
    flow = opening_airflow(p, area=area, coefficient=1.0, density=rho)
    assert leakage_area(flow, p, density=rho) == pytest.approx(area)


@given(st.floats(0.1, 50), temperatures, temperatures, temperatures)
def test_a_mass_flow_stays_itself_through_any_temperature(
    flow: float, first: float, second: float, third: float
) -> None:
    by_way = airflow_at_temperature(
        airflow_at_temperature(flow, first, other=second), second, other=third
    )
    assert by_way == pytest.approx(airflow_at_temperature(flow, first, other=third))


@given(st.floats(0, 50), st.floats(0, 50))
def test_what_one_building_gains_the_outdoors_loses(supply: float, exhaust: float) -> None:
    assert air_surplus(supply, exhaust) == -air_surplus(exhaust, supply)


@given(st.floats(0, 250), doors)
def test_force_and_pressure_on_a_door_say_the_same(p: float, door: dict[str, float]) -> None:
    force = door_force(p, **door)
    assert force >= door["closer"]
    assert pressure_of_door_force(force, **door) == pytest.approx(p, abs=1e-9)


@given(st.floats(1, 250), doors)
def test_the_moments_on_a_door_balance(p: float, door: dict[str, float]) -> None:
    """About the hinge: pressure at the middle of the door, the hand at the handle."""
    hand = (door_force(p, **door) - door["closer"]) * (door["width"] - door["handle"])
    assert hand == pytest.approx(p * door["width"] * door["height"] * door["width"] / 2)


@given(st.floats(0, 100), st.floats(0, 100), temperatures, temperatures, barometers)
def test_storeys_on_each_other_add_up(
    low: float, high: float, outside: float, inside: float, barometer: float
) -> None:
    air = {"outdoor": outside, "indoor": inside, "barometer": barometer}
    both = stack_pressure(low, **air) + stack_pressure(high, **air)
    assert stack_pressure(low + high, **air) == pytest.approx(both)


@given(st.floats(0.1, 40), st.floats(1, 100), st.floats(0.7, 1.5), st.floats(0, 0.03))
def test_the_heat_of_a_rise_makes_that_rise(
    flow: float, rise: float, density: float, moisture: float
) -> None:
    heat = heat_of_airflow(flow, rise, density=density, humidity_ratio=moisture)
    dry = flow * density / (1 + moisture)
    assert temperature_rise(heat, dry, humidity_ratio=moisture) == pytest.approx(rise)


@given(gauges, temperatures, temperatures, barometers, barometers)
def test_a_tight_pipe_loses_nothing_whatever_the_weather(
    start: float, first: float, last: float, before: float, after: float
) -> None:
    test = {"start_temperature": first, "end_temperature": last, "barometer": before}
    end = tight_end_pressure(start, **test, end_barometer=after)
    same = end_at_first_barometer(end, barometer=before, end_barometer=after)
    assert temperature_corrected_drop(start=start, end=same, **test) == pytest.approx(0, abs=1e-6)


@given(gauges, temperatures, barometers)
def test_one_degree_is_what_one_degree_does(start: float, T: float, barometer: float) -> None:
    air = {"barometer": barometer, "end_barometer": barometer}
    warmer = tight_end_pressure(start, start_temperature=T, end_temperature=T + 1, **air)
    assert warmer - start == pytest.approx(pressure_per_degree(start + barometer, T))


@given(st.floats(0, 1e5), st.floats(0.001, 10), st.floats(60, 1e5), temperatures)
def test_a_leak_is_what_left_the_pipe_in_the_time(
    drop: float, volume: float, seconds: float, T: float
) -> None:
    """Amounts of gas by p V / T: before less after is what leaked, counted at the base state."""
    base = {"base_pressure": 101560.0, "base_temperature": 288.7}
    rate = leak_rate(drop, volume, seconds=seconds, temperature=T, **base)
    lost = drop * volume / T
    assert rate * seconds * 101560.0 / 288.7 == pytest.approx(lost)


@given(st.floats(0, 400e3))
def test_a_code_test_is_never_below_working_pressure(working: float) -> None:
    assert code_test_pressure(working, 20684.0) >= max(1.5 * working, 20684.0)


@given(st.floats(0.001, 1000), st.floats(0.001, 100))
def test_more_pipe_is_never_tested_for_less_time(volume: float, more: float) -> None:
    assert 600 <= code_test_time(volume) <= code_test_time(volume + more) <= 86400
