"""Laws of fans, curves, systems and the point where they meet."""

import math
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from lightoff.formula import working
from lightoff.physics import duct, fan, fan_curve
from lightoff.physics import operating_point as op
from lightoff.physics.curve import curve_through, read
from lightoff.physics.fan_curve import (
    BACKWARD_INCLINED,
    FORWARD_CURVED,
    fan_power,
    fan_pressure,
    pressures_turning,
    standard_powers,
    standard_pressures,
)
from lightoff.physics.operating_point import OperatingPoint, Part, operating_point
from lightoff.physics.traverse import pitot_velocity

RATIO = st.floats(0.4, 2.0)
SHAPES = pytest.mark.parametrize("shape", [BACKWARD_INCLINED, FORWARD_CURVED])
STILL = {"speed_ratio": 1.0, "density_ratio": 1.0}


@st.composite
def points(draw: st.DrawFn, *, falling: bool = False) -> tuple[tuple[float, float], ...]:
    """A fan's declared points, their airflows apart."""
    steps = draw(st.lists(st.floats(0.1, 2.0), min_size=2, max_size=7))
    flows = np.cumsum(steps).tolist()
    pressures = draw(st.lists(st.floats(10.0, 1500.0), min_size=len(flows), max_size=len(flows)))
    if falling:
        pressures = sorted(pressures, reverse=True)
    return tuple(zip(flows, pressures, strict=True))


@st.composite
def systems(draw: st.DrawFn) -> tuple[Part, ...]:
    """A chain of one to three parts that all take pressure."""
    part = st.builds(Part, st.floats(5.0, 2000.0), st.floats(0.5, 10.0), st.floats(1.0, 2.0))
    return tuple(draw(st.lists(part, min_size=1, max_size=3)))


def taken(system: tuple[Part, ...], airflow: float) -> float:
    """What a system takes, by the formulas of its parts."""
    return sum(
        duct.component_drop(airflow, rated_airflow=part.airflow, rated_drop=part.drop,
                            exponent=part.exponent, density_ratio=1.0)
        for part in system
    )  # fmt: skip


@given(RATIO, RATIO, RATIO, RATIO, RATIO, RATIO)
def test_two_steps_of_a_fan_law_are_one(
    n: float, m: float, d: float, e: float, r: float, s: float
) -> None:
    first, second = (
        {"speed_ratio": n, "size_ratio": d, "density_ratio": r},
        {"speed_ratio": m, "size_ratio": e, "density_ratio": s},
    )
    both = {name: first[name] * second[name] for name in first}
    for law in (fan.pressure_by_fan_law, fan.power_by_fan_law):
        assert law(law(7.0, **first), **second) == pytest.approx(law(7.0, **both))
    flow = fan.airflow_by_fan_law
    one, two, all_ = ({k: v for k, v in each.items() if k != "density_ratio"}
                      for each in (first, second, both))  # fmt: skip
    assert flow(flow(7.0, **one), **two) == pytest.approx(flow(7.0, **all_))


@given(st.floats(0.1, 20), st.floats(10, 2000), st.floats(100, 5e4), RATIO, RATIO)
def test_no_fan_law_changes_the_efficiency(
    flow: float, pressure: float, power: float, n: float, r: float
) -> None:
    law = {"speed_ratio": n, "size_ratio": 1.3}
    after = fan.fan_efficiency(
        fan.airflow_by_fan_law(flow, **law),
        fan.pressure_by_fan_law(pressure, density_ratio=r, **law),
        power=fan.power_by_fan_law(power, density_ratio=r, **law),
    )
    assert after == pytest.approx(fan.fan_efficiency(flow, pressure, power=power))


@given(points())
def test_a_curve_goes_through_its_points(declared: tuple[tuple[float, float], ...]) -> None:
    for airflow, pressure in declared:
        assert fan_pressure(airflow, declared) == pytest.approx(pressure)


@given(points())
def test_a_curve_stays_between_neighbours(declared: tuple[tuple[float, float], ...]) -> None:
    """So it is monotone where they are, and has no peak that nobody declared."""
    for (a, p), (b, q) in pairwise(declared):
        found = fan_pressure(np.linspace(a, b, 30), declared)
        steps = np.diff(found) * math.copysign(1, q - p)
        assert (steps >= -1e-9 * max(p, q)).all()
        assert found.min() >= min(p, q) - 1e-9
        assert found.max() <= max(p, q) + 1e-9


