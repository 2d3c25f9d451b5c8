"""`lightoff calc`: one of the trade's sums, alone or down a table, on screen, paper or as data."""

import json
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import get_args

from lightoff.calculations import CALCULATIONS, Calculation
from lightoff.job.nearest import unknown
from lightoff.quantity import LightoffError, System
from lightoff.surfaces.calculating import (
    Fault,
    FaultsError,
    Sheet,
    answered,
    as_data,
    filled,
)
from lightoff.surfaces.calculating.plain import as_lines
from lightoff.surfaces.cli.calc_help import help_lines, list_lines
from lightoff.surfaces.cli.options import Words, as_option, read_words, typed_inputs
from lightoff.surfaces.cli.print import print_lines
from lightoff.surfaces.words import Speech


def calc(arguments: Sequence[str]) -> None:
    """Carry out what the words after `lightoff calc` ask for."""
    words = read_words(arguments)
    speech = Speech(_system(words))
    if words.name is None:
        _only_help(words)
        print_lines(list_lines(CALCULATIONS.values(), speech))
        return
    calculation = _named(words.name)
    if words.has("help"):
        print_lines(help_lines(calculation, speech))
    elif words.has("table"):
        print(_table(words, calculation, speech), end="")
    else:
        _answer(words, calculation, speech)


def _answer(words: Words, calculation: Calculation, speech: Speech) -> None:
    sheet = _sheet(words, calculation, speech)
    if words.has("pdf"):
        _print_on_paper(sheet, words, speech)
    elif words.has("json"):
        print(json.dumps(as_data(sheet), ensure_ascii=False, indent=2))
    else:
        print_lines(as_lines(sheet, speech, working=words.has("working")))


def _sheet(words: Words, calculation: Calculation, speech: Speech) -> Sheet:
    typed, faults = typed_inputs(words, calculation)
    sheet = filled(calculation, typed, speech)
    faults += [Fault(as_option(each.place) if each.place else "", each.message)
               for each in sheet.faults]  # fmt: skip
    if faults:
        raise FaultsError(faults)
    return sheet


def _table(words: Words, calculation: Calculation, speech: Speech) -> str:
    for option in ("json", "pdf", "working"):
        if words.has(option):
            raise LightoffError(f"--table prints a CSV table: leave --{option} out")
    path = _file(words, "table", "readings.csv")
    data = sys.stdin.buffer.read() if path == "-" else Path(path).read_bytes()
    typed, faults = typed_inputs(words, calculation)
    if faults:
        raise FaultsError(faults)
    return answered(calculation, data, typed, speech)


def _print_on_paper(sheet: Sheet, words: Words, speech: Speech) -> None:
    from lightoff.surfaces.calculating.paper import paper

    path = Path(_file(words, "pdf", "answer.pdf"))
    path.write_bytes(paper(sheet, speech))
    print(f"Answer written to {path}", file=sys.stderr)


def _file(words: Words, option: str, example: str) -> str:
    path = words.value(option)
    if not path:
        raise LightoffError(f"--{option} names no file: write --{option} {example}")
    return path


def _system(words: Words) -> System:
    text = words.value("units") if words.has("units") else "us"
    for system in get_args(System):
        if text == system:
            return system  # type: ignore[no-any-return]  # get_args knows no types
    raise LightoffError(f"--units: {unknown(text, 'a system of units', get_args(System))}")


def _named(name: str) -> Calculation:
    calculation = CALCULATIONS.get(name.casefold())
    if calculation is None:
        raise LightoffError(unknown(name, "a calculation", CALCULATIONS))
    return calculation


def _only_help(words: Words) -> None:
    """Without a calculation's name nothing but help and units can be meant."""
    astray = [as_option(each) for each in words.options if each not in ("help", "units")]
    if astray:
        raise LightoffError(f"{astray[0]} stands before any calculation: write its name first")
