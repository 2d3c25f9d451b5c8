"""The fields of the form for a new unit, as the tree of a job: each is named by its place."""

from collections.abc import Mapping
from typing import Any

from lightoff.job.job import FORMAT, Tree
from lightoff.surfaces.web.contexts.new import MOST_FURNACES, places

Fields = Mapping[str, str]

FURNACE = "unit.furnace."
_WHOLE = frozenset({"unit.electrical.phases"})
_FLAGS = frozenset({"unit.drive.vfd"})


def furnaces(sent: Fields) -> int:
    """How many furnaces the form shows."""
    text = sent.get("furnaces", "1")
    return min(max(int(text), 1), MOST_FURNACES) if text.isdecimal() and len(text) < 3 else 1


def changed(sent: Fields, count: int) -> tuple[dict[str, str], int] | None:
    """The fields with a furnace more or less, where that is what was asked for."""
    if sent.get("add"):
        return dict(sent), min(count + 1, MOST_FURNACES)
    gone = sent.get("remove", "")
    if gone.isdecimal() and count > 1:
        return _without(sent, int(gone)), count - 1
    return None


def _without(sent: Fields, gone: int) -> dict[str, str]:
    """The furnaces after the one removed move up."""
    kept = {}
    for name, text in sent.items():
        number = _number(name)
        if number is None or number < gone:
            kept[name] = text
        elif number > gone:
            kept[name.replace(f"{FURNACE}{number}.", f"{FURNACE}{number - 1}.", 1)] = text
    leading = sent.get("leading", "1")
    if leading.isdecimal() and int(leading) >= gone:
        kept["leading"] = str(max(int(leading) - 1, 1))
    return kept


def _number(name: str) -> int | None:
    digit = name.removeprefix(FURNACE)[:1] if name.startswith(FURNACE) else ""
    return int(digit) if digit.isdecimal() else None


def tree(sent: Fields, count: int) -> Tree:
    """The job that the fields declare; what was left blank is left out."""
    job: Tree = {"format": FORMAT}
    for name in places(count):
        if text := sent.get(name, ""):
            _put(job, name.split("."), _value(name, text))
    for table in ("electrical", "motor", "drive"):
        job.setdefault("unit", {}).setdefault(table, {})
    job["unit"]["furnace"] = _furnaces(job["unit"].get("furnace", {}), count, sent)
    return {**job, "design": job.get("design", {}), "site": job.get("site", {})}


def _furnaces(typed: Mapping[str, Tree], count: int, sent: Fields) -> list[Tree]:
    rows = []
    for number in range(1, count + 1):
        row = dict(typed.get(str(number), {}))
        if "train" in row:
            row["train"] = [row["train"]["1"]]
        if sent.get("leading", "1") == str(number):
            row["leading"] = True
        rows.append(row)
    return rows


def _put(job: Tree, steps: list[str], value: Any) -> None:
    here = job
    for step in steps[:-1]:
        here = here.setdefault(step, {})
    here[steps[-1]] = value


def _value(name: str, text: str) -> Any:
    if name in _FLAGS:
        return True
    return int(text) if name in _WHOLE and text.isdecimal() and len(text) < 4 else text
