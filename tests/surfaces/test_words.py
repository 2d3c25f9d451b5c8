"""Every sentence the engine asks for is in the catalogue, and reads as one."""

import ast
import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.job import parse_tree
from lightoff.judgement import TARGET_KINDS, Row, assess
from lightoff.judgement.message import message
from lightoff.machine import points, runs, settings
from lightoff.machine.checks import CHECKS
from lightoff.machine.trips import TRIPS
from lightoff.surfaces.words import Speech, has, resolution_of
from trade.build import tree, visit

JUDGEMENT = Path(__file__).parents[2] / "src" / "lightoff" / "judgement"
SPEECH = Speech()


def _asked_for() -> set[str]:
    """Ids given to `message(...)` and `Remark(...)`, and cautions, read from the source."""
    ids: set[str] = set()
    for path in JUDGEMENT.rglob("*.py"):
        text = path.read_text(encoding="utf-8")
        for node in ast.walk(ast.parse(text)):
            if not isinstance(node, ast.Call):
                continue
            name = getattr(node.func, "id", "")
            place = {"message": 0, "Remark": 1}.get(name)
            if place is None or len(node.args) <= place:
                continue
            ids |= {
                each.value
                for each in ast.walk(node.args[place])
                if isinstance(each, ast.Constant) and isinstance(each.value, str)
            }
        ids |= set(re.findall(r'caution="([\w-]+)"', text))
        ids |= set(re.findall(r'Missing\([^()]*(?:\([^()]*\)[^()]*)*, "([\w-]+)"\)', text))
    decisions = {"conforms", "undecided"}  # compared with, not asked for
    return {each for each in ids if re.fullmatch(r"[a-z]+(-[a-z0-9]+)*", each)} - decisions


@pytest.mark.parametrize("message_id", sorted(_asked_for()))
def test_every_sentence_asked_for_is_in_the_catalogue(message_id: str) -> None:
    assert has(message_id)


def test_every_name_of_the_trade_is_in_the_catalogue() -> None:
    job = parse_tree(tree(furnaces=3) | {"visit": [visit()]})
    machine = job.machine()
    for name in (*TARGET_KINDS, *(f"check: {c}" for c in CHECKS), *(f"trip: {t}" for t in TRIPS)):
        assert not SPEECH.target(name).startswith(("target:", "check:", "trip:")), name
    for point in points(machine):
        assert not SPEECH.point(point.id).startswith("point:"), point.id
    for setting in settings(machine):
        assert not SPEECH.setting(setting).startswith("setting:"), setting
    for run in runs(machine):
        assert not SPEECH.run(run).startswith("run:"), run


def test_no_sentence_of_an_assessment_is_left_unfilled() -> None:
    job = parse_tree(tree(furnaces=3) | {"visit": [visit("high.1 train.1.1.manifold 3.9 inwc")]})
    answer = assess(job.machine(), job.visit(1))
    for system in ("us", "si"):
        speech = Speech(system)
        for row in answer.targets:
            for text in (speech.row(row), speech.say(row.why, row), speech.window(row)):
                assert "{" not in text
                assert "None" not in text
        for remark in answer.remarks:
            assert "{" not in speech.say(remark)


@given(st.floats(min_value=1e-9, max_value=1e9))
def test_an_uncertainty_keeps_one_digit_or_two(expanded: float) -> None:
    place = resolution_of(expanded)
    assert place is not None
    digits = round(expanded / place)
    assert 3 <= digits <= 30


def test_the_reader_is_spoken_to_in_their_own_units() -> None:
    row = Row(
        id="manifold high", point="train.1.1.manifold", run="high", decision="does not conform",
        severity="correct", why=message("above", by=60.0), estimate=931.0,
        standard_uncertainty=5.0, lower=828.0, upper=915.0, kind="pressure", furnace=1,
    )  # fmt: skip
    us, si = Speech("us"), Speech("si")
    assert us.say(row.why, row) == "0.24 in. w.c. above the limit"
    assert si.say(row.why, row) == "60 Pa above the limit"
    assert us.window(row) == "3.32 to 3.67 in. w.c."
    assert si.window(row) == "828 to 915 Pa"
    assert us.row(row) == "Manifold, high, furnace 1"


def test_no_sentence_stands_twice_in_the_catalogue() -> None:
    text = (JUDGEMENT.parent / "surfaces" / "words" / "locale" / "en" / "LC_MESSAGES" /
            "lightoff.po").read_text(encoding="utf-8")  # fmt: skip
    ids = re.findall(r'^msgid "(.+)"$', text, re.MULTILINE)
    assert sorted({each for each in ids if ids.count(each) > 1}) == []
