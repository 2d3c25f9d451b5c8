"""The form that takes a reading: point, run, value, instrument, and what it is judged against."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from lightoff.inference.instruments import channel_for, quantity_read
from lightoff.machine import Point, points, readable, runs
from lightoff.quantity import printed_unit
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.fields import (
    Field,
    Option,
    Options,
    Typed,
    field_of,
    options,
    unit_of,
    units_of,
)
from lightoff.surfaces.words import Speech

TRAVERSE = "duct.traverse"
METER = "gas.meter.seconds"
_SHAPES = ("rectangular", "round")
_STATES = ("as found", "as left")
_OWN_FAULTS = ("value", "position", "note", "dial", "revolutions", "width", "height", "diameter",
               "pressures", "velocities")  # fmt: skip


@dataclass(frozen=True)
class Taking:
    """The form: where it is sent, what may be chosen, what stands in it, what was wrong."""

    base: str
    action: str
    event_id: str
    points: tuple[Options, ...]
    point: str
    runs: tuple[Option, ...]
    value: Field
    units: tuple[Option, ...]
    instruments: tuple[Options, ...]
    window: str
    caution: str
    fan_stopped: bool
    more: tuple[Field, ...]  # position and note
    meter: tuple[Field, ...]  # dial and turns
    plane: tuple[Field, ...]  # of a traverse
    shapes: tuple[Option, ...]
    states: tuple[Option, ...]
    faults: tuple[str, ...]  # those of no field above


def taking(bench: Bench, typed: Typed, event_id: str) -> Taking:
    """The form, with what was typed in it; a first point and run where nothing was."""
    point = _point(bench, typed)
    run = _run(bench, point, typed)
    speech, kind = bench.speech, point.kind
    unit = typed.value("unit") or unit_of(kind, speech.system)
    more = tuple(field_of(name, speech, typed) for name in ("position", "note"))
    return Taking(
        base=bench.base,
        action=f"{bench.base}/readings",
        event_id=event_id,
        points=tuple(_points(bench, point.id)),
        point=point.id,
        runs=options(
            ((r, speech.run(r)) for r in runs(bench.machine) if readable(bench.machine, point, r)),
            run,
        ),
        value=replace(field_of("value", speech, typed, kind=kind), unit=printed_unit(unit)),
        units=options(((u, printed_unit(u)) for u in units_of(kind, speech.system)), unit),
        instruments=_instruments(bench, point, typed.values.get("instrument")),
        window=_window(bench, point.id, run),
        caution=_caution(bench, point.id, run),
        fan_stopped=typed.value("fan_stopped") != "",
        more=more,
        meter=(
            field_of("dial", speech, _dialled(bench, typed), kind="volume"),
            field_of("revolutions", speech, typed),
        ),
        plane=tuple(_plane(speech, typed)),
        shapes=options(
            ((s, speech.word(f"shape:{s}")) for s in _SHAPES), typed.value("shape", _SHAPES[0])
        ),
        states=options(
            [("", speech.word("state:told")), *((s, speech.word(f"state:{s}")) for s in _STATES)],
            typed.value("state"),
        ),
        faults=typed.besides(*_OWN_FAULTS),
    )


def _plane(speech: Speech, typed: Typed) -> Iterator[Field]:
    for name in ("width", "height", "diameter"):
        yield field_of(name, speech, typed, kind="size")
    yield field_of("pressures", speech, typed, kind="pressure")
    yield field_of("velocities", speech, typed, kind="velocity")


def _point(bench: Bench, typed: Typed) -> Point:
    """The point chosen, else one to take again, else the first that still wants a reading."""
    there = points(bench.machine)
    chosen = typed.value("point")
    by_id = {point.id: point for point in there}
    if chosen in by_id:
        return by_id[chosen]
    waiting = [point for point, _ in _waiting(bench)]
    return next((by_id[point] for point in waiting if point in by_id), there[0])


def _waiting(bench: Bench) -> Iterator[tuple[str, str]]:
    """What is to be read, with its run: first what an adjustment made stale."""
    yield from ((p.id, p.run) for p in bench.answer.points if p.stale)
    for row in bench.answer.targets:
        if point := bench.unread(row):
            yield point, row.run or ""


def next_point(bench: Bench, point: str, run: str) -> str:
    """The point to read after this one in the same run: the next in order that a row waits for."""
    order = [p.id for p in points(bench.machine) if readable(bench.machine, p, run)]
    waiting = {waits for waits, there in _waiting(bench) if there == run}
    after = order[order.index(point) + 1 :] if point in order else order
    return next((p for p in [*after, *order] if p in waiting), point)


def _run(bench: Bench, point: Point, typed: Typed) -> str:
    """The run chosen, else the one this point waits in, else a likely one."""
    machine = bench.machine
    may = [run for run in runs(machine) if readable(machine, point, run)]
    waiting = (run for waits, run in _waiting(bench) if waits == point.id)
    likely = ("high", f"high.{point.furnace}", "fan")
    return next(run for run in (typed.value("run"), *waiting, *likely, *may) if run in may)


def _points(bench: Bench, chosen: str) -> Iterator[Options]:
    """Every point, under the group it belongs to."""
    groups: dict[tuple[str, int | None], list[Point]] = {}
    for point in points(bench.machine):
        furnace = point.furnace if point.group == "furnace" else None
        groups.setdefault((point.group, furnace), []).append(point)
    for (group, furnace), there in groups.items():
        title = bench.speech.word(f"group:{group}", n=furnace or "")
        yield Options(title, options(((p.id, bench.speech.point(p.id)) for p in there), chosen))


def _instruments(bench: Bench, point: Point, chosen: str | None) -> tuple[Options, ...]:
    """The instruments carried: those that read this quantity first."""
    speech, quantity = bench.speech, quantity_read(point.id, point.kind)
    fit = [i for i in bench.visit.instruments if channel_for(i, quantity)]
    rest = [i for i in bench.visit.instruments if i not in fit]
    if chosen is None:
        chosen = _usual(bench, point, [i.id for i in fit])
    none = Options("", options([("", speech.word("instrument:none"))], chosen))
    groups = [("instruments:fit", fit), ("instruments:other", rest)]
    named = [
        Options(speech.word(title), options(((i.id, f"{i.id}, {i.kind}") for i in there), chosen))
        for title, there in groups
        if there
    ]
    return (*named, none)


def _usual(bench: Bench, point: Point, fit: list[str]) -> str:
    """The instrument that was last used here, else the first that reads this quantity."""
    here = [r.instrument for r in bench.visit.readings if r.point == point.id and r.instrument]
    return here[-1] if here else next(iter(fit), "")


def _window(bench: Bench, point: str, run: str) -> str:
    """The limits a reading here will be held against."""
    own = [row for row in bench.answer.targets if (row.point, row.run) == (point, run)]
    windows = dict.fromkeys(bench.speech.window(row) for row in own)
    return "; ".join(text for text in windows if text)


def _caution(bench: Bench, point: str, run: str) -> str:
    cautions = [row.caution for row in bench.resting_on(point, run) if row.caution]
    return bench.speech.word(cautions[0]) if cautions else ""


def _dialled(bench: Bench, typed: Typed) -> Typed:
    """The dial as it was last clocked, so that it is typed once."""
    if typed.value("dial"):
        return typed
    clocked = (r.dial for r in reversed(bench.visit.readings) if r.dial)
    dial = next(clocked, bench.machine.site.meter_dial)
    if dial is None:
        return typed
    text = bench.speech.parts(dial, "volume").number
    return Typed({**typed.values, "dial": text}, typed.faults)
