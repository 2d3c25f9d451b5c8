"""A tree written as TOML reads back as the same tree, and reads well."""

import pathlib
import tomllib
from collections.abc import Iterator
from datetime import UTC, date, datetime, time
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.job import loads, tree_to_toml
from lightoff.job.faults import Path
from lightoff.job.lines import Lines

FULL = tomllib.loads(pathlib.Path(__file__).with_name("full.toml").read_text(encoding="utf-8"))
TEXTS = st.text(st.characters(exclude_categories=["Cs"]), max_size=12)
SCALARS = (
    st.booleans()
    | st.integers(-(2**63), 2**63 - 1)
    | st.floats(allow_nan=False)
    | TEXTS
    | st.dates()
    | st.datetimes(timezones=st.none() | st.just(UTC))
)
TREES = st.recursive(
    st.dictionaries(TEXTS, SCALARS | st.lists(SCALARS, max_size=3), max_size=4),
    lambda inner: st.dictionaries(
        TEXTS, inner | st.lists(inner, max_size=3) | SCALARS | st.lists(SCALARS | inner), max_size=4
    ),
    max_leaves=20,
)


@given(TREES)
def test_any_tree_survives_the_way_through_toml(tree: dict[str, Any]) -> None:
    assert tomllib.loads(tree_to_toml(tree)) == tree


@given(TREES)
def test_every_path_of_what_is_written_has_a_line(tree: dict[str, Any]) -> None:
    assert set(Lines(tree_to_toml(tree)).of) == set(_paths(tree))


def _paths(node: Any, path: Path = ()) -> Iterator[Path]:
    pairs: Any = ()
    if isinstance(node, dict):
        pairs = node.items()
    elif isinstance(node, list):
        pairs = enumerate(node, start=1)
    for step, part in pairs:
        yield (*path, step)
        yield from _paths(part, (*path, step))


def test_the_example_survives_it(full_text: str, full_tree: dict[str, Any]) -> None:
    written = tree_to_toml(full_tree)
    assert tomllib.loads(written) == full_tree
    assert loads(written, form="toml").visit() == loads(full_text, form="toml").visit()


@given(st.data())
def test_so_does_any_part_of_it(data: st.DataObject) -> None:
    part = _pruned(FULL, data)
    assert tomllib.loads(tree_to_toml(part)) == part


def _pruned(node: Any, data: st.DataObject) -> Any:
    """The tree with some of its keys and rows left out."""
    if isinstance(node, dict):
        kept = data.draw(st.sets(st.sampled_from(sorted(node)))) if node else set()
        return {key: _pruned(node[key], data) for key in node if key in kept}
    if isinstance(node, list) and node and isinstance(node[0], dict):
        return [_pruned(row, data) for row in node[: data.draw(st.integers(0, 2))]]
    return node


def test_it_is_laid_out_as_a_person_would() -> None:
    tree = {
        "unit": {
            "furnace": [{"gas": "propane", "train": [{"share": 1.0}]}],
            "tag": "MAU-1",
            "fan": {"curve": [["6000 cfm", "3.30 inwc", "5.3 hp"]] * 3},
            "two words": {},
        },
        "format": 1,
        "visit": [
            {
                "date": date(2026, 11, 3),
                "blank": None,
                "reading": [{"at": time(10, 12), "traverse": {"shape": "round", "blank": None}}],
            }
        ],
    }
    assert (
        tree_to_toml(tree)
        == """\
format = 1

[unit]
tag = "MAU-1"

[[unit.furnace]]
gas = "propane"

[[unit.furnace.train]]
share = 1.0

[unit.fan]
curve = [
    ["6000 cfm", "3.30 inwc", "5.3 hp"],
    ["6000 cfm", "3.30 inwc", "5.3 hp"],
    ["6000 cfm", "3.30 inwc", "5.3 hp"],
]

[unit."two words"]

[[visit]]
date = 2026-11-03

[[visit.reading]]
at = 10:12:00
traverse = { shape = "round" }
"""
    )


@pytest.mark.parametrize(
    "text", ['a "quote"', "back\\slash", "tab\t", "line\nbreak", "\x7f\x00", "°"]
)
def test_every_character_finds_its_escape(text: str) -> None:
    assert tomllib.loads(tree_to_toml({text: text})) == {text: text}


def test_moments_keep_their_offset() -> None:
    moment = datetime.fromisoformat("2026-11-03T10:12:00-06:00")
    assert tree_to_toml({"at": moment}) == "at = 2026-11-03T10:12:00-06:00\n"
