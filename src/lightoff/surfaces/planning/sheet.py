"""The plan of a visit in words: one sheet, the same for every surface."""

from dataclasses import dataclass

from lightoff.judgement.plan import Plan
from lightoff.machine import Machine
from lightoff.surfaces.planning.gear import (
    GearShown,
    gear_shown,
    lacking,
    method_shown,
    too_coarse,
)
from lightoff.surfaces.planning.reads import GroupShown, reads_shown
from lightoff.surfaces.planning.rows import use_row
from lightoff.surfaces.planning.ways import NOWHERE, Ways
from lightoff.surfaces.planning.weather import OUTDOORS
from lightoff.surfaces.planning.work import StepShown, steps_shown
from lightoff.surfaces.words import Speech


@dataclass(frozen=True)
class Tally:
    """How many tasks stand so."""

    number: int
    word: str


@dataclass(frozen=True)
class PlanSheet:
    """Everything a plan says.

    `sentence` is the short answer to what has to be carried, `nothing` what stands where no task
    is open.
    """

    sentence: str
    tallies: tuple[Tally, ...]
    time: str
    weather: str
    gear: tuple[GearShown, ...]
    notes: tuple[str, ...]
    ready: tuple[StepShown, ...]
    waiting: tuple[StepShown, ...]
    nothing: str
    reads: tuple[GroupShown, ...]


def plan_sheet(plan: Plan, machine: Machine, speech: Speech, ways: Ways = NOWHERE) -> PlanSheet:
    """A plan in the reader's words and units; `ways` lead to where things are recorded."""
    return PlanSheet(
        sentence=_sentence(plan, speech),
        tallies=_tallies(plan, speech),
        time=_time(plan, speech),
        weather=_weather(plan, speech),
        gear=gear_shown(plan, speech),
        notes=(*map(speech.say, plan.remarks), *method_shown(plan, speech)),
        ready=steps_shown(plan.tasks, "ready", speech, ways),
        waiting=steps_shown(plan.tasks, "waiting", speech, ways),
        nothing=_nothing(plan, speech),
        reads=reads_shown(plan, machine, speech, ways),
    )


def _nothing(plan: Plan, speech: Speech) -> str:
    """What stands where no task is left."""
    if not plan.tasks:
        return speech.word("plan:nothing-asked")
    if plan.unsettled:
        return speech.word("plan:done-unsettled", count=plan.unsettled)
    return speech.word("plan:all-done")


def _sentence(plan: Plan, speech: Speech) -> str:
    """What is not at hand, else what is too coarse, else that all is well."""
    if not plan.tasks:
        return speech.word("plan:nothing-asked")
    if any(remark.message == "plan-no-balance" for remark in plan.remarks):
        return speech.word("plan:no-balance")
    if plan.carry and not any(row.at_hand for row in plan.carry):
        return speech.word("plan:nothing-declared")
    kinds = [speech.word(f"instrument-kind:{row.kind}") for row in lacking(plan) if row.points]
    if kinds:
        return speech.word("plan:carry-more", kinds=_and([_inside(kind) for kind in kinds]))
    instruments = dict.fromkeys(use.instrument for use in plan.gauges)
    coarse = [use for name in instruments for use in too_coarse(plan, name) if use.finest]
    if len(coarse) == 1:
        name = _inside(speech.row(use_row(coarse[0])))
        return speech.word("plan:one-coarse", instrument=coarse[0].instrument, name=name)
    if coarse:
        return speech.word("plan:many-coarse", count=len(coarse))
    simply = all(use.fitness != "method too coarse" for use in plan.gauges if use.finest)
    return speech.word("plan:all-fine" if simply else "plan:all-but-method")


def _tallies(plan: Plan, speech: Speech) -> tuple[Tally, ...]:
    states = [each.state for each in plan.tasks]
    return tuple(
        Tally(states.count(state), speech.word(f"plan:count:{state}"))
        for state in ("done", "ready", "waiting")
    )


def _time(plan: Plan, speech: Speech) -> str:
    """What is left, to five minutes."""
    left = 5 * round(plan.minutes / 5)
    if not plan.minutes:
        return ""
    hours, minutes = divmod(max(left, 5), 60)
    if hours:
        return speech.word("plan:hours", hours=hours, minutes=f"{minutes:02d}")
    return speech.word("plan:left", minutes=minutes)


def _weather(plan: Plan, speech: Speech) -> str:
    if OUTDOORS not in plan.weather:
        return speech.word("plan:any-weather")
    return speech.word("plan:outdoors", t=speech.quantity(plan.weather[OUTDOORS], "temperature"))


def _inside(name: str) -> str:
    """A name in the middle of a sentence."""
    return name if name[:2].isupper() else name[0].lower() + name[1:]


def _and(names: list[str]) -> str:
    return " and ".join((", ".join(names[:-1]), names[-1])) if len(names) > 1 else names[0]
