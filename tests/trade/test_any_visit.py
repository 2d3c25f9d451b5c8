"""Whatever is read, the answer comes: never a crash, never a number that is none."""

import contextlib
import json
import math
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from lightoff.job import JobError, parse_tree
from lightoff.judgement import assess
from lightoff.machine import points, runs
from lightoff.quantity import KINDS
from trade.build import tree, visit

ONE, THREE = tree(furnaces=1), tree(furnaces=3)
THREE["unit"]["drive"]["vfd"] = True
MACHINES = {id(job): parse_tree(job | {"visit": [visit()]}).machine() for job in (ONE, THREE)}
VERDICTS = {"not to be left running", "not ready", "ready, undecided points", "ready"}
AWKWARD = [0.0, 1e-9, -1.0, 0.5, 3.5, 100.0, 1e4, 1e9, -1e9]


@st.composite
def visits(draw: st.DrawFn) -> dict[str, Any]:
    """Readings at any point in any run, with any value at all, in any order."""
    job = draw(st.sampled_from([ONE, THREE]))
    machine = MACHINES[id(job)]
    readings = []
    for _ in range(draw(st.integers(1, 12))):
        point = draw(st.sampled_from(points(machine)))
        number = draw(st.sampled_from(AWKWARD) | st.floats(-1e6, 1e6))
        unit = KINDS[point.kind].us
        value = f"{number:.9f} {unit}" if unit != "1" else f"{number:.9f}"
        entry = {"run": draw(st.sampled_from(runs(machine))), "point": point.id, "value": value}
        if draw(st.booleans()):
            entry["at"] = f"2026-11-03T10:{draw(st.integers(0, 59)):02d}:00-06:00"
        readings.append(entry)
    turned = [
        {"at": f"2026-11-03T10:{draw(st.integers(0, 59)):02d}:00-06:00", "what": what}
        for what in draw(
            st.lists(
                st.sampled_from(["train.1.1.manifold", "filters", "gas.regulator"]), max_size=3
            )
        )
    ]
    return job | {"visit": [visit(*readings, adjustment=turned)]}


def numbers(node: Any) -> list[float]:
    """Every float in the answer."""
    if isinstance(node, dict):
        return [x for each in node.values() for x in numbers(each)]
    if isinstance(node, list | tuple):
        return [x for each in node for x in numbers(each)]
    return [node] if isinstance(node, float) else []


def judged(job: dict[str, Any]) -> dict[str, Any] | None:
    """The answer, or None where the reading is impossible and refused in sentences."""
    try:
        read = parse_tree(job)
    except JobError:
        return None
    return assess(read.machine(), read.visit(1)).to_dict()


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(visits())
def test_any_visit_is_answered_in_numbers(job: dict[str, Any]) -> None:
    answered_in_numbers(job)


@pytest.mark.prove
@settings(max_examples=3_000, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(visits())
def test_three_thousand_visits_are_answered_in_numbers(job: dict[str, Any]) -> None:
    answered_in_numbers(job)


def answered_in_numbers(job: dict[str, Any]) -> None:
    """What is impossible is refused; the rest is judged, and every number is one."""
    kept = []
    for entry in job["visit"][0]["reading"]:
        with contextlib.suppress(JobError):
            parse_tree(job | {"visit": [visit(entry)]})
            kept.append(entry)
    answer = judged(job | {"visit": [job["visit"][0] | {"reading": kept}]})
    assert answer is not None
    assert answer["verdict"] in VERDICTS
    assert all(math.isfinite(x) for x in numbers(answer))
    json.dumps(answer, allow_nan=False)


@pytest.mark.parametrize(
    "readings",
    [
        ["high.1 train.1.1.manifold 3.5 inwc", "low train.1.1.manifold 0 inwc"],
        ["high.1 train.1.1.manifold 0 inwc", "low train.1.1.manifold 0 inwc"],
        ["high.1 train.1.1.manifold -1 inwc", "low train.1.1.manifold -1 inwc"],
        ["fan air.outdoor.db 160 degF", "fan air.outdoor.rh 100 %", "fan duct.hood_total 8000 cfm"],
        ["fan air.outdoor.db -135 degF", "fan duct.hood_total 8000 cfm"],
        ["off air.barometer 0.0001 Pa", "fan duct.hood_total 8000 cfm"],
        ["high.1 gas.meter.seconds 100 s", "high.1 gas.meter.db 0 K"],
        ["high.1 gas.meter.seconds 100 s", "high.1 gas.meter.other_flow 1000000 ft3/h"],
        ["high gas.meter.seconds 100 s", "high train.1.1.manifold 0 inwc",
         "high train.2.1.manifold 0 inwc", "high train.3.1.manifold 0 inwc"],
        ["high.1 flue.1.co 100 ppm", "high.1 flue.1.co2 0 %"],
        ["high.1 flue.1.co 100 ppm", "high.1 flue.1.o2 20.9 %"],
        ["high power.volts.ab 0 V", "high power.volts.bc 0 V", "high power.volts.ca 0 V"],
    ],
)  # fmt: skip
def test_a_machine_that_cannot_be_is_said_to_be_none(readings: list[str]) -> None:
    answer = judged(tree(furnaces=3) | {"visit": [visit(*readings)]})
    assert answer is not None
    assert all(math.isfinite(x) for x in numbers(answer))


@pytest.mark.parametrize(
    "readings",
    [
        ["fan air.entering.db 10000 degF", "off air.outdoor.wb 0 degF"],
        ["fan air.discharge.db 10000 degF", "fan static.furnaces 0 inwc",
         "off air.outdoor.wb -1 degF"],
    ],
)  # fmt: skip
def test_a_fit_that_comes_to_air_with_less_than_no_water_in_it_looks_elsewhere(
    readings: list[str],
) -> None:
    turned = {"at": "2026-11-03T10:36:00-06:00", "what": "filters"}
    odd = visit("off power.volts.ab 0 V", *readings, adjustment=[turned])
    answer = judged(ONE | {"visit": [odd]})
    assert answer is not None
    assert all(math.isfinite(x) for x in numbers(answer))


def test_a_frozen_pipe_decides_nothing() -> None:
    test = {"section": "x", "start": "1 psi", "end": "1 psi", "minutes": 10, "isolated": True,
            "start_temperature": "0 K", "end_temperature": "0 K"}  # fmt: skip
    answer = judged(ONE | {"visit": [visit(decay=[test])]})
    assert answer is not None
    row = next(r for r in answer["targets"] if r["id"] == "tightness: decay")
    assert (row["decision"], row["why"]["message"]) == ("not measured", "no-such-decay")


@settings(max_examples=25)
@given(st.sampled_from(["duct.hood_total", "filter.face_total"]), st.floats(0, 1e3))
def test_an_airflow_at_standard_density_is_taken_as_it_is(point: str, size: float) -> None:
    job = ONE | {"visit": [visit({"run": "fan", "point": point, "value": f"{size:.6f} scfm"})]}
    read = parse_tree(job)
    answer = assess(read.machine(), read.visit(1), whole=False)
    found = next(r for r in answer.targets if (r.id, r.run) == ("airflow", "fan"))
    expected = float(f"{size:.6f}") * 0.3048**3 / 60
    assert math.isclose(found.measured, expected, rel_tol=1e-9, abs_tol=1e-12)
