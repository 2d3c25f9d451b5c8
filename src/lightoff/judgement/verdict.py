"""The short answer over all required rows."""

from collections.abc import Iterable

from lightoff.judgement.answer import Row, Verdict

_OPEN = ("undecided", "not measured", "deferred")


def verdict(rows: Iterable[Row]) -> Verdict:
    """One of four, worst first; a note never blocks."""
    required = [row for row in rows if row.required and row.severity != "note"]
    if any(row.severity == "stop" and row.decision == "does not conform" for row in required):
        return "not to be left running"
    if any(row.severity == "stop" and is_open(row) for row in required):
        return "not ready"
    if any(row.decision == "does not conform" for row in required):
        return "not ready"
    if any(is_open(row) for row in required):
        return "ready, undecided points"
    return "ready"


def is_open(row: Row) -> bool:
    """Whether a row still waits: for a measurement, a finer gauge, or to be taken again."""
    return row.decision in _OPEN or row.stale
