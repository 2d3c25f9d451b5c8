"""Our formulas against published figures, each within the tolerance its source allows."""

import re
import tomllib
from typing import Any

import pytest

from published.cases import HERE, Case, cases
from published.methods import method_for
from published.units import TO_SI, read

MISSES: dict[str, dict[str, str]] = tomllib.loads((HERE / "misses.toml").read_text("utf-8"))
UNTOLD: dict[str, dict[str, Any]] = tomllib.loads((HERE / "untold.toml").read_text("utf-8"))
PART = re.compile(r"(?:(\w+): )?(?:(abs|rel) (\S+)|(exact))")


def marks(case_id: str) -> list[pytest.MarkDecorator]:
    """A known miss must stay one, and says why."""
    miss = MISSES.get(case_id)
    return [pytest.mark.xfail(strict=True, reason=miss["reason"])] if miss else []


def tolerance(text: str, name: str) -> tuple[str, float]:
    """The tolerance of one expected quantity: ('rel', 1e-3)."""
    found = {m[1]: m for part in text.split("; ") if (m := PART.fullmatch(part))}
    match = found.get(name) or found[None]
    return ("rel", 1e-12) if match[4] else (match[2], float(match[3]))


@pytest.mark.parametrize(
    "case", [pytest.param(case, id=case.id, marks=marks(case.id)) for case in cases()]
)
def test_published_figure(case: Case) -> None:
    ours = method_for(case.topic, case.id)(case.in_si(), case.label)
    untold = set(UNTOLD.get(case.id, {}).get("quantities", ()))
    assert set(case.expected) - set(ours) == untold, "what the case expects and we do not say"
    for name in case.expected.keys() - untold:
        expected, unit = read(case.expected[name])
        factor, offset = TO_SI[unit]
        result = ours[name] if isinstance(ours[name], list) else [ours[name]]
        how, size = tolerance(case.tolerance, name)
        for mine, theirs in zip(result, expected, strict=True):
            allowed = size if how == "abs" else size * abs(theirs)
            assert abs((mine - offset) / factor - theirs) <= allowed, (name, unit, theirs)
