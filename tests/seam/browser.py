"""Calls a function in a browser's Python (Pyodide under Node), where only the pure folders exist.

`make test` brings Pyodide and the wheels. A function so called takes and returns what JSON can
say, and imports what it needs inside, because only its own text travels.
"""

import inspect
import json
import math
import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]
FOLDERS = (
    "quantity",
    "formula",
    "physics",
    "calculations",
    "machine",
    "inference",
    "judgement",
    "job",
)
TOLERANCE = 1e-9  # relative, and absolute in SI near zero: the platforms' last digits differ


def in_browser(function: Callable[..., Any], *given: Any) -> Any:
    """What `function(*given)` returns there."""
    call = f"json.dumps({function.__name__}(*json.loads({json.dumps(given)!r})))"
    program = f"import json\n{inspect.getsource(function)}\n{call}"
    script = Path(__file__).with_name("browser.mjs")
    where = [ROOT / "web-assets/node_modules/pyodide", ROOT / "build/wheels", ROOT / "src/lightoff"]
    command = [_node(), *map(str, [script, *where]), *FOLDERS]
    done = subprocess.run(
        command, input=program, capture_output=True, encoding="utf-8", timeout=120
    )
    assert done.returncode == 0, done.stderr[-3000:]
    return json.loads(done.stdout)


def here(function: Callable[..., Any], *given: Any) -> Any:
    """The same call in this Python, through JSON too."""
    return json.loads(json.dumps(function(*given)))


def differences(one: Any, other: Any, place: str = "") -> Iterator[str]:
    """Where two JSON values differ by more than the tolerance."""
    if isinstance(one, dict) and isinstance(other, dict) and one.keys() == other.keys():
        for key in one:
            yield from differences(one[key], other[key], f"{place}.{key}")
    elif isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        for i, pair in enumerate(zip(one, other, strict=True)):
            yield from differences(*pair, f"{place}[{i}]")
    elif not _same(one, other):
        yield f"{place}: {one!r} and {other!r}"


def _same(one: Any, other: Any) -> bool:
    if type(one) in (int, float) and type(other) in (int, float):
        return math.isclose(one, other, rel_tol=TOLERANCE, abs_tol=TOLERANCE)
    return type(one) is type(other) and one == other


def _node() -> str:
    """Node on PATH, or the one that make puts beside this Python."""
    beside = f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}"
    node = shutil.which("node", path=beside)
    assert node, "no node: `make test` installs it"
    return node
