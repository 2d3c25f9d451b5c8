"""Readings as CSV: one row a reading, in the shape a job's tree has them."""

import csv
import io
from collections.abc import Iterator
from typing import Any

from pydantic import ValidationError

from lightoff.job.faults import MOST_LISTED, Fault, JobError, Path, dotted, one_line, whole
from lightoff.job.nearest import either, unknown
from lightoff.job.parse import guide_to
from lightoff.job.reading import Reading
from lightoff.job.sentences import job_error
from lightoff.job.text import sound

REQUIRED = ("run", "point", "value", "unit")
COLUMNS = (
    *REQUIRED,
    *("instrument", "at", "state", "dial", "revolutions", "position", "main_fan", "note"),
)
_FLAGS = {"true": True, "false": False}

Row = dict[str, Any]


def readings_from_csv(text: str) -> list[Row]:
    """The readings of a CSV, as `[[visit.reading]]` has them; rows count from the header, 1.

    Whether the unit has the run, the point and the instrument is told when the job is read.
    """
    rows = _rows(sound(text))
    header = [name.lower() for name in next(rows, [])]
    _check(header)
    readings: list[Row] = []
    faults: list[Fault] = []
    more = 0
    for number, cells in enumerate(rows, start=2):
        if not any(cells):
            continue
        if len(cells) != len(header):
            faults.append(_uneven(number, len(cells), len(header)))
            continue
        readings.append(_reading(dict(zip(header, cells, strict=True))))
        if error := _error(readings[-1]):
            if len(faults) < MOST_LISTED:
                faults += _faults(error, number)
            else:
                more += error.error_count()
    if faults:
        raise JobError(faults, more)
    return readings


def _rows(text: str) -> Iterator[list[str]]:
    """The cells of each row, without the spaces around them."""
    lines = csv.reader(io.StringIO(text, newline=""), strict=True)
    try:
        for cells in lines:
            yield [cell.strip() for cell in cells]
    except csv.Error as error:
        raise whole(f"not CSV: {error}", lines.line_num, place="readings") from None


def _check(header: list[str]) -> None:
    faults = [unknown(name, "a column", COLUMNS) for name in header if name not in COLUMNS]
    missing = [name for name in REQUIRED if name not in header]
    if missing:
        faults.append(f"the header lacks {either(missing, 'and')}: it begins {','.join(REQUIRED)}")
    if len(set(header)) < len(header):
        faults.append("a column stands twice in the header: keep one")
    if faults:
        raise JobError([Fault("row 1", None, one_line(fault)) for fault in faults])


def _uneven(number: int, given: int, due: int) -> Fault:
    return Fault(
        f"row {number}",
        None,
        f"{given} cells under {due} columns: put a text that holds a comma in double quotes",
    )


def _reading(cells: dict[str, str]) -> Row:
    """One row in the tree's shape: value and unit joined, blanks left out."""
    reading: Row = {name: cell for name, cell in cells.items() if cell and name != "unit"}
    if "value" in reading:
        unit = "" if cells["unit"] == "1" else cells["unit"]  # 1: the unit of a bare number
        reading["value"] = f"{cells['value']} {unit}".strip()
    if "main_fan" in reading:
        reading["main_fan"] = _FLAGS.get(cells["main_fan"].lower(), cells["main_fan"])
    if "revolutions" in reading:
        reading["revolutions"] = _turns(cells["revolutions"])
    return reading


def _turns(cell: str) -> float | str:
    """A number as TOML would have it; what is none is left for its own sentence."""
    try:
        return int(cell) if cell.isdecimal() else float(cell)
    except ValueError:
        return cell


def _error(reading: Row) -> ValidationError | None:
    """What is wrong with one row by itself."""
    try:
        Reading.model_validate(reading)
    except ValidationError as error:
        return error
    return None


def _faults(error: ValidationError, number: int) -> tuple[Fault, ...]:
    def place(path: Path) -> str:
        return f"row {number}, {dotted(path)}" if path else f"row {number}"

    return job_error(error, guide_to(Reading), place=place).faults
