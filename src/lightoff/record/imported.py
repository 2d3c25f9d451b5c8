"""A job's tree taken apart into what happened; `fold` puts it together again.

Only what has the form of a job is taken apart. The rest stays whole, so that the job reader can
say what is wrong with it.
"""

from collections.abc import Iterator
from typing import Any, TypeGuard

from lightoff.job.job import Tree
from lightoff.record.events import CLOSED, DECLARED, NOTED, OPENED

Fact = tuple[str, Tree]  # an event's name and body


def job_facts(tree: Tree) -> Iterator[Fact]:
    """A unit declared, and all its visits."""
    visits = tree.get("visit")
    if not _is_tables(visits):
        yield DECLARED, {"job": tree}
        return
    yield DECLARED, {"job": {key: part for key, part in tree.items() if key != "visit"}}
    for number, visit in enumerate(visits, start=1):
        yield from visit_facts(number, visit)


def visit_facts(number: int, tree: Tree) -> Iterator[Fact]:
    """A visit opened, what was written into it, and its closing where it tells how it was left."""
    tables = [table for table in NOTED if isinstance(tree.get(table), list) and tree[table]]
    closing = {key: tree[key] for key in ("told", "left") if key in tree} if "left" in tree else {}
    fields = {key: part for key, part in tree.items() if key not in (*tables, *closing)}
    yield OPENED, {"visit": number, "entry": fields}
    for table in tables:
        for entry in tree[table]:
            yield NOTED[table], {"visit": number, "entry": entry}
    if closing:
        yield CLOSED, {"visit": number, "entry": closing}


def _is_tables(value: Any) -> TypeGuard[list[Tree]]:
    return isinstance(value, list) and bool(value) and all(isinstance(row, dict) for row in value)