@given(points())
def test_a_curve_has_no_kink_at_a_declared_point(
    declared: tuple[tuple[float, float], ...],
) -> None:
    curve = curve_through(declared, 0.0)
    for before, after in pairwise(curve[1:-1]):
        steep = max(abs(p) for _, p in declared) / 0.1
        assert before.slope(after.start) == pytest.approx(
            after.slope(after.start), abs=1e-9 * steep
        )


@given(points(), st.floats(0, 1))
def test_beyond_its_ends_a_curve_promises_nothing(
    declared: tuple[tuple[float, float], ...], share: float
) -> None:
    (first, height), (last, end) = declared[0], declared[-1]
    assert fan_pressure(share * first, declared) == height
    assert fan_pressure((1 + share) * last, declared) <= end * (1 - share) + 1e-9
    assert fan_pressure(2.5 * last, declared) < 0
    assert fan_power((1 + share) * last, declared) >= end - 1e-9


@given(points(), RATIO, RATIO, st.floats(0.1, 3.0))
def test_the_curve_through_moved_points_is_the_curve_moved(
    declared: tuple[tuple[float, float], ...], n: float, r: float, share: float
) -> None:
    airflow = share * declared[-1][0]
    moved = pressures_turning(declared, speed_ratio=n, density_ratio=r)
    law = {"speed_ratio": n, "size_ratio": 1.0, "density_ratio": r}
    by_law = fan.pressure_by_fan_law(fan_pressure(airflow, declared), **law)
    there = fan.airflow_by_fan_law(airflow, speed_ratio=n, size_ratio=1.0)
    assert fan_pressure(there, moved) == pytest.approx(by_law, abs=1e-6)


@SHAPES
def test_a_standard_shape_is_a_fan(shape: fan_curve.Shape) -> None:
    """Through its design point, most efficient about there, without pressure at its end."""
    pressures = standard_pressures(shape, airflow=4.0, pressure=600.0)
    powers = standard_powers(shape, airflow=4.0, power=3600.0)
    assert fan_pressure(4.0, pressures) == pytest.approx(600.0)
    assert fan_power(4.0, powers) == pytest.approx(3600.0)
    assert fan_pressure(pressures[-1][0], pressures) == pytest.approx(0.0, abs=1e-9)
    flows = np.linspace(0.4, 7.9, 200)
    efficiency = fan.fan_efficiency(
        flows, fan_pressure(flows, pressures), power=fan_power(flows, powers)
    )
    assert flows[efficiency.argmax()] == pytest.approx(4.0, rel=0.15)
    assert efficiency.max() <= 1.02 * 4.0 * 600.0 / 3600.0
    assert fan_curve.shape_spread(4.0, 4.0) == 0


@given(points(), systems(), RATIO, RATIO)
def test_a_crossing_lies_on_both_curves(
    declared: tuple[tuple[float, float], ...], system: tuple[Part, ...], n: float, r: float
) -> None:
    found = operating_point(declared, system, speed_ratio=n, density_ratio=r)
    assert found.condition in (op.LEFT_OF_CURVE, op.ON_CURVE, op.RIGHT_OF_CURVE)
    moved = pressures_turning(declared, speed_ratio=n, density_ratio=r)
    assert fan_pressure(found.airflow, moved) == pytest.approx(found.pressure, rel=1e-9)
    assert taken(system, found.airflow) == pytest.approx(found.pressure, rel=1e-9)


@given(points(), systems(), st.floats(0.05, 1), st.floats(0.05, 1))
def test_beyond_the_crossing_the_system_asks_for_more(
    declared: tuple[tuple[float, float], ...], system: tuple[Part, ...], a: float, b: float
) -> None:
    """It is the last one: from it to the end of the curve the fan never catches up again, save
    between two declared points where both rise, which is not looked at."""
    found = operating_point(declared, system, **STILL)
    for airflow, pressure in declared:
        if airflow > found.airflow * (1 + 1e-9):
            assert taken(system, airflow) > pressure
    beyond = found.airflow + (a + b) * declared[-1][0]
    assume(beyond > declared[-1][0])
    assert taken(system, beyond) > fan_pressure(beyond, declared)


@given(points(falling=True), systems(), st.floats(1.001, 5.0))
def test_more_resistance_gives_less_air_at_more_pressure(
    declared: tuple[tuple[float, float], ...], system: tuple[Part, ...], more: float
) -> None:
    narrower = tuple(part._replace(drop=part.drop * more) for part in system)
    before = operating_point(declared, system, **STILL)
    after = operating_point(declared, narrower, **STILL)
    assert after.airflow < before.airflow
    assert after.pressure >= before.pressure * (1 - 1e-12)


