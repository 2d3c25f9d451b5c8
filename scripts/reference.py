"""Writes docs/reference from what formulas, calculations and tables say of themselves.

How many published cases hold a formula up is counted by answering every case of tests/published and
watching which formulas carry out their arithmetic on the way; a known miss holds nothing up.
"""

import re
import sys
import tomllib
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from pathlib import Path
from types import FrameType, ModuleType
from typing import Any

ROOT = Path(__file__).parents[1]
sys.path[:0] = [str(ROOT / "tests"), str(ROOT / "scripts")]

from assumed import assumed_lines  # noqa: E402 (beside this file, and tests, put there above)

from lightoff.calculations import CALCULATIONS, Calculation  # noqa: E402
from lightoff.formula import Quantity, describe  # noqa: E402
from lightoff.physics.catalogue import TOPICS, formulas  # noqa: E402
from lightoff.surfaces.calculating import Sheet, blank, example, filled  # noqa: E402
from lightoff.surfaces.calculating.plain import as_text  # noqa: E402
from lightoff.surfaces.cli.calc_help import command_lines  # noqa: E402
from lightoff.surfaces.words import Speech  # noqa: E402
from lightoff.surfaces.working import unit_text  # noqa: E402
from lightoff.surfaces.working.digits import digits, plain  # noqa: E402
from published.cases import HERE, Case, cases  # noqa: E402
from published.methods import method_for  # noqa: E402

Formula = Callable[..., Any]
REFERENCE = ROOT / "docs" / "reference"
SPEECH = Speech()
NAMED = 3  # cases; more are only counted


def main() -> None:
    REFERENCE.mkdir(parents=True, exist_ok=True)
    for name, text in pages().items():
        (REFERENCE / name).write_text(text, encoding="utf-8")


def pages() -> dict[str, str]:
    """The text of every file written here."""
    return {
        "formulas.md": "\n".join(formula_lines(upheld(cases()))) + "\n",
        "assumed.md": "\n".join(assumed_lines()) + "\n",
        "calculations.md": "\n".join(calculation_lines()) + "\n",
    }


# ---- which cases hold up which formulas


def upheld(published: Iterable[Case]) -> Mapping[Formula, list[str]]:
    """The ids of the cases in whose answers each formula took part."""
    misses = tomllib.loads((HERE / "misses.toml").read_text("utf-8"))
    found: dict[Formula, list[str]] = defaultdict(list)
    for case in published:
        if case.id not in misses:
            method = method_for(case.topic, case.id)
            for formula in carried_out(lambda case=case, method=method: method(
                case.in_si(), case.label)):  # fmt: skip
                found[formula].append(case.id)
    return found


def carried_out(work: Callable[[], Any]) -> list[Formula]:
    """The formulas whose own arithmetic runs while `work` does, in the order of the catalogue."""
    known = [each for topic in TOPICS for each in formulas(topic)]
    bodies = {each.__wrapped__.__code__: each for each in known}  # type: ignore[attr-defined]
    seen = set()

    def watch(frame: FrameType, event: str, _: object) -> None:
        if event == "call" and frame.f_code in bodies:
            seen.add(bodies[frame.f_code])

    before = sys.getprofile()
    sys.setprofile(watch)
    try:
        work()
    finally:
        sys.setprofile(before)
    return [each for each in known if each in seen]


# ---- formulas.md


def formula_lines(held: Mapping[Formula, list[str]]) -> Iterator[str]:
    known = [each for topic in TOPICS for each in formulas(topic)]
    yield "# Formulas"
    yield ""
    yield "Written by `make reference` from the formulas themselves; do not edit."
    yield ""
    yield (
        "Everything is in SI units. A formula holds for the range given; beyond it a calculation "
        "says so. A published case holds a formula up when its arithmetic runs in answering the "
        "case, and the answer agrees within the tolerance the case's source allows. Of "
        f"{len(known)} formulas {sum(each in held for each in known)} are held up so. All of them "
        "are held to the laws in `tests/laws`, and many are compared with reference libraries in "
        "`tests/grids`."
    )
    yield from ("", "| topic | formulas | held up by published cases |", "|---|--:|--:|")
    for topic in TOPICS:
        own = formulas(topic)
        link = f"[{title(topic)}](#{anchor(title(topic))})"
        yield f"| {link} | {len(own)} | {sum(each in held for each in own)} |"
    for topic in TOPICS:
        yield from ("", f"## {title(topic)}", "", f"`{topic.__name__}`")
        for formula in formulas(topic):
            yield from one_formula(formula, held.get(formula, []))


