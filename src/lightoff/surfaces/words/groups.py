"""Rows in the groups a technician thinks in."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from lightoff.judgement import Row
from lightoff.machine import Point
from lightoff.surfaces.words.speech import Speech

_ORDER = ("power", "airside", "air", "gas supply", "furnace", "building", "tightness", "sequence",
          "trips", "checks")  # fmt: skip

_GROUPS: tuple[tuple[str, str], ...] = (
    ("checks", r"check: .*"),
    ("trips", r"trip: .*"),
    ("sequence", r"flame failure time|purge|ignition trial|post purge|stage delay"),
    ("tightness", r"tightness: .*"),
    ("power", r"line voltage|voltage .*|current .*|control voltage|motor .*|shaft power"),
    ("airside", r"fan speed.*|airflow|external static|filter drop|belt .*"),
    ("gas supply", r"gas pressure .*"),
    ("building", r"building pressure|door: .*"),
)


@dataclass(frozen=True, order=True)
class Group:
    """One group of rows; `furnace` where each furnace has its own."""

    order: int
    name: str
    furnace: int = 0

    def title(self, speech: Speech) -> str:
        return speech.word(f"group:{self.name}", n=self.furnace)


def group_of(row: Row) -> Group:
    """The group a row is shown in: its furnace's, unless its topic has one of its own."""
    name = next((name for name, ids in _GROUPS if re.fullmatch(ids, row.id)), None)
    if name is None:
        name = "air" if row.furnace is None else "furnace"
    return Group(_ORDER.index(name), name, (row.furnace or 0) if name == "furnace" else 0)


def group_of_point(point: Point) -> Group:
    """The group a point is shown in by itself."""
    return Group(_ORDER.index(point.group), point.group, _furnace(point))


def _furnace(point: Point) -> int:
    return (point.furnace or 0) if point.group == "furnace" else 0


def by_group(rows: Iterable[Row]) -> list[tuple[Group, list[Row]]]:
    """The rows of each group, in the order of work."""
    groups: dict[Group, list[Row]] = {}
    for row in rows:
        groups.setdefault(group_of(row), []).append(row)
    return sorted(groups.items())
