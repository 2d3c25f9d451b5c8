"""Drawn plants are whole, their jobs are read without a fault, and a seed is a seed."""

import math
from collections import Counter
from random import Random

import pytest

from lightoff.job import parse_tree
from plant.limit import opens
from plant.plan import STYLES
from plant.plant import draw
from plant.shares import violations

COUNTS = {"ordinary": (22, 40), "thorough": (55, 95), "scant": (7, 14)}  # mean readings a visit


def test_jobs_of_every_style_are_read_without_a_fault() -> None:
    counts: dict[str, list[int]] = {style: [] for style in STYLES}
    for seed in range(200):
        style = STYLES[seed % 3]
        tree = draw(seed).visit(style, Random(seed), slips=0.2).tree
        parse_tree(tree)
        counts[style].append(len(tree["visit"][0]["reading"]))
    for style, (least, most) in COUNTS.items():
        assert least < sum(counts[style]) / len(counts[style]) < most


def test_a_bare_job_is_read_too() -> None:
    for seed in range(20):
        parse_tree(draw(seed).job())


def test_every_run_comes_to_rest_and_holds_numbers() -> None:
    for seed in range(40):
        plant = draw(seed)
        for run in plant.runs():
            found = plant.state(run)
            assert all(math.isfinite(value) for value in found.values())
        assert all(state.reached for state in plant.machine.solved.values())


def test_a_seed_is_a_seed() -> None:
    first, again = (draw(11).visit("ordinary", Random(4), slips=1.0) for _ in range(2))
    assert first.tree == again.tree
    assert first.truth["runs"] == again.truth["runs"]
    assert first.tree != draw(12).visit("ordinary", Random(4), slips=1.0).tree


def test_what_was_asked_before_does_not_change_a_visit() -> None:
    asked = draw(11)
    for run in asked.runs():
        asked.state(run)
    fresh = draw(11).visit("thorough", Random(4))
    assert asked.visit("thorough", Random(4)).tree == fresh.tree


def test_a_sound_unit_truly_violates_a_target_now_and_then() -> None:
    shares = violations(range(70))
    print({name: round(share, 2) for name, share in shares.items()})
    wide = ("airflow", "manifold high", "input", "O2", "building pressure", "discharge sensor",
            "set point reached", "motor current", "CO air-free")  # fmt: skip
    for name in wide:
        assert 0.05 < shares[name] < 0.5, name


def test_plates_agree_with_themselves() -> None:
    for seed in range(60):
        says = draw(seed, "none").declared
        for one in says.furnaces:
            assert one.rise[0] < one.rise[1]
            assert one.supply[0] < one.supply[1]
            for train in one.trains:
                assert train.high < train.outlet
                assert train.low is None or train.low < train.high
            assert sum(train.share for train in one.trains) == pytest.approx(1.0)
        assert says.fan.speed < says.fan.max_speed
        flows = [point[0] for point in says.fan.curve]
        assert flows == sorted(flows)
        motor = says.motor
        factor = 3.0**0.5 if motor.phases == 3 else 1.0
        taken = motor.volts * motor.amps * motor.power_factor * factor
        assert motor.power * 745.7 / taken == pytest.approx(motor.efficiency, rel=0.08)


def test_the_catalogue_s_curve_passes_the_design_point() -> None:
    for seed in range(60):
        says = draw(seed, "none").declared
        air, count = says.air, len(says.furnaces)
        drops = (air.hood, air.damper, air.filters, count * air.furnace, air.coil, air.external)
        near = [p for flow, p, _ in says.fan.curve if abs(flow / air.airflow - 1.0) < 0.01]
        for pressure in near:
            assert pressure == pytest.approx(sum(drops), rel=0.06)


def test_readings_stay_near_the_truth_in_a_sound_visit() -> None:
    """Nine in ten within 10 % (temperatures within 6 K): what method and gauge are made of."""
    off: Counter[bool] = Counter()
    for seed in range(20):
        for row in draw(seed, "none").visit("thorough", Random(seed)).truth["readings"]:
            if row["read"] is None or abs(row["true"]) < 1e-3:
                continue
            near = abs(row["read"] - row["true"]) < 0.10 * abs(row["true"])
            if row["point"].endswith(".db"):
                near = abs(row["read"] - row["true"]) < 6.0
            off[near] += 1
    assert off[True] / (off[True] + off[False]) > 0.9


def test_every_true_value_has_a_name_the_job_file_knows() -> None:
    own = ("box.", "density.", "input.", "output.", "efficiency.", "rise.", "excess_air.",
           "flue_dew_point.", "co_air_free.", "turndown.", "airflow", "shaft_power",
           "voltage_unbalance", "current_unbalance")  # fmt: skip
    for seed in range(12):
        plant = draw(seed, "none")
        rows = [
            {"run": run, "point": point, "value": in_words(point, value)}
            for run in plant.runs()
            for point, value in plant.state(run).items()
            if not point.startswith(own) and not (run == "off" and "meter.seconds" in point)
        ]
        date = {"date": "2026-11-03", "purpose": "start-up", "by": "A. Practice", "left": "off"}
        parse_tree({**plant.job(), "visit": [{**date, "reading": rows}]})


def in_words(point: str, value: float) -> str:
    """A value in the SI unit its name asks for."""
    units = {
        ".db": "K", ".wb": "K", ".sensor": "K", ".rh": "%", "volts": "V", "amps": "A", ".kw": "W",
        ".rpm": "rpm", ".hz": "Hz", ".seconds": "s", ".orifice": "m", ".signal": "%",
        "belt.force": "N", ".deflection": "m", ".angle": "deg", "door.": "N",
        "_flow": "m3/s", "duct.": "m3/s", "face_total": "m3/s", "exhaust": "m3/s",
        ".flame": "A", ".o2": "%", ".co": "%",
    }  # fmt: skip
    known = (unit for part, unit in units.items() if part in point and "static" not in point)
    unit = next(known, "Pa")
    return f"{value * (100.0 if unit == '%' else 1.0):.9g} {unit}"


def test_a_limit_that_opens_leaves_only_what_is_quick() -> None:
    seeds = [s for s in range(30) if draw(s, "none").declared.motor.phases == 3]
    opened = 0
    for plant in (draw(s, "reversed rotation") for s in seeds):
        visit = plant.visit("thorough", Random(1))
        for run, true in visit.truth["runs"].items():
            if opens(plant.machine, plant.declared, true):
                opened += 1
                rows = [row for row in visit.tree["visit"][0]["reading"] if row["run"] == run]
                assert not [row for row in rows if row["point"].startswith(("flue.", "air."))]
    assert opened


def test_a_slip_is_told_beside_the_job() -> None:
    slips = [
        draw(s, "none").visit("ordinary", Random(s), slips=1.0).truth["slip"] for s in range(12)
    ]
    assert any(slips)
    assert all(slip is None or slip["kind"] for slip in slips)


def test_the_design_day_is_asked_of_the_same_machine() -> None:
    plant = draw(5, "none")
    cold = plant.state("high", plant.winter())
    assert cold["air.outdoor.db"] < plant.state("high")["air.outdoor.db"]
    assert cold["air.discharge.db"] < plant.state("high")["air.discharge.db"]
    assert cold["motor.kw"] != plant.state("high")["motor.kw"]
