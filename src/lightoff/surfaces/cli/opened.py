"""A number opened in the terminal: what makes it uncertain, and the equations to it."""

from collections.abc import Iterator, Mapping, Sequence

from lightoff.formula import Step
from lightoff.inference.estimate import COVERAGE
from lightoff.job import Job
from lightoff.judgement.answer import BudgetLine
from lightoff.judgement.named import kind_told, model_name
from lightoff.judgement.opened import opened
from lightoff.judgement.together import Together
from lightoff.machine import Visit
from lightoff.quantity import LightoffError
from lightoff.surfaces.calculating import steps_shown
from lightoff.surfaces.calculating.plain import hanging, step_lines
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.budget import parts_shown
from lightoff.surfaces.words.opened import agreed
from lightoff.surfaces.words.plain import Line

SIZE = 18  # columns of a part's size


class NoSuchNumberError(LightoffError):
    """Nothing of that name was read or worked out in the visit."""


def number_lines(
    job: Job,
    model: Together | None,
    visit: Visit | None,
    asked: str,
    run: str,
    day: Mapping[str, float],
) -> Iterator[Line]:
    """A number of the model: its value, what makes it uncertain, and how it comes about."""
    machine, speech, name = job.machine(), Speech(job.display.units), model_name(asked.strip())
    found = opened(machine, model, name, run, day)
    if found is None:
        raise NoSuchNumberError(speech.word("opened:none", asked=asked, run=speech.run(run)))
    kind, expanded = kind_told(name), COVERAGE * found.standard_uncertainty
    shown = speech.parts(found.value, kind, expanded=expanded)
    head = speech.word("answer:name", name=speech.point(name), run=speech.run(run))
    if name == "gas.meter.seconds":
        head = speech.word("opened:turn", name=head)
    spread = f" ± {speech.spread(expanded, kind)}" if expanded > 0 else ""
    yield Line(f"{head}: {shown.number}{spread} {shown.unit}", "verdict")
    yield from budget_lines(found.budget, kind, visit, speech)
    title, said = speech.word("opened:working"), agreed(found.equations, speech)
    yield from working_lines(title, found.equations.steps, speech, said)


def budget_lines(
    budget: Sequence[BudgetLine], kind: str, visit: Visit | None, speech: Speech
) -> Iterator[Line]:
    """The parts of its standard uncertainty, the largest first."""
    if not budget:
        return
    yield Line(f"       {speech.word('budget')}", "note")
    for part in parts_shown(budget, kind, visit, speech):
        text = ", ".join(filter(None, (part.cause, part.of)))
        yield Line(f"{part.text:>{SIZE}}  {text}", "note")


def working_lines(
    title: str, steps: Sequence[Step], speech: Speech, said: str = ""
) -> Iterator[Line]:
    """The equations, each with its numbers; `said` stands before them."""
    if not steps and not said:
        return
    yield Line("", "note")
    yield Line(title, "group")
    yield from hanging(said, "  ") if said else ()
    for place, step in enumerate(steps_shown(steps, speech), start=1):
        yield from step_lines(step, place, speech)
