"""Tasks in words: what is done in each, what to mind, what it leaves on record."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from lightoff.judgement.tasks import Progress, Record, Task
from lightoff.surfaces.planning.ways import Ways
from lightoff.surfaces.words import Speech

# steps under the stopwatch are known by the target they are timed for
_TIMED = {"flame failure": "flame failure time"}
_TIGHT = {"joint": "tightness: joints", "decay": "tightness: decay"}


@dataclass(frozen=True)
class RecordShown:
    """Something to record, and where that is done."""

    text: str
    href: str


@dataclass(frozen=True)
class TaskShown:
    """One task. `records` is what it still has to leave on record, `wrong` what came out wrong."""

    anchor: str
    name: str
    about: str
    minutes: str
    licence: str
    instruments: str
    cautions: tuple[str, ...]
    records: tuple[RecordShown, ...]
    wrong: tuple[RecordShown, ...]
    waits_for: tuple["Wait", ...]


@dataclass(frozen=True)
class Wait:
    """A task that must come first."""

    name: str
    anchor: str


@dataclass(frozen=True)
class StepShown:
    """The tasks of one step of the order of work."""

    number: int
    title: str
    tasks: tuple[TaskShown, ...]


def steps_shown(
    told: Iterable[Progress], state: str, speech: Speech, ways: Ways
) -> tuple[StepShown, ...]:
    """The tasks that stand so, by step."""
    every = list(told)
    order = {each.task.id: each.task for each in every}
    by_step: dict[int, list[TaskShown]] = {}
    for each in every:
        if each.state == state:
            by_step.setdefault(each.task.step, []).append(_shown(each, order, speech, ways))
    return tuple(
        StepShown(number, speech.word(f"task-step:{number}"), tuple(there))
        for number, there in by_step.items()
    )


def _shown(told: Progress, order: Mapping[str, Task], speech: Speech, ways: Ways) -> TaskShown:
    task = told.task
    name = speech.word(f"task:{task.name}")
    right = (record for record in told.missing if record not in told.wrong)
    asked = _records(right, speech, ways)
    return TaskShown(
        anchor=anchor(task.id),
        name=task_name(task, speech),
        about=speech.word(f"task-about:{task.name}"),
        minutes=speech.word("plan:minutes", minutes=f"{task.minutes:.0f}"),
        licence=speech.word(f"licence:{task.licence}") if task.licence else "",
        instruments=", ".join(instrument_words(task.instruments, speech)),
        cautions=tuple(speech.word(caution) for caution in task.cautions),
        records=tuple(each for each in asked if each.href or each.text != name),
        wrong=_records(told.wrong, speech, ways),
        waits_for=tuple(Wait(task_name(order[id_], speech), anchor(id_)) for id_ in told.waits_for),
    )


def task_name(task: Task, speech: Speech) -> str:
    """A task by name, with its furnace."""
    name = speech.word(f"task:{task.name}")
    if task.furnace is None:
        return name
    return speech.word("task:of-furnace", name=name, n=task.furnace)


def anchor(task_id: str) -> str:
    """A name for a task within a page."""
    return "task-" + "".join(c if c.isalnum() else "-" for c in task_id)


def instrument_words(kinds: Iterable[str], speech: Speech) -> Iterator[str]:
    """Kinds of instrument in the middle of a sentence."""
    for kind in kinds:
        name = speech.word(f"instrument-kind:{kind}")
        yield name[0].lower() + name[1:]


def _records(records: Iterable[Record], speech: Speech, ways: Ways) -> tuple[RecordShown, ...]:
    """Each by its name, once."""
    found: dict[str, RecordShown] = {}
    for record in records:
        text = record_words(record, speech)
        found.setdefault(text, RecordShown(text, ways.to(record)))
    return tuple(found.values())


def record_words(record: Record, speech: Speech) -> str:
    """What is left on record, in words."""
    name = (*record.names, "")[0]
    if record.kind == "reading":
        run = speech.run(record.runs[0]) if record.runs else ""
        point = speech.point(name)
        return speech.word("record:in-run", name=point, run=run) if run else point
    if record.kind == "handover":
        return speech.word(f"record:{name}")
    if record.kind == "step":
        return speech.target(_TIMED.get(name, name))
    return speech.target(_TIGHT.get(record.kind) or f"{record.kind}: {name}")
