"""The page for paper: verdict first, nothing hidden, hostile text printed as text."""

from pathlib import Path

import pytest

from lightoff.job import load, parse_tree
from lightoff.surfaces.report import page
from trade.build import tree, visit

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))


@pytest.mark.parametrize("path", EXAMPLES, ids=[path.stem for path in EXAMPLES])
def test_every_example_prints(path: Path) -> None:
    text = page(load(path))
    assert text.count("<h1>") == 1
    assert "Every point" in text


def test_the_verdict_comes_before_any_table() -> None:
    text = page(load(EXAMPLES[-1]))
    assert text.index("<h1>") < text.index("Open points") < text.index("<table")


def test_the_same_job_prints_the_same_bytes() -> None:
    job = load(EXAMPLES[0])
    assert page(job) == page(job)


def test_a_hostile_note_prints_as_text() -> None:
    hostile = '<script>alert("x")</script>'
    job = tree(furnaces=1)
    job["unit"]["serves"] = hostile
    job["visit"] = [visit(deficiency=[{"what": hostile, "severity": "note"}], by=hostile)]
    text = page(parse_tree(job))
    assert "<script>" not in text
    assert text.count("&lt;script&gt;") == 3
