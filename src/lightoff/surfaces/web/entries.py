"""What was typed into a form, as an entry of the job file: nothing converted, blanks left out.

A bare number is taken in the unit the form shows beside it, and written down with it.
"""

import re
from collections.abc import Callable, Mapping
from datetime import datetime
from typing import Any

from lightoff.job.possible import of_trip
from lightoff.machine import kind_of, setting_kind
from lightoff.quantity import KINDS, System
from lightoff.surfaces.web.contexts.fields import unit_of
from lightoff.surfaces.web.contexts.taking import METER, TRAVERSE

Fields = Mapping[str, str]
Entry = dict[str, Any]
Zone = Callable[[datetime], datetime]

_BARE = re.compile(r"[-+−]?\s*(?:\d+[ -])?[\d.,]+(?:/\d+)?(?:[eE][-+]?\d+)?")
_YES_NO = {"yes": True, "no": False}
_SIDES = {"rectangular": ("width", "height"), "round": ("diameter",)}


def with_unit(text: str, kind: str, system: System, unit: str = "") -> str:
    """A quantity as it is written down: a bare number gets the unit that was shown beside it.

    >>> with_unit("3.5", "pressure", "us"), with_unit("870 Pa", "pressure", "us")
    ('3.5 inwc', '870 Pa')
    """
    if not _BARE.fullmatch(text) or KINDS[kind].dimension == "number":
        return text
    unit = unit or unit_of(kind, system)
    return text if unit == "1" else f"{text} {unit}"


def number(text: str) -> int | float | str:
    """A number as TOML would have it; what is none is left for its own sentence."""
    try:
        return int(text) if text.isdecimal() else float(text)
    except ValueError:
        return text


def reading(sent: Fields, system: System) -> Entry:
    """A reading, without its time."""
    point = sent.get("point", "")
    kind = kind_of(point) or "number"
    entry: Entry = {name: sent.get(name, "") for name in ("run", "point")}
    if sent.get("value"):
        entry["value"] = with_unit(sent["value"], kind, system, sent.get("unit", ""))
    entry |= {name: sent.get(name, "") for name in ("instrument", "state", "position", "note")}
    if point == METER:
        entry["dial"] = with_unit(sent.get("dial", ""), "volume", system)
        if sent.get("revolutions"):
            entry["revolutions"] = number(sent["revolutions"])
    if point == TRAVERSE and (sent.get("pressures") or sent.get("velocities")):
        entry["traverse"] = _traverse(sent, system)
    if sent.get("fan_stopped") and point.startswith("flue."):
        entry["main_fan"] = False
    return without_blanks(entry)


def retyped(sent: Fields, point: str, system: System) -> Entry:
    """What of a reading was typed anew: its value, and of a meter its dial and turns."""
    kinds = {"value": kind_of(point) or "number", "dial": "volume"}
    entry: Entry = {
        name: with_unit(text, kinds[name], system) for name, text in sent.items() if name in kinds
    }
    if "revolutions" in sent:
        entry["revolutions"] = number(sent["revolutions"])
    return entry


def _traverse(sent: Fields, system: System) -> Entry:
    shape = sent.get("shape") or "rectangular"
    sides = _SIDES.get(shape, ())
    entry: Entry = {"shape": shape}
    entry |= {side: with_unit(sent.get(side, ""), "size", system) for side in sides}
    for name, kind in (("pressures", "pressure"), ("velocities", "velocity")):
        if sent.get(name):
            entry[name] = [with_unit(text, kind, system) for text in _list(sent[name])]
    return without_blanks(entry)


def _list(text: str) -> list[str]:
    """Several values, one to a line or parted by semicolons, or bare numbers parted by spaces."""
    parts = [part.strip() for part in re.split(r"[;\n]", text) if part.strip()]
    if len(parts) == 1 and all(_BARE.fullmatch(each) for each in parts[0].split()):
        return parts[0].split()
    return parts


def adjustment(sent: Fields, system: System, zone: Zone) -> Entry:
    """Something turned; its time is local where it has no offset."""
    what = sent.get("what", "")
    try:
        kind = setting_kind(what)
    except KeyError:
        kind = None
    entry: Entry = {"at": _moment(sent.get("at", ""), zone), "what": what}
    entry["run"] = sent.get("run", "")
    for name in ("from", "to"):
        text = sent.get(name, "")
        entry[name] = with_unit(text, kind, system) if kind else text
    return without_blanks(entry)


def _moment(text: str, zone: Zone) -> str:
    try:
        moment = datetime.fromisoformat(text)
    except ValueError:
        return text
    return (moment if moment.tzinfo else zone(moment)).isoformat(timespec="seconds")


def proof(kind: str, sent: Fields, system: System) -> Entry:
    """A check, trip, step, joint, decay, or something noted."""
    entry: Entry = {name: sent.get(name, "") for name in _NAMES[kind]}
    entry |= {name: _YES_NO.get(sent.get(name, "")) for name in _FLAGS.get(kind, ())}
    for name, unit_kind in _QUANTITIES.get(kind, {}).items():
        entry[name] = with_unit(sent.get(name, ""), unit_kind, system)
    for name in ("furnace", "seconds", "minutes"):
        if entry.get(name):
            entry[name] = number(str(entry[name]).removesuffix("s").strip())
    if kind == "trip" and sent.get("value"):
        due = of_trip(sent.get("id", ""))
        entry["value"] = with_unit(sent["value"], due.kind, system) if due else sent["value"]
    return without_blanks(entry)


def set_point(sent: Fields, system: System) -> Entry:
    """A set point; a bare number for the discharge is a temperature."""
    entry: Entry = {name: sent.get(name, "") for name in ("id", "found", "left")}
    if entry["id"] == "discharge":
        for name in ("found", "left"):
            entry[name] = with_unit(entry[name], "temperature", system)
    return without_blanks(entry)


def without_blanks(entry: Entry) -> Entry:
    """The entry without what was left empty."""
    return {name: value for name, value in entry.items() if value not in ("", None, [], {})}


_NAMES: dict[str, tuple[str, ...]] = {
    "check": ("id", "outcome"),
    "trip": ("id", "furnace", "seconds"),
    "step": ("id", "furnace", "seconds"),
    "joint": ("id", "furnace", "outcome", "how"),
    "decay": ("section", "medium", "minutes"),
    "deficiency": ("what", "severity", "waits_on"),
    "deferred": ("target", "furnace", "point", "run", "why"),
    "symptom": ("what", "furnace"),
}
_FLAGS: dict[str, tuple[str, ...]] = {"trip": ("acted", "restarted"), "decay": ("isolated",)}
_QUANTITIES: dict[str, dict[str, str]] = {
    "decay": {
        "start": "test pressure",
        "end": "test pressure",
        "start_temperature": "temperature",
        "end_temperature": "temperature",
        "volume": "volume",
    }
}
KINDS_NOTED = (*_NAMES, "setpoint", "adjustment")
