"""What was read at a point: each reading as it stands, how it was put right, and the forms to."""

import re
from dataclasses import dataclass

from lightoff.judgement.history import History, history
from lightoff.machine import kind_of
from lightoff.machine.visit import Reading
from lightoff.quantity import LightoffError, parse, printed_unit
from lightoff.record import Entry
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.fields import Field, Typed, field_of
from lightoff.surfaces.web.contexts.withdrawing import Forms, Withdrawing, withdrawing
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.bound import bound

_NUMBER = re.compile(r"[-+−\d.,eE ]+?(?=\s*[^\d.,eE\s]|$)")
CORRECTABLE = ("value", "dial", "revolutions")


@dataclass(frozen=True)
class Change:
    """One earlier state of an entry: what it said, and why that was put right."""

    text: str
    reason: str


@dataclass(frozen=True)
class Past:
    """One reading, with the form that puts it right and the one that takes it back."""

    anchor: str
    when: str
    value: str
    state: str
    about: str
    changes: tuple[Change, ...]
    withdrawn: bool
    correct: str
    event_id: str
    withdraw: Withdrawing | None
    fields: tuple[Field, ...]
    faults: tuple[str, ...]
    opened: bool


def readings_of(bench: Bench, point: str, run: str) -> list[Reading]:
    """The standing readings of a point in a run, in the order of the visit."""
    return [r for r in bench.visit.readings if r.point == point and bench.canonical(r.run) == run]


def past_of(bench: Bench, point: str, run: str, forms: Forms) -> tuple[Past, ...]:
    """Everything read there: what stands, then what was taken back."""
    told = history(bench.machine, bench.visit)
    standing = [_standing(bench, told, each, forms) for each in readings_of(bench, point, run)]
    gone = [
        _gone(bench, entry)
        for entry in bench.withdrawn
        if entry.kind == "reading"
        and entry.tree.get("point") == point
        and bench.canonical(str(entry.tree.get("run"))) == run
    ]
    return (*standing, *gone)


def _standing(bench: Bench, told: History, reading: Reading, forms: Forms) -> Past:
    entry = bench.entries.get(reading.place)
    base = f"{bench.base}/entry/{entry.id}" if entry and not bench.closed else ""
    form = f"correct-{entry.id}" if entry else ""
    mine = forms.typed.of(form)
    tree = entry.tree if entry else {}
    fields = _fields(bench, reading, tree, mine) if base else ()
    return Past(
        anchor=form,
        when=f"{reading.at:%H:%M}" if reading.at else "",
        value=value_text(tree, reading.point, bench.speech),
        state=bench.speech.word(f"past:{state_of(bench, told, reading)}"),
        about=_about(reading),
        changes=_changes(entry, bench.speech) if entry else (),
        withdrawn=False,
        correct=f"{base}/correct" if fields else "",
        event_id=forms.new_id(),
        withdraw=withdrawing(bench, entry, forms),
        fields=fields,
        faults=mine.besides(*(field.name for field in fields)),
        opened=bool(mine.faults),
    )


def _gone(bench: Bench, entry: Entry) -> Past:
    point = str(entry.tree.get("point"))
    return Past(
        anchor=f"gone-{entry.id}",
        when="",
        value=value_text(entry.tree, point, bench.speech),
        state=bench.speech.word("past:withdrawn"),
        about=str(entry.events[-1].body.get("reason", "")),
        changes=_changes(entry, bench.speech),
        withdrawn=True,
        correct="",
        event_id="",
        withdraw=None,
        fields=(),
        faults=(),
        opened=False,
    )


def state_of(bench: Bench, told: History, reading: Reading) -> str:
    """Which state of the machine a reading speaks for."""
    key = (bench.canonical(reading.run), reading.point)
    found, left = told.found.get(key), told.left.get(key)
    is_found = found is not None and reading in found.readings
    if left is not None and reading in left.readings:
        if left.stale:
            return "stale"
        return "both" if is_found else "as left"
    return "as found" if is_found else "between"


def value_text(tree: dict[str, object], point: str, speech: Speech) -> str:
    """A reading as it was typed, its unit as it is read."""
    text = tree.get("value")
    if not isinstance(text, str):
        traverse = tree.get("traverse")
        return _traverse(traverse, speech) if isinstance(traverse, dict) else str(text or "")
    try:
        unit = printed_unit(parse(text, kind_of(point) or "number").unit)
    except LightoffError:
        return text
    number = _NUMBER.match(text.strip())
    return bound(f"{number[0].strip()} {unit}".strip()) if number else text


def _traverse(traverse: dict[str, object], speech: Speech) -> str:
    """How many points of what shape of duct."""
    values = traverse.get("pressures") or traverse.get("velocities")
    count = len(values) if isinstance(values, list) else 0
    shape = traverse.get("shape", "rectangular")
    return speech.word("past:traverse", count=count, shape=speech.word(f"shape:{shape}"))


def _about(reading: Reading) -> str:
    """By what, where and with which remark it was read."""
    return ", ".join(filter(None, (reading.instrument, reading.position, reading.note)))


def _changes(entry: Entry, speech: Speech) -> tuple[Change, ...]:
    """What the entry said before each correction, and the reason given."""
    point = str(entry.tree.get("point"))
    before = entry.events[0].body["entry"]
    changes = []
    for event in entry.events[1:]:
        if "now" in event.body:
            changes.append(Change(value_text(before, point, speech), str(event.body["reason"])))
            before = event.body["now"]
    return tuple(changes)


def _fields(
    bench: Bench, reading: Reading, tree: dict[str, object], typed: Typed
) -> tuple[Field, ...]:
    """What can be put right by typing it again, and the reason that is asked for."""
    names = [name for name in CORRECTABLE if name in tree]
    if not names:
        return ()
    stands = {name: str(tree[name]) for name in names}
    shown = Typed({**stands, **typed.values}, typed.faults)
    kinds = {"value": kind_of(reading.point) or "", "dial": "volume"}
    return tuple(
        field_of(name, bench.speech, shown, kind=kinds.get(name, "")) for name in (*names, "reason")
    )
