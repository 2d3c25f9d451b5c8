"""The page that begins a visit."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import get_args

from lightoff.judgement.required import SYMPTOMS
from lightoff.machine import Machine
from lightoff.machine.visit import Purpose
from lightoff.surfaces.web.contexts.fields import Field, Option, Typed, field_of, options
from lightoff.surfaces.web.contexts.shell import Shell, around_unit, unit_url
from lightoff.surfaces.words import Speech


@dataclass(frozen=True)
class OpeningPage:
    """Everything on the page."""

    shell: Shell
    sentence: str
    hint: str
    action: str
    event_id: str
    purposes: tuple[Option, ...]
    fields: tuple[Field, ...]
    symptoms: tuple[Option, ...]
    faults: tuple[str, ...]


def opening_page(
    stream: str, machine: Machine, visits: Sequence[object], speech: Speech, typed: Typed,
    event_id: str,
) -> OpeningPage:  # fmt: skip
    """The form for the next visit to a unit."""
    names = ("by", "licence", "date")
    first = "first" if not visits else "next"
    purpose = typed.value("purpose", "start-up" if not visits else "service")
    pairs = [("", speech.word("symptom:none")), *((s, s) for s in SYMPTOMS)]
    title = speech.word(f"opening:{first}")
    return OpeningPage(
        shell=around_unit(speech, machine, stream, len(visits) or None, "visit", title),
        sentence=title,
        hint=speech.word(f"opening:{first}:hint"),
        action=f"{unit_url(stream)}/visits",
        event_id=event_id,
        purposes=options(((p, speech.word(f"purpose:{p}")) for p in get_args(Purpose)), purpose),
        fields=tuple(field_of(name, speech, typed) for name in names),
        symptoms=options(pairs, typed.value("symptom")),
        faults=typed.besides(*names),
    )
