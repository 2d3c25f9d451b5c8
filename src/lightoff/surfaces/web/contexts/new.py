"""The page for a new unit: from a file, or the fields a job cannot do without."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from lightoff.job import Fault, schema
from lightoff.job.guide import Guide
from lightoff.surfaces.web.contexts.fields import Field, Option, Typed, options
from lightoff.surfaces.web.contexts.shell import Shell, outside
from lightoff.surfaces.words import Speech

MOST_FURNACES = 3

# place in the job, whether it must be told; {n} is the furnace. Words to choose from come from the
# schema.
_UNIT = (
    ("unit.tag", True),
    ("unit.serves", False),
    ("unit.arrangement", True),
    ("unit.mounting", False),
)
_POWER = (
    ("unit.electrical.volts", True),
    ("unit.electrical.phases", True),
    ("unit.motor.power", True),
    ("unit.motor.full_load_amps", True),
    ("unit.drive.kind", True),
    ("unit.drive.vfd", False),
)
_FURNACE = (
    ("unit.furnace.{n}.gas", True),
    ("unit.furnace.{n}.control", True),
    ("unit.furnace.{n}.input", True),
    ("unit.furnace.{n}.supply_min", False),
    ("unit.furnace.{n}.supply_max", False),
    ("unit.furnace.{n}.train.1.manifold_high", False),
    ("unit.furnace.{n}.train.1.manifold_low", False),
)
_DESIGN = (
    ("design.airflow", True),
    ("design.discharge", True),
    ("design.winter_outdoor", True),
    ("site.altitude", True),
)
_FLAGS = frozenset({"unit.drive.vfd"})


@dataclass(frozen=True)
class Asked:
    """One field of the form: a text, or one of a few words, or a tick."""

    field: Field
    options: tuple[Option, ...]
    flag: bool
    due: bool


@dataclass(frozen=True)
class FurnaceView:
    """The fields of one furnace."""

    number: int
    title: str
    fields: tuple[Asked, ...]
    leading: bool


@dataclass(frozen=True)
class FaultView:
    """What is wrong with a file, where."""

    place: str
    line: int | None
    message: str


@dataclass(frozen=True)
class NewPage:
    """Everything on the page."""

    shell: Shell
    file_faults: tuple[FaultView, ...]
    more_faults: int
    file_text: str
    form_faults: tuple[FaultView, ...]
    event_id: str
    unit: tuple[Asked, ...]
    power: tuple[Asked, ...]
    furnaces: tuple[FurnaceView, ...]
    design: tuple[Asked, ...]
    may_add: bool


@dataclass(frozen=True)
class Submitted:
    """What was sent: a file and what is wrong with it, or a form and what is wrong with that."""

    typed: Typed = field(default_factory=Typed)
    furnaces: int = 1
    file_text: str = ""
    file_faults: Sequence[Fault] = ()
    more_faults: int = 0


def new_page(speech: Speech, sent: Submitted, event_id: str) -> NewPage:
    """The page, with everything that was sent still in it."""
    guide = Guide(schema())
    shown = set(places(sent.furnaces))
    return NewPage(
        shell=outside(speech, speech.word("title:new"), "new"),
        file_faults=tuple(FaultView(f.place, f.line, f.message) for f in sent.file_faults),
        more_faults=sent.more_faults,
        file_text=sent.file_text,
        form_faults=tuple(
            FaultView(place, None, message)
            for place, message in sent.typed.faults.items()
            if place not in shown
        ),
        event_id=event_id,
        unit=tuple(_asked(speech, guide, sent.typed, _UNIT)),
        power=tuple(_asked(speech, guide, sent.typed, _POWER)),
        furnaces=tuple(_furnace(speech, guide, sent, n) for n in range(1, sent.furnaces + 1)),
        design=tuple(_asked(speech, guide, sent.typed, _DESIGN)),
        may_add=sent.furnaces < MOST_FURNACES,
    )


def places(furnaces: int) -> Iterator[str]:
    """The name of every field of the form: its place in the job."""
    yield from (place for place, _ in (*_UNIT, *_POWER, *_DESIGN))
    for n in range(1, furnaces + 1):
        yield from (place.format(n=n) for place, _ in _FURNACE)


def _furnace(speech: Speech, guide: Guide, sent: Submitted, number: int) -> FurnaceView:
    places = tuple((place.format(n=number), due) for place, due in _FURNACE)
    return FurnaceView(
        number=number,
        title=speech.word("group:furnace", n=number),
        fields=tuple(_asked(speech, guide, sent.typed, places)),
        leading=sent.typed.value("leading", "1") == str(number),
    )


def _asked(
    speech: Speech, guide: Guide, typed: Typed, places: Sequence[tuple[str, bool]]
) -> Iterator[Asked]:
    for place, due in places:
        at = guide.at(tuple(int(step) if step.isdigit() else step for step in place.split(".")))
        name = ".".join(step for step in place.split(".") if not step.isdigit())
        ways = "" if at.words else ", ".join(way.strip('"') for way in at.ways[:2])
        asked = Field(
            name=place,
            label=speech.word(f"plate:{name}"),
            value=typed.value(place),
            hint=speech.word("hint:such-as", ways=ways) if ways else "",
            fault=_fault(speech, typed, place, ways),
        )
        flag = place in _FLAGS
        yield Asked(asked, () if flag else _words(speech, at.words, asked, due), flag, due)


def _fault(speech: Speech, typed: Typed, place: str, ways: str) -> str:
    """What is wrong with a field; a blank is told in the form's own words, not in the file's."""
    fault = typed.faults.get(place, "")
    if not fault or typed.value(place):
        return fault
    return speech.word("plate:missing", ways=ways) if ways else speech.word("plate:missing-choice")


def _words(speech: Speech, words: Sequence[object], asked: Field, due: bool) -> tuple[Option, ...]:
    if not words:
        return ()
    pairs = [(str(word), str(word)) for word in words]
    blank = [("", speech.word("plate:choose" if due else "plate:default"))]
    return options([*blank, *pairs], asked.value)
