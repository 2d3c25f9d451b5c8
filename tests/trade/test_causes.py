"""What is wrong, ranked: a cause that pushes readings its way comes first, and says which."""

import math
import tomllib
from functools import lru_cache
from pathlib import Path

import pytest

from lightoff.inference.causes import causes
from lightoff.job import parse_tree
from lightoff.judgement import Assessment, assess
from lightoff.judgement.causes.data import table
from lightoff.machine.model.rated import rate
from lightoff.machine.model.unknowns import unknowns
from trade.build import tree

EXAMPLES = Path(__file__).parents[2] / "examples"
PROPANE, VFD, FINDINGS = "one-furnace-propane", "two-furnaces-vfd", "two-furnaces-with-findings"


@lru_cache
def answered(example: str, *changes: tuple[str, str]) -> Assessment:
    text = (EXAMPLES / f"{example}.toml").read_text("utf-8")
    for written, instead in changes:
        assert written in text
        text = text.replace(written, instead, 1)
    job = parse_tree(tomllib.loads(text))
    return assess(job.machine(), job.visit())


@pytest.mark.parametrize("example", [PROPANE, VFD, FINDINGS, "direct-drive-indoor"])
def test_probabilities_are_shares_of_all_there_is(example: str) -> None:
    found = answered(example).causes
    assert found is not None
    assert math.fsum(row.probability for row in found) == pytest.approx(1.0)
    assert {"none", "other"} <= {row.id for row in found}


@pytest.mark.parametrize("example", [PROPANE, VFD])
def test_a_sound_visit_is_most_likely_sound(example: str) -> None:
    found = answered(example).causes
    assert found is not None
    assert found[0].id == "none"


def test_a_loaded_filter_is_found_by_every_static_pressure_behind_it() -> None:
    found = answered(FINDINGS).causes
    assert found is not None
    assert found[0].id == "blocked filter"
    assert "static.filters fan" in found[0].speaks_for


def test_a_dial_taken_for_another_is_named() -> None:
    halved = ('"77.7 s"', '"38.85 s"'), ('"66.4 s"', '"33.2 s"')
    found = answered(VFD, *halved).causes
    assert found is not None
    assert found[0].id == "wrong meter dial"
    assert any(name.startswith("gas.meter.seconds") for name in found[0].speaks_for)


def test_one_reading_alone_that_is_off_is_something_else() -> None:
    found = answered(VFD, ('"66.4 s"', '"132.8 s"')).causes
    assert found is not None
    assert found[0].id == "other"


def test_every_cause_has_its_odds_and_every_sign_its_causes() -> None:
    known = {row["id"] for row in table("prevalence")["cause"]}
    job = tree(furnaces=3) | {"visit": []}
    job["unit"]["drive"]["vfd"] = True
    job["design"]["exhaust"] = "8000 cfm"
    rated = rate(parse_tree(job).machine())
    named = {each.id for each in causes(rated, unknowns(rated), ("high", "low"), ("gauge",))}
    assert named <= known
    assert known - named <= {"cold propane tank"}  # this unit burns natural gas
    for rows in table("signs").values():
        for row in rows:
            assert set(row["with"]) <= known
            assert 0 < row["usual"] < 1
            assert all(0 < chance < 1 for chance in row["with"].values())
