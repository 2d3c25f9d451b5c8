"""`lightoff serve`: an address on loopback within three seconds, the examples in an empty store."""

import re
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).parents[2]


@contextmanager
def served(store: Path) -> Iterator[tuple[str, float]]:
    """The workbench as a person starts it: its address, and how long that took."""
    code = "from lightoff.surfaces.cli.main import main; main()"
    words = ["serve", "--examples", "--port", "0", "--store", str(store)]
    begun = time.monotonic()
    process = subprocess.Popen(
        [sys.executable, "-c", code, *words], stdout=subprocess.PIPE, stderr=subprocess.PIPE,
        text=True, cwd=store.parent,
    )  # fmt: skip
    try:
        assert process.stdout is not None
        address = process.stdout.readline().strip()
        yield address, time.monotonic() - begun
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
    with served(store) as (address, _):
        assert re.fullmatch(r"http://127\.0\.0\.1:\d+/", address)
        first = page(address)
    with served(store) as (address, seconds):
        second = page(address)
    for text in (first, second):
        assert text.count("MAU-") >= 6
    assert seconds < 3 * 4  # three seconds on an idle machine; `make run` says what it was


def test_two_workbenches_can_stand_open_at_once(tmp_path: Path) -> None:
    store = tmp_path / "store.sqlite"
    with served(store) as (one, _), served(store) as (two, _):
        assert one != two
        assert "MAU-9" in page(two)
