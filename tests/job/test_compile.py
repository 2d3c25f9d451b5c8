"""Nothing that is declared is lost on the way into the machine's own dataclasses."""

from dataclasses import fields
from typing import Any

import pytest

from lightoff.job import furnace, instrument, parse_tree, reading, site, target, unit, visit
from lightoff.job.table import Table
from lightoff.machine import plate, settings
from lightoff.machine import site as where
from lightoff.machine import visit as seen
from lightoff.quantity import EXAMPLES

# the declared table, the dataclass, what is declared under another name or is no part of it
PAIRS: list[tuple[type[Table], type[Any], set[str]]] = [
    (
        unit.Unit,
        plate.Unit,
        {"firing", "electrical", "motor", "drive", "fan", "airside", "furnaces"},
    ),
    (unit.Electrical, plate.Electrical, set()),
    (unit.Motor, plate.Motor, set()),
    (unit.Drive, plate.Drive, set()),
    (unit.Fan, plate.Fan, set()),
    (unit.Airside, plate.Airside, set()),
    (furnace.Furnace, plate.Furnace, set()),
    (furnace.Train, plate.Train, set()),
    (site.Design, where.Design, set()),
    (site.Site, where.Site, set()),
    (site.Pipe, where.Pipe, set()),
    (instrument.Instrument, seen.Instrument, set()),
    (instrument.Channel, seen.Channel, set()),
    (target.Limit, seen.Limit, set()),
    (reading.Reading, seen.Reading, set()),
    (reading.Traverse, seen.Traverse, {"width", "height", "diameter"}),
    (visit.Visit, seen.Visit, set()),
    (visit.Symptom, seen.Symptom, set()),
    (visit.Adjustment, seen.Adjustment, set()),
    (visit.Trip, seen.TripProof, set()),
    (visit.Check, seen.CheckMade, set()),
    (visit.Step, seen.StepTimed, set()),
    (visit.Joint, seen.Joint, set()),
    (visit.Decay, seen.Decay, {"minutes"}),
    (visit.SetPoint, seen.SetPoint, set()),
    (visit.Deficiency, seen.Deficiency, set()),
    (visit.Deferred, seen.Deferred, set()),
]
OUR_OWN = {"place", "line", "number", "rule", "instruments", "limits"}
WORKED_OUT = {"area", "standard", "duration", "resolution", "step"}


@pytest.mark.parametrize(("table", "kind", "apart"), PAIRS)
def test_every_declared_field_has_its_own(table: type[Table], kind: type, apart: set[str]) -> None:
    there = {field.name for field in fields(kind)}
    assert set(table.model_fields) - there == apart
    assert there - set(table.model_fields) <= OUR_OWN | WORKED_OUT


def test_every_setting_of_the_machine_can_be_adjusted(full_tree: dict[str, Any]) -> None:
    at = "2026-11-03T10:12:00-06:00"
    machine = parse_tree(full_tree).machine()
    full_tree["visit"][0]["adjustment"] = [
        {"at": at, "what": setting, "to": EXAMPLES[kind][1] if kind else "as it should be"}
        for setting, kind in settings(machine).items()
    ]
    adjusted = parse_tree(full_tree).visit().adjustments
    assert [adjustment.what for adjustment in adjusted] == list(settings(machine))
    assert all(adjustment.after is not None for adjustment in adjusted)
