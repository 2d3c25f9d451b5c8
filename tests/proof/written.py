"""The claims as a page of the docs."""

from collections.abc import Iterable, Mapping
from pathlib import Path

from proof.claim import Claim

PAGE = Path(__file__).parents[2] / "docs" / "proof" / "model.md"
HEAD = """# The model, measured

What `tests/proof` found of the model that every answer stands on. `make prove` writes this page;
the log beside it has the commit, the date and every line.

*Our own model*: truth is drawn from the model's own unknowns, readings from their instruments' own
errors, and put to the same fit. A truth that no machine can have is drawn again.

*The independent machine* (`tests/plant`) is another model, written apart from ours: ordinary and
thorough visits, half and half, about a third of the units sound, the rest with one fault each.

A target that is accepted with its whole uncertainty is truly outside only when it lies outside by
more than the expanded uncertainty: those with a simple rule, and the input, which the project's
rule lets pass with the manifold at plate unless it is provably off.
"""


def write(claims: Iterable[Claim], misses: Mapping[str, str]) -> None:
    """The page, known misses with their reasons at its end."""
    rows = [
        "| claim | aim | measured | count | seeds |", "|---|---|---|---|---|",
        *(_row(each) for each in claims),
    ]  # fmt: skip
    ends = [f"- {name}: {reason}" for name, reason in misses.items()]
    end = ["", "## Not met, and why", "", *ends] if ends else []
    PAGE.write_text("\n".join([HEAD, *rows, *end, ""]), encoding="utf-8")


def _row(each: Claim) -> str:
    number = each.number if each.met else f"**{each.number}**"
    return f"| {each.says} | {each.aim} | {number} | {each.count} | {each.seeds} |"
