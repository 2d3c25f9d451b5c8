"""What is assumed of a machine, of an unknown gauge and of a way of measuring, as reference."""

import re
from collections.abc import Iterator
from functools import reduce
from pathlib import Path

from lightoff.inference.instruments import UNKNOWN
from lightoff.inference.methods import DRIVE_OUTPUT, METHODS
from lightoff.job import load
from lightoff.machine import kind_of
from lightoff.machine.model.rated import rate
from lightoff.machine.model.unknown import Unknown
from lightoff.machine.model.unknowns import unknowns
from lightoff.machine.points import known_ids
from lightoff.quantity import KINDS, SI_UNIT
from lightoff.surfaces.words import Speech
from lightoff.surfaces.working import unit_text
from lightoff.surfaces.working.digits import digits, plain

EXAMPLES = Path(__file__).parents[1] / "examples"
SHOWN = ("two-furnaces-vfd", "one-furnace-propane", "direct-drive-indoor")
MEASURES = {"speed": "rotational speed"}  # what a channel calls a dimension otherwise
SPEECH = Speech()


def assumed_lines() -> Iterator[str]:
    """The page."""
    yield "# What is assumed"
    yield ""
    yield "Written by `make reference` from the tables themselves; do not edit."
    yield ""
    yield (
        "Before anything is read the model takes a machine to be as its plate says, and these "
        "numbers to be about what is usual. Each may lie off by its standard uncertainty (`±`, "
        "one sigma), and move by as much as `run to run` from one run of a visit to the next, "
        "which is also the error of its equation. What a start-up is there to inspect is marked: "
        "once it is read, nothing but readings speaks for it. A number without a unit is a share "
        "of what is expected. Nobody has published most of these spreads: those are judgement, and "
        "say so."
    )
    yield from unknown_lines()
    yield from gauge_lines()
    yield from method_lines()


def unknown_lines() -> Iterator[str]:
    yield from ("", "## Unknowns of a machine", "")
    yield (
        "Of one furnace; every furnace and train has its own. Where a number depends on the unit, "
        f"it is that of `examples/{SHOWN[0]}.toml`, or of the first example that has it."
    )
    yield from ("", "| | usual | ± | run to run | inspected | where it comes from |")
    yield "|---|--:|--:|--:|---|---|"
    for each in _shown():
        unit = unit_text(each.unit)
        usual, spread = (f"{figure(x)} {unit}".rstrip() for x in (each.mean, each.spread))
        wander = f"{figure(each.wander)} {unit}".rstrip() if each.wander else ""
        name = f"{SPEECH.unknown(each.id)}<br>`{each.id}`"
        inspected = "inspected" if each.inspected else ""
        source = f"{each.origin}: {each.source}"
        yield f"| {name} | {usual} | {spread} | {wander} | {inspected} | {source} |"


def _shown() -> list[Unknown]:
    """Every unknown once, of first furnaces and first trains."""
    found: dict[str, Unknown] = {}
    for name in SHOWN:
        for each in unknowns(rate(load(EXAMPLES / f"{name}.toml").machine())):
            if not re.search(r"\.[2-9](\.|$)|^train\.1\.2", each.id):
                found.setdefault(each.id, each)
    return list(found.values())


def gauge_lines() -> Iterator[str]:
    yield from ("", "## Gauges that nobody declared", "")
    yield (
        "A reading that names no instrument is taken to come from a poor one, and the answer says "
        "so. Limits are half-widths of a rectangle (JCGM 100, 4.3.7); all of them are judgement."
    )
    yield from ("", "| quantity | of reading | plus or minus | resolution |", "|---|--:|--:|--:|")
    for quantity, gauge in UNKNOWN.items():
        unit = unit_text(SI_UNIT.get(MEASURES.get(quantity, quantity), "1"))
        share = f"{100 * gauge.of_reading:g} %" if gauge.of_reading else ""
        limit, step = (
            f"{figure(x)} {unit}".rstrip() if x else ""
            for x in (gauge.plus_minus, gauge.resolution)
        )
        yield f"| {quantity} | {share} | {limit} | {step} |"


def method_lines() -> Iterator[str]:
    yield from ("", "## Ways of measuring", "")
    yield (
        "What the way of measuring adds to a reading, whatever the instrument, as a standard "
        "uncertainty. What is shared is the same error for every reading at that point."
    )
    yield from ("", "| points | cause | ± | shared | origin |", "|---|---|--:|---|---|")
    for each in (*METHODS, DRIVE_OUTPUT):
        points, unit = readable(each.points), unit_text(SI_UNIT[dimension(each.points)])
        size = f"{100 * each.share:g} %" if each.share else f"{each.absolute:g} {unit}"
        shared = "shared" if each.shared else ""
        yield f"| `{points}` | {each.cause} | {size} | {shared} | {each.origin} |"


def readable(pattern: str) -> str:
    """A pattern of points as a person writes it."""
    plainly = {r"\.": ".", r"\d": "N", ".*": "*", "|": " or "}
    return reduce(lambda text, sign: text.replace(*sign), plainly.items(), pattern)


def dimension(pattern: str) -> str:
    """What the points of a pattern measure."""
    kind = next(kind_of(point) for point in known_ids() if re.fullmatch(pattern, point))
    return KINDS[kind or "number"].dimension


def figure(x: float) -> str:
    """Three digits."""
    return plain(digits(float(f"{x:.3g}")))
