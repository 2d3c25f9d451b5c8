"""A number of the model, opened: the same number, and equations that add up to it."""

from pathlib import Path

import pytest

from lightoff.job import Job, load
from lightoff.judgement import assess
from lightoff.judgement.foretell import as_left
from lightoff.judgement.named import model_name
from lightoff.judgement.opened import Opened, opened
from lightoff.judgement.plan import plan, weather_read
from lightoff.judgement.together import Together

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture(scope="module")
def job() -> Job:
    return load(EXAMPLES / "two-furnaces-vfd.toml")


@pytest.fixture(scope="module")
def model(job: Job) -> Together:
    found = as_left(job.machine(), job.visit())
    assert found is not None
    return found


def numbers(found: Opened, formula: str) -> list[float]:
    return [step.value for step in found.equations.steps if step.formula.name == formula]


def open_up(job: Job, model: Together | None, name: str, run: str) -> Opened:
    found = opened(job.machine(), model, name, run, {})
    assert found is not None
    return found


def test_a_number_judged_is_the_number_opened(job: Job, model: Together) -> None:
    judged = {(row.point, row.run): row for row in assess(job.machine(), job.visit()).targets}
    for point, run in (("airflow", "fan"), ("input.1", "high"), ("rise.2", "high")):
        row, found = judged[point, run], open_up(job, model, model_name(point), run)
        assert found.value == pytest.approx(row.estimate, rel=1e-9)
        assert found.standard_uncertainty == pytest.approx(row.standard_uncertainty, rel=1e-9)


def test_a_number_planned_is_the_number_opened(job: Job) -> None:
    weather = weather_read(job.machine(), job.visit())
    for window in plan(job.machine(), job.visit()).windows:
        if window.spread and window.turns is None:
            name = model_name(window.point)
            found = opened(job.machine(), None, name, window.run, weather)
            assert found is not None
            assert found.value == pytest.approx(window.expected)
            assert found.standard_uncertainty == pytest.approx(window.spread)


@pytest.mark.parametrize("by_readings", [True, False])
@pytest.mark.parametrize("name", ["airflow.standard", "rise.1", "motor.amps.a", "flue.1.o2"])
def test_the_parts_make_the_uncertainty(
    job: Job, model: Together, name: str, by_readings: bool
) -> None:
    found = open_up(job, model if by_readings else None, name, "high")
    squares = sum(line.standard_uncertainty**2 for line in found.budget)
    # parts of less than a thousandth are left out
    assert squares**0.5 == pytest.approx(found.standard_uncertainty, rel=1e-4)


def test_at_the_airflow_the_fan_gives_what_parts_and_building_take(
    job: Job, model: Together
) -> None:
    found = open_up(job, model, "airflow.standard", "high")
    (fan,) = numbers(found, "pressure_by_fan_law")
    drops, building = numbers(found, "component_drop"), numbers(found, "pressure_of_surplus")
    assert len(drops) >= 5
    wind = model.found.values("high")["building.wind"]
    assert fan == pytest.approx(sum(drops) + sum(building) + wind, rel=1e-9)


def test_the_last_equation_gives_the_number(job: Job, model: Together) -> None:
    for name, run in (("rise.1", "high"), ("input.1", "high"), ("gas.meter.seconds", "high")):
        found = open_up(job, model, name, run)
        assert found.equations.steps[-1].value == pytest.approx(found.value, rel=1e-9)


def test_what_does_not_hang_on_the_fan_names_no_balance(job: Job, model: Together) -> None:
    assert open_up(job, model, "input.1", "high").equations.state is None
    assert open_up(job, model, "rise.1", "high").equations.state is not None


def test_every_equation_holds_where_it_is_used(job: Job, model: Together) -> None:
    for name in ("airflow.standard", "rise.1", "flue.1.db", "efficiency.2", "fan.rpm"):
        steps = open_up(job, model, name, "high").equations.steps
        assert all(term.in_range for step in steps for term in step.terms)


def test_what_the_model_does_not_know_is_not_opened(job: Job, model: Together) -> None:
    for name, run in (("furnace.1.flame", "high"), ("nothing", "fan"), ("airflow", "off")):
        assert opened(job.machine(), model, name, run, {}) is None
        assert opened(job.machine(), None, name, run, {}) is None
