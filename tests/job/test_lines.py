"""Every key of a TOML text is found on the line a person would look at."""

import tomllib
from collections.abc import Iterator
from typing import Any

import pytest

from lightoff.job.faults import Path
from lightoff.job.lines import Lines

TEXT = """\
# a comment with [brackets] = 1
top = 1
"quoted key" = 'single ] # quoted'

[unit]                   # a comment after a header
tag = "a # no comment"
fan.speed = "1 rpm"
fan . "max.speed" = "2 rpm"
note = \"\"\"
[not.a.header]
key = "no key"
\"\"\"
plain = '''
[[nor.this]]'''
after = 1

[[unit.furnace]]
gas = "propane"
rise = [
    "20 degF",  # a comment, with a comma
    "60 degF",
]
train = [{ share = 0.5 }, { share = 0.5, reference = "atmosphere" }]
[unit.furnace.more.deep]
x = 1

[[unit.furnace]]
gas = "natural gas"
[[unit.furnace.train]]
share = 1.0
[[unit.furnace.train]]
share = 2026-01-01T10:00:00-06:00

[site]
composition = { methane = 0.9, "n-butane" = [0.1, [1, 2]] }
empty = []
last = -1.5e3
"""


@pytest.mark.parametrize(
    ("path", "snippet"),
    [
        (("top",), "top = 1"),
        (("quoted key",), '"quoted key"'),
        (("unit",), "[unit] "),
        (("unit", "tag"), "tag ="),
        (("unit", "fan", "speed"), "fan.speed"),
        (("unit", "fan", "max.speed"), "fan . "),
        (("unit", "note"), "note ="),
        (("unit", "plain"), "plain ="),
        (("unit", "after"), "after ="),
        (("unit", "furnace"), "[[unit.furnace]]"),
        (("unit", "furnace", 1), "[[unit.furnace]]"),
        (("unit", "furnace", 1, "gas"), 'gas = "propane"'),
        (("unit", "furnace", 1, "rise"), "rise ="),
        (("unit", "furnace", 1, "rise", 2), '"60 degF"'),
        (("unit", "furnace", 1, "train", 1, "share"), "train ="),
        (("unit", "furnace", 1, "more", "deep", "x"), "x = 1"),
        (("unit", "furnace", 2, "gas"), 'gas = "natural gas"'),
        (("unit", "furnace", 2, "train", 1, "share"), "share = 1.0"),
        (("unit", "furnace", 2, "train", 2, "share"), "share = 2026"),
        (("site", "composition", "n-butane", 2, 1), "composition ="),
        (("site", "empty"), "empty ="),
        (("site", "last"), "last ="),
    ],
)
def test_a_key_is_found_on_its_line(path: Path, snippet: str) -> None:
    assert Lines(TEXT)(path) == TEXT.count("\n", 0, TEXT.index(snippet)) + 1


def test_the_scanned_text_is_toml() -> None:
    tomllib.loads(TEXT)


def test_what_is_not_there_is_told_at_the_table_around_it() -> None:
    lines = Lines("format = 1\n\n[site]\naltitude = '1 ft'\n\n[unit.motor]\n")
    assert lines(("site", "pipe", 3, "size")) == 3
    assert lines(("unit", "tag")) == 6  # the first table within it is all there is of it
    assert lines(("design",)) is None
    assert lines(()) is None


def test_a_table_stands_at_its_own_header_even_after_a_table_within_it() -> None:
    lines = Lines("[unit.motor]\n[unit]\ntag = 'x'\n")
    assert lines(("unit",)) == 2
    assert lines(("unit", "motor")) == 1


def test_windows_line_ends_count_once() -> None:
    assert Lines("a = 1\r\n\r\n[b]\r\nc = 2\r\n")(("b", "c")) == 4


def test_every_value_of_the_example_has_a_line(full_text: str) -> None:
    lines, rows = Lines(full_text), full_text.split("\n")
    for path, value in _leaves(tomllib.loads(full_text)):
        line = lines(path)
        assert line is not None
        if isinstance(value, str):
            assert value in rows[line - 1]


def _leaves(node: Any, path: Path = ()) -> Iterator[tuple[Path, Any]]:
    if isinstance(node, dict):
        for key, part in node.items():
            yield from _leaves(part, (*path, key))
    elif isinstance(node, list):
        for number, part in enumerate(node, start=1):
            yield from _leaves(part, (*path, number))
    else:
        yield path, node
