"""A job that uses every field of the contract loads, keeps what was typed, and compiles."""

import sys
import time
from collections.abc import Iterator
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from lightoff.job import Job, loads, parse_tree, schema
from lightoff.quantity import LightoffError


@pytest.fixture
def job(full_text: str) -> Job:
    return loads(full_text, form="toml")


def test_the_example_uses_every_field_there_is(full_tree: dict[str, Any]) -> None:
    assert set(_fields(schema())) - set(_used(full_tree)) == set()


def _fields(
    whole: dict[str, Any], node: dict[str, Any] | None = None, at: str = ""
) -> Iterator[str]:
    """Every field of the schema, as `unit.furnace.gas`."""
    node = whole if node is None else node
    if "$ref" in node:
        node = whole["$defs"][node["$ref"].removeprefix("#/$defs/")]
    for key, part in node.get("properties", {}).items():
        yield f"{at}{key}"
        yield from _fields(whole, part.get("items", part), f"{at}{key}.")


def _used(node: Any, at: str = "") -> Iterator[str]:
    if isinstance(node, list):
        for part in node:
            yield from _used(part, at)
    elif isinstance(node, dict):
        for key, part in node.items():
            yield f"{at}{key}"
            yield from _used(part, f"{at}{key}.")


def test_the_plate_is_kept_in_si(job: Job) -> None:
    machine = job.machine()
    assert machine.motor.power == pytest.approx(15 * 745.69987)
    assert machine.furnaces[0].supply_max == pytest.approx(13 * 249.08891)
    assert machine.furnaces[0].rise == pytest.approx((20 / 1.8, 60 / 1.8))
    assert machine.furnaces[0].flue_o2 == (0.05, 0.09)
    assert machine.furnaces[0].flame_signal == pytest.approx(2.4e-6)
    assert machine.fan.curve[2].power is None
    assert machine.site.weather[0] == pytest.approx((252.594, 40.0), abs=1e-3)
    assert dict(machine.site.gas_composition) == pytest.approx(
        {"methane": 0.95, "ethane": 0.03, "nitrogen": 0.02}
    )
    assert dict(machine.parties)["permit"] == "M-26-0118"


def test_the_second_furnace_takes_the_defaults_of_the_machine(job: Job) -> None:
    furnace = job.machine().furnaces[1]
    assert furnace.derate == "none"
    assert furnace.supply_max is None
    assert [train.share for train in furnace.trains] == [1.0]
    assert furnace.trains[0].reference == "atmosphere"


def test_a_visit_carries_its_instruments_its_limits_and_its_rule(job: Job) -> None:
    visit = job.visit()
    assert (visit.number, visit.rule, visit.purpose) == (1, "default", "start-up")
    assert visit.date == date(2026, 11, 3)
    assert [i.id for i in visit.instruments] == ["gauge-1", "stick-1"]
    assert visit.instruments[1].channels[0].plus_minus == pytest.approx(1 / 1.8)
    assert visit.instruments[1].channels[0].of_reading == 0.0
    assert visit.limits[0].place == "limit.1"
    assert visit.limits[0].lower == pytest.approx(3.1 * 249.08891)


def test_everything_of_a_visit_knows_its_place(job: Job) -> None:
    visit = job.visit()
    assert [(r.place, r.line) for r in visit.readings[:2]] == [
        ("visit.1.reading.1", 1),
        ("visit.1.reading.2", 2),
    ]
    assert visit.adjustments[1].place == "visit.1.adjustment.2"
    assert visit.adjustments[1].line == 2
    rows = (visit.symptoms, visit.trips, visit.checks, visit.steps, visit.joints, visit.decays)
    places = [row[0].place.split(".")[2] for row in rows]
    assert places == ["symptom", "trip", "check", "step", "joint", "decay"]
    assert visit.setpoints[1].place == "visit.1.setpoint.2"
    assert visit.deficiencies[0].place == "visit.1.deficiency.1"
    assert visit.deferred[0].place == "visit.1.deferred.1"


def test_readings_are_compiled_in_si(job: Job) -> None:
    readings = job.visit().readings
    assert readings[0].value == pytest.approx(777.157, abs=1e-3)
    assert readings[1].dial == pytest.approx(0.0566337, abs=1e-7)
    assert readings[3].main_fan is False
    rectangular, round_ = readings[4].traverse, readings[5].traverse
    assert rectangular is not None
    assert round_ is not None
    assert rectangular.area == pytest.approx(36 * 24 * 0.0254**2)
    assert round_.area == pytest.approx(3.14159265 / 4 * (30 * 0.0254) ** 2)
    assert round_.velocities == pytest.approx((8.1788, 8.4))
    assert readings[4].value is None


def test_an_airflow_in_scfm_is_marked_as_at_standard_density(job: Job) -> None:
    marks = {reading.point: reading.standard for reading in job.visit().readings}
    assert marks["duct.hood_total"] is True
    assert marks["duct.traverse"] is False


def test_what_was_typed_is_kept(job: Job, full_tree: dict[str, Any]) -> None:
    assert job.tree == full_tree
    assert job.tree["visit"][0]["reading"][0]["value"] == "3.12 inwc"


def test_only_visits_that_took_place_can_be_asked_for(job: Job) -> None:
    with pytest.raises(LightoffError, match=r"no visit 2: this job has one visit"):
        job.visit(2)
    with pytest.raises(LightoffError, match=r"no visit 0"):
        job.visit(0)


def test_before_the_first_visit_there_is_a_blank_one(full_tree: dict[str, Any]) -> None:
    del full_tree["visit"]
    job = parse_tree(full_tree)
    visit = job.visit()
    assert (visit.number, visit.readings, len(visit.instruments)) == (1, (), 2)
    with pytest.raises(LightoffError, match="no visits"):
        job.visit(1)


def test_a_thorough_job_is_read_in_ten_milliseconds(full_tree: dict[str, Any]) -> None:
    visit = full_tree["visit"][0]
    visit["reading"] = visit["reading"] * 15  # 120 readings
    limit = 0.010 if sys.gettrace() is None else 0.030  # a coverage tracer has its price
    assert min(_seconds(full_tree) for _ in range(20)) < limit


def _seconds(tree: dict[str, Any]) -> float:
    start = time.perf_counter()
    parse_tree(tree)
    return time.perf_counter() - start


def test_a_job_of_the_least_there_must_be(tmp_path: Path) -> None:
    least = """
        format = 1
        unit.tag = "MAU-9"
        unit.arrangement = "draw-through"
        unit.electrical = { volts = "230 V", phases = 1 }
        unit.motor = { power = "1 hp", full_load_amps = "6.9 A" }
        unit.drive.kind = "direct"
        unit.furnace = [{ gas = "propane", control = "two-stage", input = "100 kBtu/h" }]
        design = { airflow = "1500 cfm", discharge = "70 degF", winter_outdoor = "0 degF" }
        site.altitude = "0 ft"
    """
    machine = loads(least, form="toml").machine()
    assert machine.motor.volts == 230.0
    assert machine.electrical.control_volts == 24.0
    assert machine.drive.full_speed_frequency == 60.0
    assert machine.unit.mounting == "rooftop"
    assert [train.share for train in machine.furnaces[0].trains] == [1.0]
