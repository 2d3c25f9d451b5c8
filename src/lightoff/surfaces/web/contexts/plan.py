"""The page of a plan: what to carry, what is ready, what waits, what it should read."""

from collections.abc import Callable
from dataclasses import dataclass, replace

from lightoff.judgement.plan import Plan
from lightoff.judgement.tasks import Record
from lightoff.judgement.tasks.resting import rests_on
from lightoff.machine import Machine, Visit
from lightoff.surfaces.planning import OUTDOORS, PlanSheet, plan_sheet
from lightoff.surfaces.planning.ways import NOWHERE, Ways
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.fields import Field, Typed, field_of
from lightoff.surfaces.web.contexts.model import Number, model_url
from lightoff.surfaces.web.contexts.rows import anchor
from lightoff.surfaces.web.contexts.shell import Link, Shell, around_unit, plan_url
from lightoff.surfaces.words.bound import PageSpeech

SECTIONS = ("carry", "ready", "waiting", "reads")


@dataclass(frozen=True)
class PlanPage:
    """Everything on the page. `outdoor` asks for the day's weather, until it is read."""

    shell: Shell
    about: str
    sheet: PlanSheet
    sections: tuple[Link, ...]
    action: str
    outdoor: Field | None


@dataclass(frozen=True)
class Planned:
    """A plan, and what it was made for; `bench` where the visit is on record already."""

    plan: Plan
    machine: Machine
    visit: Visit
    stream: str
    bench: Bench | None


def plan_page(made: Planned, speech: PageSpeech, typed: Typed) -> PlanPage:
    """The page of a plan."""
    word = speech.word
    number = None if made.bench is None else made.visit.number
    title = word("plan:title", n=made.visit.number)
    purpose = word(f"purpose:{made.visit.purpose}")
    is_read = any(reading.point == OUTDOORS for reading in made.visit.readings)
    return PlanPage(
        shell=around_unit(speech, made.machine, made.stream, number, "plan", title),
        about=word("plan:about", purpose=purpose, n=made.visit.number),
        sheet=plan_sheet(made.plan, made.machine, speech, _ways(made, typed.value("outdoor"))),
        sections=tuple(Link(word(f"plan:{name}"), f"#{name}") for name in SECTIONS),
        action=plan_url(made.stream, number),
        outdoor=None if is_read else _outdoor(speech, typed),
    )


def _outdoor(speech: PageSpeech, typed: Typed) -> Field:
    return field_of("outdoor", speech, typed, kind="temperature", label="plan:outdoor")


def _ways(made: Planned, outdoor: str) -> Ways:
    """To the pages of points, and to the rows of the visit's page where the rest is proven."""
    bench = made.bench

    def model(point: str, run: str) -> str:
        number = None if bench is None else made.visit.number
        return model_url(
            made.stream, number, Number(point, run, by_readings=False, outdoor=outdoor)
        )

    if bench is None or bench.closed:
        return replace(NOWHERE, model=model)
    return Ways(point=bench.point_url, model=model, proof=_proof(bench))


def _proof(bench: Bench) -> Callable[[Record], str]:
    def proof(record: Record) -> str:
        if record.kind == "handover":
            return f"{bench.base}#closing"
        row = next((row for row in bench.answer.targets if rests_on(row, record, {})), None)
        return "" if row is None else f"{bench.base}#{anchor(row)}"

    return proof
