"""The library: load a job, judge or plan a visit, put the answer into words.

>>> import lightoff
>>> job = lightoff.load("examples/one-furnace-propane.toml")
>>> answer = lightoff.assess(job)
>>> answer.verdict
'ready'
>>> print(lightoff.render(answer).splitlines()[0])
MAU-1, visit 1: Ready
"""

import datetime as dt
from collections.abc import Mapping, Sequence

from lightoff.job import Job, JobError, load, loads
from lightoff.judgement import Assessment
from lightoff.judgement import assess as judge
from lightoff.judgement.foretell import OUTDOORS, Foretold, foretell
from lightoff.judgement.plan import Plan
from lightoff.judgement.plan import plan as planned
from lightoff.machine import Machine, Visit, canonical, runs
from lightoff.quantity import LightoffError, System
from lightoff.surfaces.planning import expected_weather
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.plain import as_text

__all__ = ["Job", "JobError", "assess", "load", "loads", "plan", "predict", "render"]


def assess(job: Job, visit: int | None = None, *, whole: bool = True) -> Assessment:
    """Judge one visit of a job, the latest where none is named; see `judgement.assess`."""
    now = job.visit(visit)
    before = job.visit(now.number - 1) if now.number > 1 else None
    return judge(job.machine(), now, before=before, whole=whole)


def plan(
    job: Job,
    visit: int | None = None,
    *,
    on: dt.date | None = None,
    weather: Mapping[str, float] | None = None,
) -> Plan:
    """What one visit takes, the latest where none is named: see `judgement.plan`."""
    return planned(job.machine(), job.visit(visit), on=on, weather=weather)


def predict(
    job: Job, run: str, visit: int | None = None, *, outdoor: str | None = None
) -> Foretold:
    """What every point would show in a run, at an outdoor temperature such as "-10 degF".

    The machine is as the readings of the visit leave it, the latest where none is named; without
    any readings it is as its plate says.
    """
    machine = job.machine()
    day = expected_weather(outdoor).get(OUTDOORS)
    return foretell(machine, visit_of(job, visit), known_run(machine, run), day)


def visit_of(job: Job, number: int | None) -> Visit | None:
    """The visit of that number, the latest where none is named; None of a job without any."""
    return job.visit(number) if job.visits or number is not None else None


def known_run(machine: Machine, run: str) -> str:
    """A run of this unit as the job format names it; `LightoffError` where it has no such."""
    name = canonical(machine, run)
    if name not in runs(machine):
        raise LightoffError(f'"{run}" is not a run of this unit: write {_either(runs(machine))}')
    return name


def _either(names: Sequence[str]) -> str:
    *most, last = names
    return f"{', '.join(most)} or {last}"


def render(answer: Assessment, *, units: System = "us", everything: bool = False) -> str:
    """The answer as plain text of at most 80 columns; `everything` lists what conforms too."""
    return as_text(answer, Speech(units), everything=everything)
