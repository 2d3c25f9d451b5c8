"""What must be true of the model: its long proofs, each claim by itself.

`make prove` measures them all once, writes docs/proof/model.md, and prints a line a claim. A claim
known not to be met stands in misses.toml with its number, and must stay one.
"""

import tomllib
from pathlib import Path

import pytest

from proof.claim import Claim
from proof.measured import claims, measured
from proof.written import write

HERE = Path(__file__).parent
MISSES: dict[str, str] = tomllib.loads((HERE / "misses.toml").read_text("utf-8"))
NAMES = [claim.id for claim in claims([], [])]


def marked(name: str) -> object:
    """A known miss must stay one, and says why."""
    missed = [pytest.mark.xfail(strict=True, reason=MISSES[name])] if name in MISSES else []
    return pytest.param(name, marks=missed)


@pytest.fixture(scope="module")
def every() -> dict[str, Claim]:
    found = measured()
    write(found, MISSES)
    return {claim.id: claim for claim in found}


@pytest.mark.prove
@pytest.mark.parametrize("name", [marked(name) for name in NAMES])
def test_claim(name: str, every: dict[str, Claim], capsys: pytest.CaptureFixture[str]) -> None:
    claim = every[name]
    with capsys.disabled():
        print(f"\n{claim.line}")
    assert claim.met, claim.line


def test_every_known_miss_is_a_claim() -> None:
    assert set(MISSES) <= set(NAMES)
