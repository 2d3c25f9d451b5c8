"""Our formulas against published figures, each within the tolerance its source allows."""

import re
import tomllib
from pathlib import Path
from typing import Any

import pytest

from published.methods import method_for
from published.units import TO_SI, read, si

HERE = Path(__file__).parent
MISSES: dict[str, dict[str, str]] = tomllib.loads((HERE / "misses.toml").read_text("utf-8"))
TOPICS = [path for path in sorted(HERE.glob("*.toml")) if path.stem != "misses"]


def marks(case_id: str) -> list[pytest.MarkDecorator]:
    """A known miss must stay one, and says why."""
    miss = MISSES.get(case_id)
    return [pytest.mark.xfail(strict=True, reason=miss["reason"])] if miss else []


CASES = [
    pytest.param(case, id=case["id"], marks=marks(case["id"]))
    for path in TOPICS
    for case in tomllib.loads(path.read_text("utf-8"))["case"]
]
PART = re.compile(r"(?:(\w+): )?(?:(abs|rel) (\S+)|(exact))")


def tolerance(text: str, name: str) -> tuple[str, float]:
    """The tolerance of one expected quantity: ('rel', 1e-3)."""
    found = {m[1]: m for part in text.split("; ") if (m := PART.fullmatch(part))}
    match = found.get(name) or found[None]
    return ("rel", 1e-12) if match[4] else (match[2], float(match[3]))


def scalar(text: str) -> Any:
    values = si(text)
    return values if text.startswith("[") else values[0]


@pytest.mark.parametrize("case", CASES)
def test_published_figure(case: dict[str, Any]) -> None:
    given = {name: scalar(text) for name, text in case["given"].items()}
    ours = method_for(case["id"])(given, case.get("label", {}))
    told = [name for name in case["expected"] if name in ours]
    assert told, "the method says nothing of what the case expects"
    for name in told:
        expected, unit = read(case["expected"][name])
        factor, offset = TO_SI[unit]
        result = ours[name] if isinstance(ours[name], list) else [ours[name]]
        how, size = tolerance(case["tolerance"], name)
        for mine, theirs in zip(result, expected, strict=True):
            allowed = size if how == "abs" else size * abs(theirs)
            assert abs((mine - offset) / factor - theirs) <= allowed, (name, unit, theirs)
