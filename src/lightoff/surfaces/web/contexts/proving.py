"""Small forms that record what is proven rather than read: checks, trips, steps, joints, decay."""

from collections.abc import Callable
from dataclasses import dataclass

from lightoff.job.possible import of_trip
from lightoff.judgement import Row
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.fields import Field, Option, Typed, field_of, options
from lightoff.surfaces.web.contexts.rows import anchor

OUTCOMES = ("right", "wrong", "not applicable")
JOINT_OUTCOMES = ("tight", "leaks")
YES_NO = ("yes", "no", "")

NewId = Callable[[], str]


@dataclass(frozen=True)
class Choice:
    """One of a few words, chosen by a tap."""

    name: str
    label: str
    options: tuple[Option, ...]


@dataclass(frozen=True)
class Proving:
    """A form under a row: what it is about, what it asks, what it warns of.

    `taps` are outcomes that are recorded by one tap; where there are none the form has a button.
    """

    action: str
    form: str
    event_id: str
    thing: str
    furnace: str
    taps: tuple[Option, ...]
    choices: tuple[Choice, ...]
    fields: tuple[Field, ...]
    caution: str
    faults: tuple[str, ...]
    opened: bool


def proving(bench: Bench, row: Row, typed: Typed, new_id: NewId) -> Proving | None:
    """The form of a row that has no point to read; None where it has one."""
    kind = kind_of_proof(row)
    if not kind:
        return None
    form = anchor(row)
    mine = typed.of(form)
    choices, fields = _asked(bench, kind, row, mine)
    return Proving(
        action=f"{bench.base}/entries/{kind}",
        form=form,
        event_id=new_id(),
        thing="" if kind in ("joint", "decay") else row.point or "",
        furnace="" if row.furnace is None else str(row.furnace),
        taps=_taps(bench, kind),
        choices=choices,
        fields=fields,
        caution=bench.speech.word(row.caution) if row.caution else "",
        faults=mine.besides(*(field.name for field in fields)),
        opened=bool(mine.faults),
    )


def kind_of_proof(row: Row) -> str:
    """The table of the visit in which a row is recorded; nothing for a row of readings."""
    if row.run is not None:
        return ""
    kind, _, name = row.id.partition(": ")
    if kind in ("check", "trip"):
        return kind
    if kind == "tightness":
        return "joint" if name == "joints" else "decay"
    return "step"


def _taps(bench: Bench, kind: str) -> tuple[Option, ...]:
    words = {"check": OUTCOMES, "joint": JOINT_OUTCOMES}.get(kind, ())
    return tuple(Option(word, bench.speech.word(f"outcome:{word}")) for word in words)


def _asked(
    bench: Bench, kind: str, row: Row, typed: Typed
) -> tuple[tuple[Choice, ...], tuple[Field, ...]]:
    if kind == "trip":
        return _trip(bench, row, typed)
    if kind == "step":
        return (), (_field(bench, "seconds", typed, "time"),)
    if kind == "joint":
        joint = tuple(
            _field(bench, name, typed, label=f"field:joint.{name}") for name in ("thing", "how")
        )
        return (furnace_choice(bench, typed),), joint
    if kind == "decay":
        return (_yes_no(bench, "isolated", typed, blank=False),), _decay(bench, typed)
    return (), ()


def _trip(bench: Bench, row: Row, typed: Typed) -> tuple[tuple[Choice, ...], tuple[Field, ...]]:
    choices = (
        _yes_no(bench, "acted", typed, blank=False),
        _yes_no(bench, "restarted", typed, blank=True),
    )
    due = of_trip(row.point or "")
    value = (_field(bench, "value", typed, due.kind, label="field:trip.value"),) if due else ()
    return choices, (*value, _field(bench, "seconds", typed, "time"))


def _decay(bench: Bench, typed: Typed) -> tuple[Field, ...]:
    asked = {
        "section": "",
        "medium": "",
        "start": "test pressure",
        "end": "test pressure",
        "start_temperature": "temperature",
        "end_temperature": "temperature",
        "minutes": "",
        "volume": "volume",
    }
    return tuple(
        _field(bench, name, typed, kind, label=f"field:decay.{name}")
        for name, kind in asked.items()
    )


def furnace_choice(bench: Bench, typed: Typed) -> Choice:
    """Which furnace, or none."""
    pairs = [("", bench.speech.word("furnace:none"))]
    pairs += [
        (str(n), bench.speech.word("group:furnace", n=n)) for n, _ in bench.machine.numbered()
    ]
    label = bench.speech.word("field:furnace")
    return Choice("furnace", label, options(pairs, typed.value("furnace")))


def _yes_no(bench: Bench, name: str, typed: Typed, *, blank: bool) -> Choice:
    words = YES_NO if blank else YES_NO[:2]
    default = "" if blank else ("no" if name == "isolated" else "yes")
    pairs = [(word, bench.speech.word(f"{name}:{word or 'unknown'}")) for word in words]
    return Choice(
        name, bench.speech.word(f"field:{name}"), options(pairs, typed.value(name, default))
    )


def _field(bench: Bench, name: str, typed: Typed, kind: str = "", *, label: str = "") -> Field:
    return field_of(name, bench.speech, typed, kind=kind, label=label)
