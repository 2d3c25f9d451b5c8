"""The library: five lines from a file to the answer, in words."""

import doctest
import json
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest

import lightoff
from lightoff.job import schema
from lightoff.judgement import ENGINE
from lightoff.surfaces import library

ROOT = Path(__file__).parents[2]
EXAMPLES = sorted((ROOT / "examples").glob("*.toml"))
NAMES = [path.stem for path in EXAMPLES]


def test_the_five_lines_in_the_docs_are_true(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    result = doctest.testmod(library)
    assert result.attempted >= 4
    assert result.failed == 0


def test_package_and_engine_bear_one_version() -> None:
    assert lightoff.__version__ == ENGINE


@pytest.mark.parametrize("path", EXAMPLES, ids=NAMES)
def test_every_example_is_judged_and_said(path: Path) -> None:
    answer = lightoff.assess(lightoff.load(path))
    for units in ("us", "si"):
        text = lightoff.render(answer, units=units, everything=True)
        assert all(len(line) <= 80 for line in text.splitlines())
    json.dumps(answer.to_dict(), allow_nan=False)


@pytest.mark.parametrize("path", EXAMPLES, ids=NAMES)
def test_every_example_fits_the_published_schema(path: Path) -> None:
    tree = json.loads(json.dumps(lightoff.load(path).tree, default=str))
    jsonschema.validate(tree, schema())


def test_judging_twice_gives_the_same_answer() -> None:
    job = lightoff.load(EXAMPLES[0])
    assert lightoff.assess(job) == lightoff.assess(job)


def test_importing_what_computes_imports_nothing_but_the_standard_library() -> None:
    code = (
        "import sys; import lightoff.judgement; "
        "print(sorted({'pydantic', 'numpy', 'fastapi', 'babel'} & set(sys.modules)))"
    )
    out = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert out.stdout.strip() == "[]"
