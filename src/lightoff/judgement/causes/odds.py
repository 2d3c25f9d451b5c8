"""How often each cause is there, before anything is read."""

from collections.abc import Callable, Mapping
from functools import cache
from typing import Any

from lightoff.inference.causes import Cause
from lightoff.judgement.causes.data import table
from lightoff.machine import Machine, Visit
from lightoff.quantity import si

OTHER = 0.05  # [1] something else, which shows as one reading that is simply wrong; judgement

Holds = Callable[[Machine, Visit], bool]

_FT = si(1, "ft")  # [m]
_HOLDS: dict[str, Holds] = {
    "driven": lambda machine, _: machine.drive.vfd,
    "not 208 or 240 V": lambda machine, _: not 200 <= machine.electrical.volts <= 245,
    "above 2000 ft": lambda machine, _: machine.site.altitude > 2000 * _FT,
    "propane": lambda machine, _: machine.furnaces[0].gas == "propane",
    "not condensing": lambda machine, _: not any(f.condensing for f in machine.furnaces),
    "against atmosphere": lambda machine, _: all(
        train.reference == "atmosphere" for f in machine.furnaces for train in f.trains
    ),
    "not a start-up": lambda _, visit: visit.purpose != "start-up",
}


@cache
def _table() -> Mapping[str, Mapping[str, Any]]:
    """Every cause by its id."""
    return {row["id"]: row for row in table("prevalence")["cause"]}


def odds(cause: Cause, machine: Machine, visit: Visit, alike: int) -> float:
    """Of a cause being there against not; `alike` are as many of its name that share its chance."""
    row = _table()[cause.id]
    chance = float(row["probability"])
    for condition, times in row.get("times", {}).items():
        if _HOLDS[condition](machine, visit):
            chance *= times
    chance = min(chance, 0.9) / (1 if row.get("per") == "furnace" else alike)
    return chance / (1 - chance)
