"""Readings as CSV are the readings of a job's tree; a fault names its row and its column."""

import csv
import io
from typing import Any

import pytest

from lightoff.job import Fault, JobError, parse_tree, readings_from_csv
from lightoff.job.readings_csv import COLUMNS

HEADER = ",".join(COLUMNS)


def _faults(text: str) -> tuple[Fault, ...]:
    with pytest.raises(JobError) as caught:
        readings_from_csv(text)
    return caught.value.faults


def test_a_row_is_a_reading_of_the_tree() -> None:
    text = (
        f"{HEADER}\n"
        "high,gas.meter.seconds,62.4,s,stick-1,2026-11-03T10:12:00-06:00,as left,2 ft3,3,,,\n"
        'high,flue.1.o2,0.068,,,,,,,left,FALSE,"warm, and ""steady"""\n'
        "\n"
        "fan,fan.rpm,1020,rpm,,,,,,,,\n"
    )
    assert readings_from_csv(text) == [
        {
            "run": "high",
            "point": "gas.meter.seconds",
            "value": "62.4 s",
            "instrument": "stick-1",
            "at": "2026-11-03T10:12:00-06:00",
            "state": "as left",
            "dial": "2 ft3",
            "revolutions": 3,
        },
        {
            "run": "high",
            "point": "flue.1.o2",
            "value": "0.068",
            "position": "left",
            "main_fan": False,
            "note": 'warm, and "steady"',
        },
        {"run": "fan", "point": "fan.rpm", "value": "1020 rpm"},
    ]


def test_the_first_four_columns_suffice_in_any_order_and_case() -> None:
    text = "\ufeffPoint, Value ,unit,RUN\r\nflue.1.o2,7.2,%,high\r\nflue.1.o2,0.07,1,high\r\n"
    assert [reading["value"] for reading in readings_from_csv(text)] == ["7.2 %", "0.07"]


def test_readings_survive_the_way_through_csv(full_tree: dict[str, Any]) -> None:
    visit = full_tree["visit"][0]
    visit["reading"] = [reading for reading in visit["reading"] if "value" in reading]
    read = readings_from_csv(_as_csv(visit["reading"]))
    before = parse_tree(full_tree).visit().readings
    visit["reading"] = read
    assert parse_tree(full_tree).visit().readings == before


def _as_csv(readings: list[dict[str, Any]]) -> str:
    out = io.StringIO()
    writer = csv.DictWriter(out, COLUMNS)
    writer.writeheader()
    for reading in readings:
        value, unit = reading["value"].split(" ")
        at = {"at": reading["at"].isoformat()} if "at" in reading else {}
        writer.writerow({**reading, **at, "value": value, "unit": unit})
    return out.getvalue()


ROW_FAULTS = [
    ("high,flue.1.o9,7,%", "row 3, point", "did you mean"),
    ("hihg,flue.1.o2,7,%", "row 3, run", 'did you mean "high"?'),
    ("high,flue.1.o2,7,psi", "row 3, value", "a fraction is due"),
    ("high,static.duct,0.9,", "row 3, value", '"0.9" has no unit'),
    ("high,flue.1.o2,,%", "row 3", "a reading of flue.1.o2 needs its value"),
    (",flue.1.o2,7,%", "row 3, run", "run is missing"),
    ("high,flue.1.o2,7", "row 3", "3 cells under 4 columns"),
    ("high,flue.1.o2,7,%,", "row 3", "5 cells under 4 columns"),
]


@pytest.mark.parametrize(("row", "place", "gist"), ROW_FAULTS)
def test_a_fault_names_its_row_and_column(row: str, place: str, gist: str) -> None:
    (fault,) = _faults(f"run,point,value,unit\nhigh,flue.1.o2,7,%\n{row}\n")
    assert fault.place == place
    assert fault.line is None
    assert gist in fault.message


def test_optional_columns_are_checked_as_well() -> None:
    row = "high,flue.1.o2,7,%,,noon,found,,three,,maybe,\n"
    places = [fault.place for fault in _faults(f"{HEADER}\n{row}{row}")]
    assert places[:4] == ["row 2, at", "row 2, state", "row 2, revolutions", "row 2, main_fan"]
    assert places[4:] == [place.replace("2", "3") for place in places[:4]]


@pytest.mark.parametrize(
    ("header", "gist"),
    [
        ("run,point,value", 'the header lacks "unit": it begins run,point,value,unit'),
        ("run,point,value,units", 'did you mean "unit"?'),
        ("run,point,value,unit,unit", "a column stands twice"),
        ("run;point;value;unit", 'lacks "run", "point", "value" and "unit"'),
    ],
)
def test_the_header_must_be_whole(header: str, gist: str) -> None:
    faults = _faults(f"{header}\n")
    assert {fault.place for fault in faults} == {"row 1"}
    assert any(gist in fault.message for fault in faults)


def test_what_is_not_csv_is_told_so() -> None:
    (fault,) = _faults('run,point,value,unit\nhigh,"flue.1.o2,7,%\n')
    assert (fault.place, fault.line) == ("readings", 2)
    assert fault.message.startswith("not CSV: ")
    assert _faults("")[0].message.startswith("empty")
    assert "larger than 5 MB" in _faults("x" * 5_000_001)[0].message


def test_a_reading_of_a_csv_is_held_against_the_unit_when_the_job_is_read(
    full_tree: dict[str, Any],
) -> None:
    full_tree["visit"][0]["reading"] = readings_from_csv(
        "run,point,value,unit,instrument\nlow.3,flue.1.o2,7,%,nobodys\n"
    )
    with pytest.raises(JobError) as caught:
        parse_tree(full_tree)
    assert [fault.place for fault in caught.value.faults] == [
        "visit.1.reading.1.run",
        "visit.1.reading.1.instrument",
    ]


def test_of_a_thousand_faulty_rows_two_hundred_are_told() -> None:
    with pytest.raises(JobError) as caught:
        readings_from_csv("run,point,value,unit\n" + "high,flue.1.o9,7,%\n" * 1000)
    assert (len(caught.value.faults), caught.value.more) == (200, 800)
    assert str(caught.value).endswith("\nand 800 more")
