"""What symptoms, checks and timed steps say of a cause."""

import math
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from lightoff.inference.causes import Cause
from lightoff.judgement.causes.data import table
from lightoff.machine import Visit


@cache
def _table() -> Mapping[str, Mapping[str, Any]]:
    """Every sign by what it is, the kind before it."""
    signs = table("signs")
    return {f"{kind} {row['what']}": row for kind, rows in signs.items() for row in rows}


def spoken(cause: Cause, visit: Visit) -> dict[str, float]:
    """The logarithm of how much likelier each sign of the visit is with the cause."""
    found = {}
    for name, shown, furnace in _signs(visit):
        row = _table().get(name)
        if row is None or cause.id not in row["with"]:
            continue
        if furnace is not None and cause.furnace not in (None, furnace):
            continue
        chance, usual = row["with"][cause.id], row["usual"]
        found[name] = math.log(chance / usual if shown else (1 - chance) / (1 - usual))
    return found


def _signs(visit: Visit) -> Iterator[tuple[str, bool, int | None]]:
    """Every sign that was there, or was looked for and not there, with its furnace."""
    fired = any(each.run.startswith(("high", "low", "all")) for each in visit.readings)
    yield "fired at all", fired, None
    for symptom in visit.symptoms:
        yield f"symptom {symptom.what}", True, symptom.furnace
    for check in visit.checks:
        if check.outcome != "not applicable":
            yield f"check {check.id}", check.outcome == "wrong", None
    for step in visit.steps:
        row = _table().get(f"step {step.id}")
        if row is not None and step.seconds is not None:
            yield f"step {step.id}", step.seconds > row["longer"], step.furnace
