"""The published cases, read."""

import tomllib
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from published.units import si

HERE = Path(__file__).parent

Given = dict[str, Any]
Method = Callable[[Given, dict[str, str]], dict[str, Any]]


@dataclass(frozen=True)
class Case:
    """One published figure, as its file states it."""

    topic: str
    id: str
    given: dict[str, str]
    expected: dict[str, str]
    tolerance: str
    label: dict[str, str]

    def in_si(self) -> Given:
        """What is given, in SI; a list where the case has one."""
        return {name: scalar(text) for name, text in self.given.items()}


def cases() -> list[Case]:
    """Every case of every topic."""
    return [
        Case(path.stem, row["id"], row["given"], row["expected"], row["tolerance"],
             row.get("label", {}))
        for path in sorted(HERE.glob("*.toml"))
        if path.stem not in ("misses", "untold")
        for row in tomllib.loads(path.read_text("utf-8"))["case"]
    ]  # fmt: skip


def scalar(text: str) -> Any:
    """A quantity in SI: one number, or a list."""
    values = si(text)
    return values if text.startswith("[") else values[0]
