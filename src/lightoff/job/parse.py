"""A plain tree, as TOML or JSON gives it, read as a job."""

from collections.abc import Callable
from functools import cache

from pydantic import ValidationError

from lightoff.job.faults import Path, whole
from lightoff.job.guide import Guide
from lightoff.job.job import Job
from lightoff.job.nearest import shown
from lightoff.job.schema import table_schema
from lightoff.job.scope import Scope
from lightoff.job.sentences import LineOf, job_error
from lightoff.job.table import Table


def parse_tree(tree: object, *, line_of: Callable[[], LineOf] | None = None) -> Job:
    """The job a tree declares; a `JobError` tells every fault at once.

    `line_of` is asked for the lines of the text only when there is something to tell.
    """
    if not isinstance(tree, dict):
        raise whole(f"{shown(tree)} is not a job: a job is a table that begins with format = 1")
    try:
        return Job.model_validate(tree, context=Scope(instruments=[]))
    except ValidationError as error:
        line = line_of() if line_of else _nowhere
        raise job_error(error, guide_to(Job), line=line) from None


@cache
def guide_to(table: type[Table]) -> Guide:
    return Guide(table_schema(table))


def _nowhere(_: Path) -> None:
    return None
