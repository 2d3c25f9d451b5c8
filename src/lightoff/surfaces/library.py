"""The library: load a job, judge a visit, put the answer into words.

>>> import lightoff
>>> job = lightoff.load("examples/one-furnace-propane.toml")
>>> answer = lightoff.assess(job)
>>> answer.verdict
'ready'
>>> print(lightoff.render(answer).splitlines()[0])
MAU-1, visit 1: Ready
"""

from lightoff.job import Job, JobError, load, loads
from lightoff.judgement import Assessment
from lightoff.judgement import assess as judge
from lightoff.quantity import System
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.plain import as_text

__all__ = ["Job", "JobError", "assess", "load", "loads", "render"]


def assess(job: Job, visit: int | None = None) -> Assessment:
    """Judge one visit of a job, the latest where none is named."""
    now = job.visit(visit)
    before = job.visit(now.number - 1) if now.number > 1 else None
    return judge(job.machine(), now, before=before)


def render(answer: Assessment, *, units: System = "us", everything: bool = False) -> str:
    """The answer as plain text of at most 80 columns; `everything` lists what conforms too."""
    return as_text(answer, Speech(units), everything=everything)
