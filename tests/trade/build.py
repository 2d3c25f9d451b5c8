"""A unit to judge: one tree of a job, changed and read as each claim needs."""

import copy
from typing import Any

from lightoff.job import parse_tree
from lightoff.judgement import Assessment, Row, assess

Tree = dict[str, Any]

FURNACE: Tree = {
    "gas": "natural gas",
    "control": "modulating",
    "input": "300 kBtu/h",
    "efficiency": 0.80,
    "rise": ["20 degF", "60 degF"],
    "max_outlet": "150 degF",
    "supply_min": "5.5 inwc",
    "supply_max": "13.0 inwc",
    "flue_o2": [0.05, 0.09],
    "flue_max": "550 degF",
    "purge": "45 s",
    "ignition_trial": "7 s",
    "flame_failure": "3 s",
    "high_limit": "180 degF",
    "train": [
        {"valve_outlet": "4.6 inwc", "manifold_high": "3.5 inwc", "manifold_low": "0.5 inwc"}
    ],
}

FINE = [
    {"id": "gauge", "kind": "manometer", "channel": [
        {"quantity": "pressure", "of_reading": 0.002, "plus_minus": "0.002 inwc",
         "resolution": "0.001 inwc"}]},
    {"id": "coarse", "kind": "manometer", "channel": [
        {"quantity": "pressure", "plus_minus": "0.3 inwc", "resolution": "0.2 inwc"}]},
    {"id": "meter", "kind": "clamp", "channel": [
        {"quantity": "voltage", "of_reading": 0.002, "resolution": "0.1 V"},
        {"quantity": "current", "of_reading": 0.005, "resolution": "0.01 A"}]},
    {"id": "flue", "kind": "analyser", "channel": [
        {"quantity": "O2", "plus_minus": "0.2 %", "resolution": "0.1 %"},
        {"quantity": "CO", "plus_minus": "2 ppm", "resolution": "1 ppm"}]},
    {"id": "probe", "kind": "thermometer", "channel": [
        {"quantity": "temperature", "plus_minus": "0.3 degF", "resolution": "0.1 degF"}]},
    {"id": "watch", "kind": "stopwatch", "channel": [
        {"quantity": "time", "resolution": "0.01 s"}]},
]  # fmt: skip


def tree(*, furnaces: int = 2) -> Tree:
    """A job without a visit: `furnaces` alike, the first leading, with a belt and a fine gauge."""
    declared = [copy.deepcopy(FURNACE) for _ in range(furnaces)]
    declared[0]["leading"] = True
    return {
        "format": 1,
        "unit": {
            "tag": "MAU-T",
            "arrangement": "blow-through",
            "electrical": {"volts": "460 V", "phases": 3},
            "motor": {"power": "10 hp", "volts": "460 V", "full_load_amps": "12.5 A",
                      "service_factor": 1.15, "efficiency": 0.917, "power_factor": 0.82},
            "drive": {"kind": "belt"},
            "fan": {"speed": "930 rpm", "max_speed": "1300 rpm"},
            "airside": {"filters_change": "0.7 inwc"},
            "furnace": declared,
        },
        "design": {"airflow": "8000 cfm", "external_static": "0.7 inwc", "discharge": "70 degF",
                   "winter_outdoor": "0 degF"},
        "site": {"altitude": "0 ft", "heating_value": "1030 Btu/ft3", "relative_density": 0.6,
                 "meter_dial": "2 ft3"},
        "instrument": copy.deepcopy(FINE),
    }  # fmt: skip


def reading(text: str, **more: Any) -> Tree:
    """A reading in one line: 'high train.1.1.manifold 3.5 inwc @gauge'."""
    words = text.split(" ")
    instrument = words.pop()[1:] if words[-1].startswith("@") else None
    entry: Tree = {"run": words[0], "point": words[1], "value": " ".join(words[2:])}
    return entry | ({"instrument": instrument} if instrument else {}) | more


def visit(*readings: str | Tree, **more: Any) -> Tree:
    """A visit with these readings."""
    return {"reading": [reading(r) if isinstance(r, str) else r for r in readings], **more}


def judge(job: Tree, *readings: str | Tree, whole: bool = False, **more: Any) -> Assessment:
    """The job with one visit of these readings, judged; `whole` with what each number rests on."""
    read = parse_tree({**job, "visit": [visit(*readings, **more)]})
    return assess(read.machine(), read.visit(1), whole=whole)


def row(answer: Assessment, target: str, run: str | None = None, point: str | None = None) -> Row:
    """The one row of a target in a run, at a point."""
    rows = [
        r
        for r in answer.targets
        if r.id == target and run in (None, r.run) and point in (None, r.point)
    ]
    assert len(rows) == 1, [(r.id, r.run, r.point) for r in rows]
    return rows[0]


def decision(
    answer: Assessment, target: str, run: str | None = None, point: str | None = None
) -> str:
    """The decision of that row."""
    return row(answer, target, run, point).decision
