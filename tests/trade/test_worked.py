"""What a target's own readings come to, opened: the same numbers, by the same formulas."""

from pathlib import Path

import pytest

from lightoff.job import Job, load
from lightoff.judgement import Row, assess, worked

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture(scope="module")
def job() -> Job:
    return load(EXAMPLES / "one-furnace-propane.toml")


@pytest.fixture(scope="module")
def rows(job: Job) -> list[Row]:
    return list(assess(job.machine(), job.visit(), whole=False).targets)


def row(rows: list[Row], target: str, run: str) -> Row:
    return next(each for each in rows if (each.id, each.run) == (target, run))


def test_an_input_opens_to_its_clocking(job: Job, rows: list[Row]) -> None:
    input_row = row(rows, "input", "high")
    *_, last = worked(job.machine(), job.visit(), input_row)
    assert last.formula.name == "metered_input"
    assert last.value == pytest.approx(input_row.measured, rel=1e-12)


def test_an_unbalance_opens_to_the_standard_s_formula(job: Job, rows: list[Row]) -> None:
    volts = row(rows, "voltage unbalance", "fan")
    steps = worked(job.machine(), job.visit(), volts)
    assert [step.formula.name for step in steps] == ["mean_of_three", "unbalance"]
    assert steps[-1].value == pytest.approx(volts.measured, rel=1e-12)


def test_a_reading_is_its_own_number(job: Job, rows: list[Row]) -> None:
    assert worked(job.machine(), job.visit(), row(rows, "manifold high", "high")) == ()


@pytest.mark.parametrize("example", sorted(path.stem for path in EXAMPLES.glob("*.toml")))
def test_every_row_of_every_example_can_be_opened(example: str) -> None:
    job = load(EXAMPLES / f"{example}.toml")
    machine, visit = job.machine(), job.visit()
    for each in assess(machine, visit, whole=False).targets:
        if each.estimate is not None:
            worked(machine, visit, each)