def title(topic: ModuleType) -> str:
    """The first sentence of a module."""
    return " ".join((topic.__doc__ or "").split("\n\n")[0].split()).rstrip(".")


def anchor(heading: str) -> str:
    """Where a heading is found on a rendered page."""
    return re.sub(r"[^\w -]", "", heading.lower()).replace(" ", "-")


def one_formula(formula: Formula, ids: list[str]) -> Iterator[str]:
    told = describe(formula)
    yield from ("", f"### {told.name}", "", told.sentence, "", "```", told.equation, "```", "")
    yield from ("| | | unit | range |", "|---|---|---|---|")
    yield from (quantity_row(each, f"`{each.name}`, {each.words}") for each in told.inputs)
    for each in told.results:
        name = f"`{each.name}`, {each.words}" if len(told.results) > 1 else each.words
        yield quantity_row(each, f"**result**: {name}")
    yield from ("", f"Source: {told.source}", "", held_up(ids))


def quantity_row(each: Quantity, words: str) -> str:
    low, high = (plain(digits(x)) for x in each.range) if each.range else ("", "")
    span = f"{low} to {high}" if each.range else ""
    return f"| `{each.symbol}` | {cell(words)} | {cell(unit_text(each.unit))} | {span} |"


def cell(text: str) -> str:
    """Text inside a table."""
    return text.replace("|", "\\|")


def held_up(ids: list[str]) -> str:
    if not ids:
        return "No published case."
    named = ", ".join(f"`{each}`" for each in ids[:NAMED])
    more = f" and {len(ids) - NAMED} more" if len(ids) > NAMED else ""
    return f"Published cases: {len(ids)} ({named}{more})."


# ---- calculations.md


def calculation_lines() -> Iterator[str]:
    yield "# Calculations"
    yield ""
    yield "Written by `make reference` from the calculations themselves; do not edit."
    yield ""
    yield (
        "Each answers one question, alone, in any unit. `lightoff calc NAME --help` tells the same "
        "in the terminal; `--working` shows every step, `--json` gives SI values to programs, "
        "`--table FILE.csv` works down a table, `--pdf FILE` prints."
    )
    yield ""
    yield from (f"- [{SPEECH.word(f'calc:{name}')}](#{name})" for name in CALCULATIONS)
    for calculation in CALCULATIONS.values():
        yield from one_calculation(calculation)


def one_calculation(calculation: Calculation) -> Iterator[str]:
    sheet = blank(calculation, SPEECH)
    yield from ("", f"## {sheet.name}", "", f"**{sheet.title}.** {sheet.about}.", "")
    yield from ("| input | | such as | where left out |", "|---|---|---|---|")
    yield from input_rows(sheet)
    yield from ("", "| answer | | kind |", "|---|---|---|")
    for each in calculation.outputs:
        yield f"| `{each.name}` | {cell(SPEECH.word(f'measure:{each.name}'))} | {each.kind} |"
    if typed := example(calculation.name):
        lines = [line[2:] for line in command_lines(sheet.name, typed)]
        yield from ("", "```sh", *lines, "```", "", "```")
        yield from (as_text(filled(calculation, typed, SPEECH), SPEECH), "```")


def input_rows(sheet: Sheet) -> Iterator[str]:
    for each in sheet.inputs:
        words = " or ".join(f"`{choice.word}`" for choice in each.choices)
        ways = words or each.hint.replace('"', "`")
        default = each.default or ("" if each.required else "not used")
        many = ", one or more" if each.many else ""
        yield f"| `{each.name}` | {cell(each.label)}{many} | {cell(ways)} | {cell(default)} |"


if __name__ == "__main__":
    main()
