"""The page of a number of the model: its value, what makes it uncertain, how it comes about."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from lightoff.inference.estimate import COVERAGE
from lightoff.judgement.named import kind_told, model_name
from lightoff.judgement.opened import Opened
from lightoff.machine import Machine, Visit
from lightoff.machine.model.points import topic_of
from lightoff.surfaces.calculating import steps_shown
from lightoff.surfaces.web.contexts.budget import Bar, bars
from lightoff.surfaces.web.contexts.shell import Link, Shell, around_unit, unit_url
from lightoff.surfaces.web.contexts.worked import StepPart, step_part
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.opened import agreed


@dataclass(frozen=True)
class Number:
    """Which number: of a point or derived quantity in a run, by the readings or by the plate.

    `outdoor` is the outdoor temperature as it was typed, where one was.
    """

    point: str
    run: str
    by_readings: bool
    outdoor: str = ""

    @property
    def name(self) -> str:
        """The model's name of it."""
        return model_name(self.point)


@dataclass(frozen=True)
class ModelPage:
    """Everything on the page."""

    shell: Shell
    back: Link
    name: str
    run: str
    ways: tuple[Link, ...]
    number: str
    spread: str
    unit: str
    about: str
    budget: tuple[Bar, ...]
    agreed: str
    steps: tuple[StepPart, ...]


def model_url(stream: str, visit: int | None, number: Number) -> str:
    """The address of the page."""
    asked = {"run": number.run, "by": "readings" if number.by_readings else "plate"}
    if number.outdoor:
        asked["outdoor"] = number.outdoor
    return f"{unit_url(stream, visit)}/model/{number.point}?{urlencode(asked)}"


def has_model(point: str) -> bool:
    """Whether the model knows such a number."""
    return topic_of(model_name(point)) is not None


def model_page(
    machine: Machine, stream: str, visit: Visit | None, asked: Number, found: Opened,
    day: Mapping[str, float], speech: Speech,
) -> ModelPage:  # fmt: skip
    """The page of a number that was found."""
    name, run = speech.point(asked.name), speech.run(asked.run)
    title = speech.word("answer:name", name=name, run=run)
    number = None if visit is None else visit.number
    kind, expanded = kind_told(asked.name), COVERAGE * found.standard_uncertainty
    shown = speech.parts(found.value, kind, expanded=expanded)
    back = speech.word("visit:number", n=number) if number else speech.word("nav:plan")
    return ModelPage(
        shell=around_unit(speech, machine, stream, number, "", title),
        back=Link(back, unit_url(stream, number) if number else f"{unit_url(stream)}/plan"),
        name=name,
        run=run,
        ways=tuple(_ways(stream, visit, asked, speech)),
        number=shown.number,
        spread=speech.spread(expanded, kind) if expanded else "",
        unit=shown.unit,
        about=_about(asked, day, speech),
        budget=bars(found.budget, found.standard_uncertainty, kind, visit, speech),
        agreed=agreed(found.equations, speech),
        steps=tuple(step_part(each, speech) for each in steps_shown(found.equations.steps, speech)),
    )


def _ways(stream: str, visit: Visit | None, asked: Number, speech: Speech) -> Iterator[Link]:
    """The same number by the readings and by the plate, where there are readings."""
    if visit is None or not visit.readings:
        return
    for by_readings in (True, False):
        other = Number(asked.point, asked.run, by_readings, asked.outdoor)
        word = speech.word("model:by-readings" if by_readings else "model:by-plate")
        yield Link(word, model_url(stream, visit.number, other), by_readings == asked.by_readings)


def _about(asked: Number, day: Mapping[str, float], speech: Speech) -> str:
    """On whose word the number stands, and in what weather."""
    said = speech.word("foretold:read" if asked.by_readings else "foretold:plate")
    outdoor = day.get("air.outdoor.db")
    if outdoor is None:
        return said
    return f"{said} {speech.word('model:outdoor', day=speech.quantity(outdoor, 'temperature'))}"
