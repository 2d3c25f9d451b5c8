"""`lightoff serve`: an address on loopback, and the examples in an empty store."""

import re
import subprocess
import sys
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).parents[2]


@contextmanager
def served(store: Path) -> Iterator[str]:
    """The workbench as a person starts it: its address."""
    code = "from lightoff.surfaces.cli.main import main; main()"
    words = ["serve", "--examples", "--port", "0", "--store", str(store)]
    process = subprocess.Popen(
        [sys.executable, "-c", code, *words], stdout=subprocess.PIPE, stderr=subprocess.PIPE,
        text=True, cwd=store.parent,
    )  # fmt: skip
    try:
        assert process.stdout is not None
        yield process.stdout.readline().strip()
    finally:
        process.terminate()
        process.communicate(timeout=10)


def page(address: str) -> str:
    with urllib.request.urlopen(address, timeout=10) as answer:
        return str(answer.read().decode())


def test_the_workbench_opens_with_the_examples_and_a_second_time_with_the_same(
    tmp_path: Path,
) -> None:
    store = tmp_path / "var" / "store.sqlite"
    store.parent.mkdir()
    with served(store) as address:
        assert re.fullmatch(r"http://127\.0\.0\.1:\d+/", address)
        first = page(address)
    with served(store) as address:
        second = page(address)
    for text in (first, second):
        assert text.count("MAU-") >= 6


def test_two_workbenches_can_stand_open_at_once(tmp_path: Path) -> None:
    store = tmp_path / "store.sqlite"
    with served(store) as one, served(store) as two:
        assert one != two
        assert "MAU-9" in page(two)
