"""The page of one calculation: the answer, the form, the notes, the picture, the working."""

from collections.abc import Mapping
from dataclasses import dataclass

from lightoff.calculations import Input
from lightoff.quantity import printed_unit
from lightoff.surfaces.calculating import Fault, Sheet, example, filled
from lightoff.surfaces.calculating.sheet import InputShown
from lightoff.surfaces.web.contexts.asked import UNIT, Asked, units_beside
from lightoff.surfaces.web.contexts.calculations import calculation_url, list_url
from lightoff.surfaces.web.contexts.fields import Option, options
from lightoff.surfaces.web.contexts.shell import Link, Shell, outside
from lightoff.surfaces.web.contexts.worked import Worked, worked
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.bound import NO_BREAK, bound

PDF = ".pdf"


@dataclass(frozen=True)
class Entry:
    """One thing to type.

    `instead` is what is assumed where it is left blank, in the usual unit. Beside it stand `units`
    to choose from; what may only be a word has `choices`.
    """

    name: str
    label: str
    value: str
    many: bool
    instead: str
    fault: str
    units_name: str
    units: tuple[Option, ...]
    choices: tuple[Option, ...]


@dataclass(frozen=True)
class Entries:
    """Some of the inputs, under one title."""

    title: str
    entries: tuple[Entry, ...]


@dataclass(frozen=True)
class CalculationPage:
    """Everything on the page. `waiting` says what an answer waits for, where there is none.

    `due` are the inputs nothing can be said without, `more` those that have a default or may be
    left out, in groups. `link` carries what was typed, `paper` leads to the same on paper.
    """

    shell: Shell
    back: Link
    title: str
    about: str
    action: str
    link: str
    systems: tuple[Option, ...]
    due: tuple[Entry, ...]
    more: tuple[Entries, ...]
    example: str
    clear: str
    paper: str
    waiting: str
    faulty: bool
    worked: Worked | None


def calculation_page(asked: Asked, speech: Speech, *, sent: bool) -> CalculationPage:
    """The page for what was typed; a field left blank is a fault only in a form that was `sent`."""
    name, typed = asked.calculation.name, asked.typed
    sheet = filled(asked.calculation, typed, speech)
    inputs = asked.calculation.inputs
    blank_is_fault = sent and bool(typed)
    entries = {
        each: _entry(each, shown, asked, speech, blank_is_fault=blank_is_fault)
        for each, shown in zip(inputs, sheet.inputs, strict=True)
    }
    tried = example(name)
    return CalculationPage(
        shell=outside(speech, sheet.title, "calculation"),
        back=Link(speech.word("nav:calculations"), list_url(speech)),
        title=sheet.title,
        about=sheet.about,
        action=f"/calc/{name}",
        link=calculation_url(name, typed, speech),
        systems=options(((s, speech.word(f"units:{s}")) for s in ("us", "si")), speech.system),
        due=tuple(entries[each] for each in inputs if each.required),
        more=_groups({each: entry for each, entry in entries.items() if not each.required}, speech),
        example=calculation_url(name, tried, speech) if tried else "",
        clear=calculation_url(name, {}, speech) if typed else "",
        paper=calculation_url(name, typed, speech, ending=PDF) if sheet.results else "",
        waiting=_waiting(sheet, speech),
        faulty=bool(_wrong(sheet)),
        worked=worked(sheet, speech),
    )


def _groups(entries: Mapping[Input, Entry], speech: Speech) -> tuple[Entries, ...]:
    """The entries by group, in the order of reading."""
    groups = dict.fromkeys(each.group for each in entries)
    return tuple(
        Entries(
            speech.word(f"calc-group:{group}" if group else "calc-form:more"),
            tuple(entry for each, entry in entries.items() if each.group == group),
        )
        for group in groups
    )


def _entry(
    asked: Input, shown: InputShown, whole: Asked, speech: Speech, *, blank_is_fault: bool
) -> Entry:
    value, unit = whole.parts(asked)
    units = () if asked.choices else units_beside(asked, speech.system, unit)
    return Entry(
        name=asked.name,
        label=shown.label,
        value=value,
        many=asked.many,
        instead=shown.default.partition(NO_BREAK)[0],
        fault=bound(shown.fault) if shown.typed or blank_is_fault else "",
        units_name=f"{asked.name}{UNIT}",
        units=options(((u, printed_unit(u)) for u in units if u != "1"), unit),
        choices=options(_words(shown, speech), shown.si if value and shown.si else value),
    )


def _words(shown: InputShown, speech: Speech) -> list[tuple[str, str]]:
    """The words an input may be; what is left out has the first line."""
    if not shown.choices:
        return []
    blank = speech.word("calc-form:assumed", value=shown.default) if shown.default else "–"
    return [("", blank), *((choice.word, choice.label) for choice in shown.choices)]


def _waiting(sheet: Sheet, speech: Speech) -> str:
    """What an answer waits for: what is wrong with what was typed, else what is still blank."""
    if sheet.results:
        return ""
    if wrong := _wrong(sheet):
        whole = [fault.message for fault in wrong if not fault.place]
        return bound(whole[0]) if whole else speech.word("calc-form:wrong")
    blank = [each for each in sheet.inputs if each.fault]
    if all(each.required for each in blank):
        labels = [_in_a_sentence(each.label) for each in blank]
        return speech.word("calc-form:blank", inputs=labels)
    first = next(each for each in blank if not each.required)
    return f"{first.label}: {bound(first.fault)}."


def _wrong(sheet: Sheet) -> list[Fault]:
    """What is wrong with what was typed; what is only missing is not wrong yet."""
    typed = {each.name for each in sheet.inputs if each.typed}
    return [fault for fault in sheet.faults if fault.place in typed or not fault.place]


def _in_a_sentence(label: str) -> str:
    """A label short enough for a list: without what follows its comma, and without its capital.

    >>> _in_a_sentence("Dial, volume of one turn"), _in_a_sentence("CO, as read")
    ('dial', 'CO')
    """
    short = label.partition(",")[0]
    return short[0].lower() + short[1:] if short[1:2].islower() else short
