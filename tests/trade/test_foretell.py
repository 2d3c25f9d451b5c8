"""A run foretold for any day, by the plate alone or by the machine as its readings leave it."""

from pathlib import Path

import pytest

import lightoff
from lightoff.job import Job, load, parse_tree
from lightoff.judgement import assess
from lightoff.judgement.foretell import Foretold
from lightoff.quantity import LightoffError

EXAMPLES = Path(__file__).parents[2] / "examples"


def job_of(name: str) -> Job:
    return load(EXAMPLES / f"{name}.toml")


def without_readings(job: Job) -> Job:
    return parse_tree({name: part for name, part in job.tree.items() if name != "visit"})


def value(told: Foretold, name: str) -> float:
    return next(row.value for row in told.rows if row.id == name)


def spread(told: Foretold, name: str) -> float:
    return next(row.standard_uncertainty for row in told.rows if row.id == name)


def test_colder_air_is_denser_and_the_motor_draws_more() -> None:
    job = job_of("two-furnaces-vfd")
    cold = lightoff.predict(job, "fan", outdoor="-10 degF")
    mild = lightoff.predict(job, "fan", outdoor="60 degF")
    assert value(cold, "motor.amps.a") > value(mild, "motor.amps.a")
    assert value(cold, "air.outdoor.db") == pytest.approx(249.8167, abs=1e-3)
    assert spread(cold, "air.outdoor.db") == 0.0


def test_readings_make_the_machine_better_known() -> None:
    job = job_of("two-furnaces-vfd")
    told = lightoff.predict(job, "high", outdoor="20 degF")
    bare = lightoff.predict(without_readings(job), "high", outdoor="20 degF")
    assert told.by_readings
    assert not bare.by_readings
    for name in ("airflow.standard", "input.1", "rise.unit", "motor.amps.a"):
        assert spread(told, name) < spread(bare, name)


def test_a_run_this_unit_does_not_have_is_named_with_those_it_has() -> None:
    with pytest.raises(LightoffError, match="write off, fan, high"):
        lightoff.predict(job_of("one-furnace-propane"), "high.3")


def test_the_coldest_day_is_judged() -> None:
    """The set point is reached by the rise that is left, and no colder day than that."""
    job = job_of("two-furnaces-vfd")

    def reached(winter: str) -> str:
        tree = dict(job.tree)
        tree["design"] = {**tree["design"], "winter_outdoor": winter}
        found = parse_tree(tree)
        rows = assess(found.machine(), found.visit(), whole=False).targets
        return next(row.decision for row in rows if row.id == "set point reached")

    assert reached("30 degF") == "conforms"
    assert reached("-20 degF") == "does not conform"


def test_nothing_is_foretold_of_a_motor_nobody_measured() -> None:
    job = job_of("plate-only")
    tree = {**job.tree, "visit": [{"reading": [
        {"run": "fan", "point": "air.outdoor.db", "value": "20 degF"}
    ]}]}  # fmt: skip
    found = parse_tree(tree)
    rows = assess(found.machine(), found.visit(), whole=False).targets
    winter = [row for row in rows if row.run == "winter"]
    assert winter
    assert {row.decision for row in winter} == {"not measured"}
