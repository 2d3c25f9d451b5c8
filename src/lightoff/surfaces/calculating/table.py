"""Many answers at once: a CSV table whose columns are inputs, its results appended as columns.

A header is the name of an input, with or without its unit, `dial [ft3]`; what a column without one
holds names the unit in each cell. A column whose name begins with `#` is passed through.
"""

import csv
import io
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lightoff.calculations import Calculation, Input, Output
from lightoff.job.nearest import shown as quoted
from lightoff.job.nearest import unknown
from lightoff.quantity import KINDS, LightoffError, in_unit, parse
from lightoff.surfaces.calculating.faults import Fault, FaultsError
from lightoff.surfaces.calculating.several import unit_of
from lightoff.surfaces.calculating.sheet import Sheet
from lightoff.surfaces.calculating.shown import filled
from lightoff.surfaces.words import Speech

MOST_BYTES = 5_000_000
_HEADER = re.compile(r"(?P<name>[^\[\]]*?)\s*(?:\[(?P<unit>[^\[\]]*)\])?")


@dataclass(frozen=True)
class Column:
    """One column: the input it holds, None where it is passed through, and its cells' unit."""

    asked: Input | None
    unit: str

    def typed(self, cell: str) -> str:
        """A cell as it would be typed alone."""
        own = not self.unit or not cell or unit_of(cell)
        return cell if own else f"{cell} {self.unit}"


def answered(
    calculation: Calculation, data: bytes, common: Mapping[str, str], speech: Speech
) -> str:
    """The table with the results of every row; `common` is typed for all rows alike.

    Raises a `FaultsError` that names every faulty cell.
    """
    header, *rows = _rows(data)
    columns = _columns(calculation, header, common)
    sheets, faults = [], []
    for number, cells in rows:
        if len(cells) != len(columns):
            faults.append(_uneven(number, len(cells), len(columns)))
            continue
        typed = {column.asked.name: column.typed(cell)
                 for column, cell in zip(columns, cells, strict=True) if column.asked}  # fmt: skip
        sheet = filled(calculation, {**common, **typed}, speech, working=False)
        faults += [Fault(f"row {number}{f', {f.place}' if f.place else ''}", f.message)
                   for f in sheet.faults]  # fmt: skip
        sheets.append((cells, sheet))
    if faults:
        raise FaultsError(faults)
    return _written(calculation, header[1], sheets, speech)


Numbered = tuple[int, list[str]]


def _rows(data: bytes) -> list[Numbered]:
    """Every row that holds something, with its number; the first is the header."""
    reader = csv.reader(io.StringIO(_text(data), newline=""), strict=True)
    rows: list[Numbered] = []
    try:
        rows += ((reader.line_num, [cell.strip() for cell in cells])
                 for cells in reader if any(map(str.strip, cells)))  # fmt: skip
    except csv.Error as error:
        raise FaultsError([Fault(f"row {reader.line_num}", f"not CSV: {error}")]) from None
    if len(rows) < 2:
        raise FaultsError(
            [Fault("table", "no rows: the first names the inputs, the rest are data")]
        )
    return rows


def _text(data: bytes) -> str:
    if len(data) > MOST_BYTES:
        raise FaultsError([Fault("table", f"larger than {MOST_BYTES // 1_000_000} MB")])
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        row = data.count(b"\n", 0, error.start) + 1
        raise FaultsError([Fault(f"row {row}", "not text in UTF-8: save it as UTF-8")]) from None


def _columns(calculation: Calculation, header: Numbered, common: Mapping[str, str]) -> list[Column]:
    """What each column holds; a `FaultsError` names every column that holds nothing known."""
    columns, faults, seen = [], [], set(common)
    for title in header[1]:
        try:
            column = _column(calculation, title)
        except LightoffError as error:
            faults.append(Fault(f"row {header[0]}", str(error)))
            continue
        if column.asked and column.asked.name in seen:
            faults.append(Fault(f"row {header[0]}", f"{quoted(title)} is given twice: keep one"))
        seen |= {column.asked.name} if column.asked else set()
        columns.append(column)
    if faults:
        raise FaultsError(faults)
    return columns


def _column(calculation: Calculation, title: str) -> Column:
    if title.startswith("#"):
        return Column(None, "")
    if ";" in title:
        raise LightoffError(f"{quoted(title)}: columns are parted by commas, not by semicolons")
    match = _HEADER.fullmatch(title)
    name = (match["name"] if match else title).casefold().replace("-", "_").replace(" ", "_")
    asked = calculation.input(name)
    if match is None or asked is None:
        known = [each.name for each in calculation.inputs]
        raise LightoffError(unknown(name, f"an input of {calculation.name}", known))
    unit = match["unit"] or ""
    if unit and asked.kind in KINDS and unit != "1":
        try:
            parse(f"1 {unit}", asked.kind)
        except LightoffError as error:
            raise LightoffError(f"column {quoted(title)}: {error}") from None
    return Column(asked, "" if unit == "1" else unit)


def _uneven(number: int, given: int, due: int) -> Fault:
    told = f"{given} cells under {due} columns: put a list or a text with a comma in double quotes"
    return Fault(f"row {number}", told)


def _written(
    calculation: Calculation, header: list[str], sheets: list[tuple[list[str], Sheet]],
    speech: Speech,
) -> str:  # fmt: skip
    noted = any(sheet.notes for _, sheet in sheets)
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    names = [_head(output, speech) for output in calculation.outputs]
    writer.writerow([*header, *names, *(["notes"] if noted else [])])
    for cells, sheet in sheets:
        notes = [" ".join(note.sentence for note in sheet.notes)] if noted else []
        writer.writerow([*cells, *_results(calculation, sheet, speech), *notes])
    return text.getvalue()


def _head(output: Output, speech: Speech) -> str:
    unit = KINDS[output.kind].unit(speech.system) if output.kind in KINDS else "1"
    return output.name if unit == "1" else f"{output.name} [{unit}]"


def _results(calculation: Calculation, sheet: Sheet, speech: Speech) -> Iterator[str]:
    found = {result.name: result.si for result in sheet.results}
    for output in calculation.outputs:
        yield _cell(found.get(output.name), output.kind, speech)


def _cell(value: object, kind: str, speech: Speech) -> str:
    """A result as a bare number in the reader's unit, to six digits."""
    if isinstance(value, tuple):
        return ", ".join(_cell(each, kind, speech) for each in value)
    if isinstance(value, float):
        return f"{in_unit(value, kind, KINDS[kind].unit(speech.system)):.6g}"
    return "" if value is None else str(value)