@given(points(falling=True), st.floats(5.0, 2000.0), RATIO, RATIO)
def test_in_a_square_system_the_point_moves_by_the_fan_laws(
    declared: tuple[tuple[float, float], ...], drop: float, n: float, r: float
) -> None:
    """Thinner air thins the system's demand as well: the airflow stays, pressure goes with it."""
    system = (Part(drop, 3.0, 2.0),)
    thinned = (Part(drop * r, 3.0, 2.0),)
    before = operating_point(declared, system, **STILL)
    after = operating_point(declared, thinned, speed_ratio=n, density_ratio=r)
    assert after.airflow == pytest.approx(n * before.airflow, rel=1e-9)
    assert after.pressure == pytest.approx(n**2 * r * before.pressure, rel=1e-9)


@given(points(), systems(), RATIO)
def test_one_alone_and_many_together_agree(
    declared: tuple[tuple[float, float], ...], system: tuple[Part, ...], n: float
) -> None:
    speeds = np.array([n, 1.1 * n, 0.7 * n])
    many = operating_point(declared, system, speed_ratio=speeds, density_ratio=1.0)
    for i, speed in enumerate(speeds):
        one = operating_point(declared, system, speed_ratio=float(speed), density_ratio=1.0)
        np.testing.assert_allclose([part[i] for part in many], one, rtol=1e-11)


FALLING = ((2.0, 900.0), (4.0, 700.0), (6.0, 300.0))


@pytest.mark.parametrize(
    ("parts", "named"),
    [
        ((Part(700.0, 4.0, 2.0),), "on the curve"),
        ((Part(5000.0, 4.0, 2.0),), "left of the curve"),
        ((Part(50.0, 4.0, 2.0),), "right of the curve"),
        ((Part(100.0, 4.0, 2.0), Part(950.0, 1.0, 0.0)), "fan too weak"),
        ((Part(1e-9, 4.0, 2.0), Part(-6000.0, 1.0, 0.0)), "system too free"),
    ],
)
def test_every_machine_gets_a_named_condition(parts: tuple[Part, ...], named: str) -> None:
    found = operating_point(FALLING, parts, **STILL)
    assert op.CONDITIONS[found.condition] == named
    assert all(map(math.isfinite, found))


def test_a_fan_too_weak_moves_no_air() -> None:
    found = operating_point(FALLING, (Part(1000.0, 1.0, 0.0),), **STILL)
    assert isinstance(found, OperatingPoint)
    assert found.airflow == 0.0
    assert found.pressure == 900.0


def test_a_pressure_of_the_building_shifts_the_point() -> None:
    part = Part(700.0, 4.0, 2.0)
    alone = operating_point(FALLING, (part,), **STILL)
    against = operating_point(FALLING, (part, Part(50.0, 1.0, 0.0)), **STILL)
    assert against.airflow < alone.airflow
    assert taken((part,), against.airflow) + 50.0 == pytest.approx(against.pressure)


def test_what_was_read_off_a_curve_has_a_working() -> None:
    shown = working(fan_pressure, airflow=3.0, points=FALLING)
    assert shown.result == fan_pressure(3.0, FALLING)
    assert read(fan_curve.pressure_curve(FALLING), 3.0) == shown.steps[-1].value


@given(st.floats(0, 60), st.floats(0.6, 1.6))
def test_velocity_pressure_and_back(velocity: float, density: float) -> None:
    pressure = duct.velocity_pressure(velocity, density)
    assert pitot_velocity(pressure, density) == pytest.approx(velocity, abs=1e-9)


@given(st.floats(0.05, 5), st.floats(0.05, 5))
def test_diameters_of_a_duct_agree_where_it_is_square(a: float, b: float) -> None:
    """The hydraulic one is the smallest; the friction one of a square is 9 % above its side."""
    area = duct.area_diameter(duct.rectangular_area(a, b))
    assert duct.hydraulic_diameter(a, b) <= area * math.pi**0.5 / 2 * (1 + 1e-12)
    assert duct.friction_diameter(a, a) / a == pytest.approx(1.3 / 2**0.25)
    assert duct.round_area(area) == pytest.approx(a * b)


@given(st.dictionaries(st.text(min_size=1), st.floats(0, 500), min_size=1, max_size=8))
def test_a_chain_takes_what_its_parts_take(drops: dict[str, float]) -> None:
    assert duct.chain_drop(drops) == pytest.approx(math.fsum(drops.values()))
