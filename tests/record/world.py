"""A small invented unit, entries for it, and a register whose clock and ids are counted."""

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from itertools import count
from typing import Any
from uuid import UUID

from lightoff.record import Command, Event, Register, State, Store, decide

Tree = dict[str, Any]
BEGAN = datetime(2026, 11, 3, 15, 0, tzinfo=UTC)

UNIT: Tree = {
    "format": 1,
    "unit": {
        "tag": "MAU-5",
        "serves": "dye house, Teasel Row",
        "arrangement": "blow-through",
        "electrical": {"volts": "460 V", "phases": 3},
        "motor": {"power": "5 hp", "full_load_amps": "6.6 A", "service_factor": 1.15},
        "drive": {"kind": "belt", "motor_sheave": "5.0 in", "fan_sheave": "9.0 in"},
        "furnace": [
            {
                "gas": "natural gas",
                "control": "modulating",
                "leading": True,
                "input": "250 kBtu/h",
                "supply_max": "13.0 inwc",
                "train": [{"manifold_high": "3.5 inwc", "manifold_low": "0.9 inwc"}],
            }
        ],
    },
    "design": {"airflow": "4000 cfm", "discharge": "70 degF", "winter_outdoor": "-5 degF"},
    "site": {"altitude": "980 ft"},
    "instrument": [{"id": "gauge-1", "kind": "manometer"}],
}

ENTRIES: dict[str, tuple[Tree, ...]] = {
    "symptom": ({"what": "won't light", "furnace": 1}, {"what": "short-cycles"}),
    "reading": (
        {"run": "high", "point": "train.1.1.manifold", "value": "3.5 inwc"},
        {"run": "off", "point": "gas.supply", "value": "8.1 inwc", "instrument": "gauge-1"},
        {"run": "fan", "point": "fan.rpm", "value": "978 rpm", "at": "2026-11-03T10:12:00-06:00"},
    ),
    "adjustment": (
        {"at": "2026-11-03T10:20:00-06:00", "what": "train.1.1.manifold", "to": "3.4 inwc"},
        {"at": "2026-11-03T10:31:00-06:00", "what": "damper.position", "to": "60 %"},
    ),
    "trip": ({"id": "high limit", "acted": True, "value": "186 degF", "seconds": 4.0},),
    "check": ({"id": "covers.on", "outcome": "right"}, {"id": "site.ready", "outcome": "wrong"}),
    "step": ({"id": "purge", "seconds": 46.0}, {"id": "purge", "seconds": 45}),
    "joint": ({"id": "union below the valve", "outcome": "tight"},),
    "decay": ({"section": "riser", "start": "1.5 psi", "end": "1.5 psi", "minutes": 15,
               "isolated": True},),
    "setpoint": ({"id": "discharge", "found": "65 degF", "left": "70 degF"},),
    "deficiency": ({"what": "hood seam open", "severity": "note"},),
    "deferred": ({"target": "temperature rise", "why": "too warm to hold high fire"},),
}  # fmt: skip

TOO_HIGH = {"run": "high", "point": "train.1.1.manifold", "value": "5.2 inwc"}  # a stop finding


def clock() -> Callable[[], datetime]:
    """A clock that moves a minute each time it is asked."""
    minutes = count()
    return lambda: BEGAN + timedelta(minutes=next(minutes))


def ids(kind: int = 0) -> Callable[[], str]:
    """Ids one after the other; different kinds never meet."""
    numbers = count(1)
    return lambda: str(UUID(int=(kind << 64) + next(numbers)))


def register(store: Store) -> Register:
    return Register(store, clock=clock(), new_id=ids())


def numbered(number: int) -> str:
    return str(UUID(int=number))


def decided(state: State, command: Command, number: int = 1) -> tuple[Event, ...]:
    """The events of a command whose time, author and id do not matter."""
    return decide(state, command, by="R. Quill", at=BEGAN, event_id=numbered(number))
