"""What one reading says: its decision at once, and what else it decides."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from markupsafe import Markup

from lightoff.judgement import Assessment, Row
from lightoff.surfaces.drawing import state_of, strip
from lightoff.surfaces.drawing.marks import Mark
from lightoff.surfaces.web.contexts.answer import weight
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.rows import (
    TONES,
    is_silent,
    strip_label,
    value_of,
    verdict_of,
)
from lightoff.surfaces.words import Speech

Mood = Literal["is", "would"]  # kept, or only tried
MOST_ALSO = 4


@dataclass(frozen=True)
class Also:
    """Another row that the reading decides."""

    mark: Mark
    text: str
    href: str


@dataclass(frozen=True)
class Told:
    """The answer to one reading."""

    mark: Mark
    lead: str
    text: str
    strip: Markup
    remarks: tuple[str, ...]
    also: tuple[Also, ...]


def told(bench: Bench, place: str, before: Assessment | None = None, *, mood: Mood = "is") -> Told:
    """What the reading at `place` says; with `before`, of other rows only those that changed."""
    reading = next(r for r in bench.visit.readings if r.place == place)
    rows = sorted(bench.resting_on(reading.point, bench.canonical(reading.run)), key=_telling)
    own = [row for row in rows if row.point == reading.point] or rows[:1]
    name = _name(bench, reading.point, reading.run)
    remarks = tuple(
        bench.speech.say(r) for r in bench.answer.remarks if r.place.startswith(f"{place}.")
    )
    others = [
        row for row in _changed(rows, before) if row not in own[:1] and not is_silent(row, rows)
    ]
    also = tuple(_also(bench, row) for row in others)
    if not own or own[0].estimate is None:
        lead = bench.speech.word(f"told:{mood}:no-limit")
        text = _unjudged(bench, name, own)
        return Told("nm" if own else "ok", lead, text, Markup(""), remarks, also[:MOST_ALSO])
    row, speech = own[0], bench.speech
    return Told(
        mark=state_of(row),
        lead=lead_of(row, speech, mood),
        text=_judged(row, name if row.point == reading.point else speech.row(row), speech),
        strip=strip(row, strip_label(row, value_of(row, speech), speech), width=280.0),
        remarks=remarks,
        also=also[:MOST_ALSO],
    )


def lead_of(row: Row, speech: Speech, mood: Mood) -> str:
    """The decision as the first words of a sentence."""
    return speech.word(f"told:{mood}:{TONES.get(state_of(row), row.decision)}")


def _telling(row: Row) -> tuple[bool, int, bool]:
    """The decision that weighs most; among equals a window tells more than a hard limit."""
    return *weight(row)[:2], row.lower is None or row.upper is None


def _judged(row: Row, name: str, speech: Speech) -> str:
    value, window, read = value_of(row, speech), speech.window(row), speech.read(row)
    text = " ".join(filter(None, (value.text if value else "", read and f"({read})")))
    if row.decision == "undecided":
        return speech.word("told:open", name=name, value=text, why=speech.say(row.why, row))
    return speech.word(
        "told:judged" if window else "told:bare", name=name, value=text, window=window
    )


def _unjudged(bench: Bench, name: str, own: list[Row]) -> str:
    """A reading without a limit of its own, or one whose row waits for something else."""
    speech = bench.speech
    if own:
        return speech.word(
            "told:waits", name=speech.row(own[0]), why=speech.say(own[0].why, own[0])
        )
    return speech.word("told:no-limit", name=name)


def _changed(rows: Iterable[Row], before: Assessment | None) -> list[Row]:
    """The rows that are not what they were."""
    if before is None:
        return [row for row in rows if row.estimate is not None]
    was = {row.key: (row.decision, row.measured) for row in before.targets}
    return [row for row in rows if was.get(row.key) != (row.decision, row.measured)]


def _also(bench: Bench, row: Row) -> Also:
    speech, value = bench.speech, value_of(row, bench.speech)
    word = verdict_of(row, speech).word or speech.word(f"decision:{row.decision}")
    text = speech.word(
        "told:also", name=speech.row(row), value=value.text if value else "", word=word
    )
    return Also(state_of(row), text, bench.point_url(row.point or "", row.run or ""))


def _name(bench: Bench, point: str, run: str) -> str:
    return bench.speech.word(
        "answer:name", name=bench.speech.point(point), run=bench.speech.run(bench.canonical(run))
    )
