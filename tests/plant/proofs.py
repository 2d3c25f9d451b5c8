"""What is proven, timed and told beside readings: symptoms, trips, steps, checks."""

from random import Random
from typing import Any

from plant.limit import MARGIN, deferred
from plant.machine import Machine
from plant.plate import Plate

Tree = dict[str, Any]
# what a caller or a first start shows, and how often anybody writes it down (judgement)
SYMPTOMS = {
    "open safety": ("won't light", 0.8), "stage does not fire": ("won't light", 0.6),
    "air in line": ("won't light", 0.6), "weak flame signal": ("lights and drops out", 0.5),
    "end switch": ("fan is late or does not start", 0.6), "single phasing": ("fan trips", 0.4),
    "closed damper": ("trips on limit", 0.25), "blocked filter": ("trips on limit", 0.15),
    "reversed rotation": ("trips on limit", 0.25), "blocked vent": ("smell or CO", 0.2),
    "leaking heat exchanger": ("smell or CO", 0.3), "flue gas re-entrained": ("smell or CO", 0.25),
    "wrong gas": ("smell or CO", 0.3), "cold propane tank": ("lights and drops out", 0.4),
    "blocked drain or tube": ("lights and drops out", 0.4), "control volts sag": ("hunts", 0.3),
    "signal range mismatch": ("hunts", 0.3), "sensor not in duct": ("hunts", 0.4),
    "heating value off": ("", 0.0), "gas supply too small": ("lights and drops out", 0.3),
}  # fmt: skip
# what an eye would catch if it looked there
CHECKS = {
    "reversed rotation": "fan.rotation", "closed damper": "damper.opens",
    "missing filter": "filters.in_place", "sensor not in duct": "sensor.in_duct",
    "wrong voltage tap": "transformer.tap", "wrong gas": "gas.type_matches",
    "belt slip": "belt.tension", "stages swapped": "wiring.matches",
}  # fmt: skip
SEEN = ("site.ready", "fan.turns_free", "vent.complete", "gas.type_matches", "damper.opens",
        "filters.in_place", "wiring.matches", "fan.rotation", "sensor.in_duct")  # fmt: skip


def proofs(rng: Random, machine: Machine, plate: Plate, style: str, limited: bool) -> Tree:
    """The rest of a visit; a scant one has little but a symptom. `limited`: a limit opened."""
    found = {"symptom": _symptoms(rng, machine, limited)}
    if limited:
        found["deferred"] = deferred()
    if style != "scant":
        found |= {
            "step": _steps(rng, machine, plate, style),
            "trip": _trips(rng, machine, plate, style),
            "check": _checks(rng, machine, style),
        }
    return {name: rows for name, rows in found.items() if rows}


def _symptoms(rng: Random, machine: Machine, limited: bool) -> list[Tree]:
    if limited and rng.random() < 0.7:
        return [{"what": "trips on limit"}]
    what, often = SYMPTOMS.get(machine.fault.id, ("", 0.0))
    if not what or rng.random() >= often:
        return []
    furnace = machine.fault.furnace
    return [{"what": what, **({"furnace": furnace} if furnace else {})}]


def _burning(machine: Machine) -> list[int]:
    held = machine.extras.heat_held or machine.extras.fan_held
    return [] if held else [n for n, one in enumerate(machine.furnaces, 1) if one.fires]


def _steps(rng: Random, machine: Machine, plate: Plate, style: str) -> list[Tree]:
    """Controls are a little slow, never fast (sp-sequence-timer), timed by hand."""
    rows: list[Tree] = []
    often = 0.9 if style == "thorough" else 0.4
    if rng.random() < often:
        seconds = machine.extras.damper_seconds * rng.gauss(1.0, 0.05)
        rows.append({"id": "end switch", "seconds": round(seconds, 1)})
    for n in _burning(machine):
        if rng.random() < often:
            late = plate.furnaces[n - 1].purge * rng.gauss(1.03, 0.02)
            rows.append({"id": "purge", "furnace": n, "seconds": round(late, 1)})
        if rng.random() < often:
            share = 1.0 if machine.extras.air_in_line and n == 1 else rng.uniform(0.2, 0.7)
            seconds = plate.furnaces[n - 1].trial * share
            rows.append({"id": "ignition trial", "furnace": n, "seconds": round(seconds, 1)})
    return rows


def _trips(rng: Random, machine: Machine, plate: Plate, style: str) -> list[Tree]:
    """Flame failure by most, the rest by the thorough; all of them act."""
    rows: list[Tree] = []
    flame, others = (0.95, 0.85) if style == "thorough" else (0.6, 0.25)
    for n in _burning(machine):
        if rng.random() < flame:
            seconds = plate.furnaces[n - 1].failure * rng.uniform(0.4, 0.95)
            rows.append({"id": "flame failure", "furnace": n, "acted": True,
                         "seconds": round(seconds, 1), "restarted": True})  # fmt: skip
        if rng.random() < others:
            value = round(plate.furnaces[n - 1].max_outlet + MARGIN + rng.gauss(0.0, 4.0))
            rows.append({"id": "high limit", "furnace": n, "acted": True,
                         "value": f"{value} degF", "restarted": True})  # fmt: skip
    names = ("airflow proving", "disconnect") if _burning(machine) else ("disconnect",)
    chosen = [name for name in names if rng.random() < others]
    return rows + [{"id": name, "acted": True, "restarted": True} for name in chosen]


def _checks(rng: Random, machine: Machine, style: str) -> list[Tree]:
    """Ticked from habit more often than looked at: a wrong one is caught one time in four."""
    wrong = CHECKS.get(machine.fault.id) if rng.random() < 0.25 else None
    ticked = rng.sample(SEEN, 6 if style == "thorough" else 3)
    hidden = CHECKS.get(machine.fault.id)
    rows = [{"id": name, "outcome": "right"} for name in ticked if name != hidden]
    return rows + ([{"id": wrong, "outcome": "wrong"}] if wrong else [])
