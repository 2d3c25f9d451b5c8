"""The forward model: it balances, it obeys the laws of its parts, and its slopes are its own."""

import math
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lightoff.job import load
from lightoff.machine import Machine, points, runs
from lightoff.machine.model.abreast import moves_abreast
from lightoff.machine.model.case import case_of
from lightoff.machine.model.points import TOPICS
from lightoff.machine.model.predict import NO_AIR, NO_BALANCE, NO_GAS, Condition, balanced, predict
from lightoff.machine.model.rated import rate
from lightoff.machine.model.running import State
from lightoff.machine.model.slopes import running_moves
from lightoff.machine.model.unknowns import unknowns
from lightoff.physics.airstream import moist_heat_capacity

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))
MACHINES = {path.stem: load(path).machine() for path in EXAMPLES}

machines = pytest.mark.parametrize("machine", MACHINES.values(), ids=list(MACHINES))


def expected(machine: Machine) -> dict[str, float]:
    return {each.id: each.mean for each in unknowns(rate(machine))}


def fan_runs(machine: Machine) -> list[str]:
    return [run for run in runs(machine) if run != "off"]


@machines
def test_everything_balances_in_every_run(machine: Machine) -> None:
    for run in fan_runs(machine):
        found = predict(machine, expected(machine), Condition(run))
        assert found.outcome == "as it should"
        assert max(map(abs, found.found.imbalance)) < 1e-9
        assert all(math.isfinite(value) for value in found.shown.values())


@machines
def test_energy_is_kept(machine: Machine) -> None:
    """What the furnaces and the motor give is what the air gains, to 1e-9."""
    found = predict(machine, expected(machine), Condition("high"))
    shown, flow = found.shown, found.found.state.flow
    capacity = flow * moist_heat_capacity(found.found.air.moisture)
    given = sum(value for name, value in shown.items() if name.startswith("output."))
    rise = found.found.warmth.discharge - found.found.air.mixed
    assert capacity * rise == pytest.approx(given + shown["motor.kw"], rel=1e-9)
    for n, _ in machine.numbered():
        assert shown[f"output.{n}"] == pytest.approx(shown[f"input.{n}"] * shown[f"efficiency.{n}"])


@machines
def test_static_pressures_go_round(machine: Machine) -> None:
    """From outdoors through the unit into the building, and what is left is the fan's."""
    shown = predict(machine, expected(machine), Condition("high")).shown
    fan = shown["static.fan_out"] - shown["static.fan_in"]
    found = predict(machine, expected(machine), Condition("high")).found
    assert fan == pytest.approx(found.pressures.fan, rel=1e-9)
    assert shown["static.intake"] < 0
    assert shown["static.filters"] < shown["static.intake"]


@machines
def test_the_plate_comes_back(machine: Machine) -> None:
    """At design airflow and rated fire the efficiency is the plate's, within what altitude does."""
    shown = predict(machine, expected(machine), Condition("high")).shown
    for n, furnace in machine.numbered():
        if furnace.efficiency is not None:
            assert shown[f"efficiency.{n}"] == pytest.approx(furnace.efficiency, abs=0.02)


@machines
def test_every_point_it_tells_is_one_of_the_unit(machine: Machine) -> None:
    known = {point.id for point in points(machine)}
    derived = ("airflow", "input", "efficiency", "rise", "output", "shaft_power", "motor_power",
               "excess_air", "flue_dew_point", "discharge", "voltage_unbalance",
               "current_unbalance")  # fmt: skip
    for name in predict(machine, expected(machine), Condition("high")).shown:
        assert name in known or name.startswith(derived), name


@machines
def test_slopes_are_those_of_small_steps(machine: Machine) -> None:
    """Exact slopes against the difference of two predictions, in shares of the largest."""
    rated, table = rate(machine), unknowns(rate(machine))
    values = expected(machine) | {
        "power.volts.ab": 0.004, "power.volts.bc": -0.001,
        "motor.amps.a": 0.02, "motor.amps.b": -0.005,
    }  # fmt: skip
    found = predict(rated, values, Condition("high"))
    names = list(found.shown)
    moves = running_moves(rated, values, case_of(machine, "high"), found.found.state, table).shown(
        TOPICS
    )
    rows = [moves[name].slopes for name in names]
    largest = [max(abs(s * u.spread) for s, u in zip(row, table, strict=True)) for row in rows]
    for column, each in enumerate(table):
        step = 1e-4 * each.spread
        up, down = (
            predict(rated, values | {each.id: values[each.id] + s}, Condition("high")).shown
            for s in (step, -step)
        )
        for name, row, size in zip(names, rows, largest, strict=True):
            tried = (up[name] - down[name]) / 2e-4
            assert row[column] * each.spread == pytest.approx(tried, rel=1e-4, abs=1e-5 * size), (
                name, each.id,
            )  # fmt: skip


BLOW = MACHINES["two-furnaces-vfd"]


