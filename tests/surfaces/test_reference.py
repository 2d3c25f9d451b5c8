"""docs/reference says what the formulas and calculations say of themselves, and no more."""

import importlib.util
import re
import shlex
import sys
from pathlib import Path
from types import ModuleType

import pytest

from laws.sampling import FORMULAS
from lightoff.formula import describe
from lightoff.physics.atmosphere import (
    barometric_pressure,
    geopotential_altitude,
    standard_temperature,
)
from lightoff.physics.meter import metered_flow
from published.cases import cases

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def reference() -> ModuleType:
    """The script that writes the reference."""
    spec = importlib.util.spec_from_file_location("reference", ROOT / "scripts" / "reference.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_the_reference_is_up_to_date(reference: ModuleType) -> None:
    for name, text in reference.pages().items():
        written = (reference.REFERENCE / name).read_text(encoding="utf-8")
        assert written == text, f"{name} is out of date: run `make reference`"


def test_every_formula_is_in_the_reference() -> None:
    text = (ROOT / "docs" / "reference" / "formulas.md").read_text(encoding="utf-8")
    for formula in FORMULAS:
        told = describe(formula)
        entry = text.partition(f"\n### {told.name}\n")[2].partition("\n##")[0]
        for part in (told.sentence, f"```\n{told.equation}\n```", f"Source: {told.source}"):
            assert part in entry, told.name


def test_a_formula_counts_only_when_its_arithmetic_runs(reference: ModuleType) -> None:
    found = reference.carried_out(lambda: barometric_pressure(500.0))
    assert found == [geopotential_altitude, standard_temperature, barometric_pressure]
    assert reference.carried_out(lambda: (barometric_pressure, describe(metered_flow))) == []
    assert sys.getprofile() is None


def test_the_count_is_of_cases_that_are_no_misses(reference: ModuleType) -> None:
    held = reference.upheld(cases())
    known = {case.id for case in cases()}
    misses = set(re.findall(r"^\[(.+)\]$", (reference.HERE / "misses.toml").read_text(), re.M))
    counted = {each for ids in held.values() for each in ids}
    assert counted <= known - misses
    assert all(len(set(ids)) == len(ids) for ids in held.values())


def test_every_example_in_the_reference_is_one_command(reference: ModuleType) -> None:
    text = (ROOT / "docs" / "reference" / "calculations.md").read_text(encoding="utf-8")
    commands = re.findall(r"```sh\n(.*?)\n```", text, re.DOTALL)
    assert len(commands) == len(reference.CALCULATIONS)
    for command in commands:
        words = shlex.split(command.replace("\\\n", " "))
        assert words[:2] == ["lightoff", "calc"]
        typed = reference.example(words[2])
        assert words[3:] == [part for name, value in typed.items()
                             for part in (f"--{name.replace('_', '-')}", value)]  # fmt: skip
