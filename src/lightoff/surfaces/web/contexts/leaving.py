"""What a visit leaves behind: deferrals, deficiencies, set points, and how it was closed."""

from dataclasses import dataclass
from typing import get_args

from lightoff.job.visit import Left
from lightoff.judgement.required import SYMPTOMS
from lightoff.machine.visit import Severity
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.fields import Field, Option, Typed, field_of, options
from lightoff.surfaces.web.contexts.proving import Choice, furnace_choice
from lightoff.surfaces.web.contexts.withdrawing import Forms, Withdrawing, withdrawing

CLOSING = "closing"
REOPENING = "reopening"


@dataclass(frozen=True)
class Noted:
    """One entry in words, with a note under it."""

    text: str
    note: str
    withdraw: Withdrawing | None


@dataclass(frozen=True)
class Noting:
    """A list of entries of one kind, and the form that adds to it."""

    kind: str
    title: str
    none: str
    entries: tuple[Noted, ...]
    action: str
    event_id: str
    add: str
    choices: tuple[Choice, ...]
    fields: tuple[Field, ...]
    faults: tuple[str, ...]
    opened: bool


@dataclass(frozen=True)
class Closing:
    """How the visit is closed, or that it is."""

    action: str
    form: str
    event_id: str
    lefts: tuple[Option, ...]
    fields: tuple[Field, ...]
    faults: tuple[str, ...]
    closed: str  # how it was left, where it is closed


def noting(bench: Bench, forms: Forms) -> tuple[Noting, ...]:
    """Every such list of the visit."""
    entries = {
        "deficiency": _deficiencies(bench, forms),
        "deferred": _deferred(bench, forms),
        "setpoint": _setpoints(bench, forms),
        "symptom": _symptoms(bench, forms),
    }
    return tuple(
        _noting(bench, kind, there, forms.typed.of(kind), forms.new_id())
        for kind, there in entries.items()
    )


def _noting(
    bench: Bench, kind: str, entries: tuple[Noted, ...], typed: Typed, event_id: str
) -> Noting:
    choices, fields = _asked(bench, kind, typed)
    word = bench.speech.word
    return Noting(
        kind=kind,
        title=word(f"noted:{kind}"),
        none=word(f"noted:{kind}:none"),
        entries=entries,
        action=f"{bench.base}/entries/{kind}",
        event_id=event_id,
        add=word(f"noted:{kind}:add"),
        choices=choices,
        fields=fields,
        faults=typed.besides(*(field.name for field in fields)),
        opened=bool(typed.faults),
    )


def _asked(bench: Bench, kind: str, typed: Typed) -> tuple[tuple[Choice, ...], tuple[Field, ...]]:
    speech = bench.speech

    def fields(*names: str) -> tuple[Field, ...]:
        return tuple(field_of(name, speech, typed, label=f"field:{kind}.{name}") for name in names)

    if kind == "deficiency":
        severities = ((s, speech.word(f"severity:{s}")) for s in get_args(Severity))
        chosen = options(severities, typed.value("severity", "correct"))
        choice = Choice("severity", speech.word("field:severity"), chosen)
        return (choice,), fields("what", "waits_on")
    if kind == "deferred":
        return (_target_choice(bench, typed), furnace_choice(bench, typed)), fields("why")
    if kind == "setpoint":
        return (), fields("thing", "found", "left")
    symptoms = Choice(
        "what",
        speech.word("field:symptom"),
        options(((s, s) for s in SYMPTOMS), typed.value("what")),
    )
    return (symptoms, furnace_choice(bench, typed)), ()


def _target_choice(bench: Bench, typed: Typed) -> Choice:
    """The targets that wait for a measurement."""
    waiting = [row.id for row in bench.answer.targets if row.decision == "not measured"]
    pairs = [(target, bench.speech.target(target)) for target in dict.fromkeys(waiting)]
    label = bench.speech.word("field:deferred.target")
    return Choice("target", label, options(pairs, typed.value("target")))


def _deficiencies(bench: Bench, forms: Forms) -> tuple[Noted, ...]:
    word = bench.speech.word
    return tuple(
        Noted(
            each.what,
            ", ".join(
                [word(f"severity:{each.severity}")]
                + ([word("noted:waits-on", who=each.waits_on)] if each.waits_on else [])
            ),
            withdrawing(bench, bench.entries.get(each.place), forms),
        )
        for each in bench.visit.deficiencies
    )


def _deferred(bench: Bench, forms: Forms) -> tuple[Noted, ...]:
    return tuple(
        Noted(
            _of_furnace(bench, bench.speech.target(each.target), each.furnace),
            each.why,
            withdrawing(bench, bench.entries.get(each.place), forms),
        )
        for each in bench.visit.deferred
    )


def _setpoints(bench: Bench, forms: Forms) -> tuple[Noted, ...]:
    word = bench.speech.word
    out = []
    for each in bench.visit.setpoints:
        found, left = (_set_point(bench, each.id, value) for value in (each.found, each.left))
        note = word("noted:from-to", found=found, left=left)
        entry = bench.entries.get(each.place)
        out.append(Noted(each.id, note, withdrawing(bench, entry, forms)))
    return tuple(out)


def _set_point(bench: Bench, name: str, value: float | str | None) -> str:
    """A set point: words as they are; the discharge's is a temperature, any other a number."""
    if isinstance(value, float):
        return bench.speech.quantity(value, "temperature" if name == "discharge" else "number")
    return value or "—"


def _symptoms(bench: Bench, forms: Forms) -> tuple[Noted, ...]:
    return tuple(
        Noted(
            _of_furnace(bench, each.what, each.furnace),
            "",
            withdrawing(bench, bench.entries.get(each.place), forms),
        )
        for each in bench.visit.symptoms
    )


def _of_furnace(bench: Bench, name: str, furnace: int | None) -> str:
    return name if furnace is None else bench.speech.word("row:of-furnace", name=name, n=furnace)


def closing(bench: Bench, typed: Typed, event_id: str) -> Closing:
    """The form that ends the visit, or opens it again."""
    speech = bench.speech
    form = REOPENING if bench.closed else CLOSING
    mine = typed.of(form)
    names = ("reason",) if bench.closed else ("told",)
    lefts = () if bench.closed else get_args(Left)
    return Closing(
        action=f"{bench.base}/{'reopen' if bench.closed else 'close'}",
        form=form,
        event_id=event_id,
        lefts=options(((left, speech.word(f"left:{left}")) for left in lefts), mine.value("left")),
        fields=tuple(field_of(name, speech, mine) for name in names),
        faults=mine.besides(*names),
        closed=_closed(bench),
    )


def _closed(bench: Bench) -> str:
    if not bench.closed or bench.visit.left is None:
        return ""
    word = bench.speech.word
    left = word(f"left:{bench.visit.left}")
    if not bench.visit.told:
        return word("closed", left=left)
    return word("closed:told", left=left, told=bench.visit.told)