@settings(max_examples=40)
@given(st.floats(0.3, 3.0), st.floats(230.0, 310.0), st.floats(35.0, 65.0))
def test_more_resistance_less_air(resistance: float, outdoor: float, hertz: float) -> None:
    values = expected(BLOW) | {"air.outdoor.db": outdoor, "vfd.hz": hertz}
    free = predict(BLOW, values | {"duct.resistance": resistance}, Condition("fan"))
    tight = predict(BLOW, values | {"duct.resistance": 1.2 * resistance}, Condition("fan"))
    assert tight.shown["airflow"] < free.shown["airflow"]
    assert tight.shown["static.duct"] > free.shown["static.duct"]
    faster = predict(BLOW, values | {"duct.resistance": resistance, "vfd.hz": 1.05 * hertz},
                     Condition("fan"))  # fmt: skip
    assert faster.shown["airflow"] > free.shown["airflow"]
    assert faster.shown["motor.amps.a"] > free.shown["motor.amps.a"]


@settings(max_examples=40)
@given(st.floats(300.0, 1300.0), st.floats(0.01, 0.13))
def test_more_gas_more_heat_and_less_oxygen(manifold: float, o2: float) -> None:
    names = {"train.1.1.manifold.high": manifold, "furnace.1.combustion_air.high": o2}
    less = predict(BLOW, expected(BLOW) | names, Condition("high")).shown
    names["train.1.1.manifold.high"] = 1.1 * manifold
    more = predict(BLOW, expected(BLOW) | names, Condition("high")).shown
    assert more["input.1"] / less["input.1"] > 1
    assert more["flue.1.o2"] < less["flue.1.o2"]
    assert more["rise.1"] > less["rise.1"]


@settings(max_examples=60)
@given(st.data())
def test_never_a_crash_and_never_a_silent_nan(data: st.DataObject) -> None:
    """Every unknown up to six spreads off: numbers, or a name for what cannot be."""
    machine = data.draw(st.sampled_from(list(MACHINES.values())))
    values = {
        each.id: each.mean + each.spread * data.draw(st.floats(-6, 6), label=each.id)
        for each in unknowns(rate(machine))
    }
    run = data.draw(st.sampled_from(fan_runs(machine)))
    found = predict(machine, values, Condition(run))
    if found.outcome == "as it should":
        assert all(math.isfinite(value) for value in found.shown.values())


def test_a_fan_that_cannot_lift_the_building_is_named() -> None:
    still = replace(BLOW.design, exhaust=None)
    values = expected(replace(BLOW, design=still)) | {"building.pressure": 5000.0}
    found = predict(replace(BLOW, design=still), values, Condition("fan"))
    assert found.outcome == NO_BALANCE


@pytest.mark.parametrize(
    ("values", "outcome"),
    [
        ({"furnace.1.combustion_air.high": -0.05}, NO_AIR),
        ({"gas.lost": 5000.0}, NO_GAS),
    ],
)
def test_a_furnace_that_cannot_burn_is_named(values: dict[str, float], outcome: str) -> None:
    found = predict(BLOW, expected(BLOW) | values, Condition("high"))
    assert found.outcome == outcome
    assert predict(BLOW, expected(BLOW) | values, Condition("fan")).outcome == "as it should"


@machines
def test_runs_asked_at_once_answer_as_each_alone(machine: Machine) -> None:
    """On arrays, values and exact slopes both, to the last digits."""
    rated, table, values = rate(machine), unknowns(rate(machine)), expected(machine)
    cases = [case_of(machine, run) for run in fan_runs(machine)]
    states = [balanced(rated, values, case).state for case in cases]
    alone = [running_moves(rated, values, *each, table) for each in zip(cases, states, strict=True)]
    together = moves_abreast(rated, [values] * len(cases), cases, states, table)
    assert together is not None
    for run, one, other in zip(fan_runs(machine), alone, together, strict=True):
        mine, theirs = one.shown(TOPICS), other.shown(TOPICS)
        assert set(mine) == set(theirs)
        for point, moves in mine.items():
            assert theirs[point].value == pytest.approx(moves.value, rel=1e-10, abs=1e-12), point
            size = max(map(abs, moves.slopes), default=0.0)
            assert theirs[point].slopes == pytest.approx(moves.slopes, rel=1e-7, abs=1e-9 * size), (
                run,
                point,
            )


@machines
def test_from_a_state_near_its_balance_a_run_is_told_where_it_balances(machine: Machine) -> None:
    """The error of one step is that of its square."""
    rated, table, values = rate(machine), unknowns(rate(machine)), expected(machine)
    case = case_of(machine, "high")
    there = balanced(rated, values, case).state
    exact = running_moves(rated, values, case, there, table).shown(TOPICS)
    off = 1e-3
    near = State(there.flow * (1 + off), there.load + off)
    told = running_moves(rated, values, case, near, table).shown(TOPICS)
    for point in ("airflow.standard", "motor.amps.a", "motor.amps", "static.duct", "rise.unit"):
        if point in exact:
            assert told[point].value == pytest.approx(exact[point].value, rel=20 * off**2)
