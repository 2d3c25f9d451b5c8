"""Readings that came apart from the job, put into one of its visits."""

from collections.abc import Sequence

from lightoff.job.job import Job, Tree
from lightoff.job.parse import parse_tree
from lightoff.quantity import LightoffError


def with_readings(job: Job, readings: Sequence[Tree], visit: int | None = None) -> Job:
    """The job with these readings after those of a visit, the latest where none is named.

    A job without a visit gets its first. Faults that only the unit can tell are told now.
    """
    visits = [dict(each) for each in job.tree.get("visit", [])] or [{}]
    number = visit or len(visits)
    if number > len(visits):
        raise LightoffError(f"there is no visit {number} to add readings to")
    chosen = visits[number - 1]
    chosen["reading"] = [*chosen.get("reading", []), *readings]
    return parse_tree({**job.tree, "visit": visits})
