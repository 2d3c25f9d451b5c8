"""The form for something turned, and the list of what was."""

from dataclasses import dataclass

from lightoff.machine import runs, setting_kind, settings
from lightoff.machine.visit import Adjustment
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.fields import Field, Option, Typed, field_of, options
from lightoff.surfaces.web.contexts.withdrawing import Forms, Withdrawing, withdrawing
from lightoff.surfaces.words import Speech

FORM = "adjustment"


@dataclass(frozen=True)
class Turning:
    """The form: what was turned, in which run, when, from what to what."""

    action: str
    form: str
    event_id: str
    settings: tuple[Option, ...]
    runs: tuple[Option, ...]
    fields: tuple[Field, ...]
    at: str
    faults: tuple[str, ...]
    opened: bool


@dataclass(frozen=True)
class Turned:
    """One adjustment made."""

    name: str
    when: str
    before: str
    after: str
    withdraw: Withdrawing | None


def turning(bench: Bench, typed: Typed, event_id: str, at: str) -> Turning:
    """The form; `at` is the moment it offers, local time without offset."""
    speech, mine = bench.speech, typed.of(FORM)
    there = settings(bench.machine)
    chosen = mine.value("what") or next(iter(there))
    kind = there.get(chosen) or ""
    fields = tuple(
        field_of(name, speech, mine, kind=kind, label=f"field:turned.{name}")
        for name in ("from", "to")
    )
    return Turning(
        action=f"{bench.base}/entries/adjustment",
        form=FORM,
        event_id=event_id,
        settings=options(((s, speech.setting(s)) for s in there), chosen),
        runs=options(
            [("", speech.word("run:none")), *((r, speech.run(r)) for r in runs(bench.machine))],
            mine.value("run"),
        ),
        fields=fields,
        at=mine.value("at") or at,
        faults=mine.besides("from", "to"),
        opened=bool(mine.faults),
    )


def turned(bench: Bench, forms: Forms) -> tuple[Turned, ...]:
    """Every adjustment of the visit, in time."""
    made = sorted(bench.visit.adjustments, key=lambda a: a.at)
    return tuple(_turned(bench, each, forms) for each in made)


def _turned(bench: Bench, made: Adjustment, forms: Forms) -> Turned:
    speech = bench.speech
    name = speech.setting(made.what)
    if made.run:
        name = speech.word("answer:name", name=name, run=speech.run(bench.canonical(made.run)))
    entry = bench.entries.get(made.place)
    typed = entry.tree if entry else {}
    return Turned(
        name=name,
        when=f"{made.at:%H:%M}",
        before=_shown(typed.get("from"), made.before, made.what, speech),
        after=_shown(typed.get("to"), made.after, made.what, speech),
        withdraw=withdrawing(bench, entry, forms),
    )


def _shown(typed: object, value: float | str | None, what: str, speech: Speech) -> str:
    """A setting's value as it is shown; words stay words."""
    if value is None:
        return ""
    kind = setting_kind(what)
    if isinstance(value, str) or kind is None:
        return str(typed or value)
    return speech.quantity(value, kind)
