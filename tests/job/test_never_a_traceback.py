"""Whatever is handed in, it is a job or a `JobError`: nothing else ever comes out."""

import copy
import json
import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from lightoff.job import Job, JobError, loads, parse_tree, readings_from_csv, schema
from lightoff.job.readings_csv import COLUMNS

FULL_TEXT = Path(__file__).with_name("full.toml").read_text(encoding="utf-8")
FULL = tomllib.loads(FULL_TEXT)
FIELDS = sorted(
    {key for table in schema()["$defs"].values() for key in table.get("properties", {})}
)
TYPED = """
high|low.2|train.1.1.manifold|flue.{n}.o2|3.5 inwc|7 %|-1 degF|nan Pa|1/0 in|1e999 Pa|rise|discharge
2026-11-03|2026-11-03T10:12:00-06:00|0001-01-01T00:00+14:00|oxygen|direct|gauge-1|purge|high limit
"""
WORDS = st.sampled_from([*FIELDS, *TYPED.replace("\n", "|").split("|"), "\ud800"])
LEAVES = (
    st.none()
    | st.booleans()
    | st.integers()
    | st.just(10**400)
    | st.floats()
    | st.text(max_size=8)
    | WORDS
    | st.datetimes()
    | st.dates()
    | st.times()
)
VALUES = st.recursive(
    LEAVES,
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(st.sampled_from(FIELDS) | st.text(max_size=4), inner, max_size=4)
    ),
    max_leaves=8,
)


def _outcome(read: Any, *typed: Any, **how: Any) -> Any:
    try:
        return read(*typed, **how)
    except JobError as error:
        return error


def _is_job_or_sentences(read: Any, *typed: Any, **how: Any) -> None:
    outcome = _outcome(read, *typed, **how)
    if isinstance(outcome, JobError):
        assert len(str(outcome).splitlines()) == len(outcome.faults) + bool(outcome.more) > 0
        assert str(outcome).encode()
    if isinstance(outcome, Job):
        outcome.machine()
        for number, _ in enumerate(outcome.visits, start=1):
            times = [reading.at for reading in outcome.visit(number).readings if reading.at]
            sorted(times)


@given(VALUES)
@example({"unit": {"furnace": [{"train": []}]}})
@example({3: 4})
def test_any_tree(tree: Any) -> None:
    _is_job_or_sentences(parse_tree, tree)


@settings(max_examples=400)
@given(st.data())
def test_the_example_with_something_else_in_some_places(data: st.DataObject) -> None:
    tree = copy.deepcopy(FULL)
    for _ in range(data.draw(st.integers(1, 3))):
        _replace_something(tree, data)
    _is_job_or_sentences(parse_tree, tree)


def _replace_something(node: Any, data: st.DataObject) -> None:
    """Walk into the tree by chance and put something else where the walk ends."""
    while True:
        keys = sorted(node) if isinstance(node, dict) else list(range(len(node)))
        if not keys:
            return
        key = data.draw(st.sampled_from(keys))
        if isinstance(node[key], (dict, list)) and data.draw(st.integers(0, 5)):
            node = node[key]
            continue
        if data.draw(st.booleans()):
            node[key] = data.draw(VALUES)
        else:
            del node[key]
        return


@given(text=st.text(max_size=200))
@pytest.mark.parametrize("form", ["toml", "json"])
def test_any_text(text: str, form: Any) -> None:
    _is_job_or_sentences(loads, text, form=form)


@given(VALUES)
def test_any_json(tree: Any) -> None:
    _is_job_or_sentences(loads, json.dumps(tree, default=str), form="json")


@settings(max_examples=200)
@given(st.integers(0, len(FULL_TEXT)), st.integers(0, 60), st.text(max_size=6) | WORDS)
def test_the_example_with_a_slip_of_the_hand(at: int, gone: int, put: str) -> None:
    _is_job_or_sentences(loads, FULL_TEXT[:at] + put + FULL_TEXT[at + gone :], form="toml")


CELLS = st.text(max_size=5) | WORDS


@given(st.text(max_size=100) | st.lists(CELLS, max_size=30).map(",".join))
def test_any_csv(body: str) -> None:
    _is_job_or_sentences(readings_from_csv, body)
    _is_job_or_sentences(readings_from_csv, f"{','.join(COLUMNS)}\n{body}")
