"""Faults: what is wrong with a job, where it stands, and what would be right."""

from collections.abc import Sequence
from dataclasses import dataclass

from lightoff.quantity import LightoffError

Path = tuple[str | int, ...]  # keys, and list positions counted from 1

MOST_LISTED = 200
LONGEST_STEP = 60  # characters of one key in a place


@dataclass(frozen=True)
class Fault:
    """One fault: its place in the job, its line in the file where there is one, a sentence."""

    place: str
    line: int | None
    message: str

    def __str__(self) -> str:
        where = self.place if self.line is None else f"{self.place} (line {self.line})"
        return f"{where}: {self.message}"


class JobError(LightoffError):
    """A job that cannot be read: every fault at once, one a line.

    At most `MOST_LISTED` faults are kept; `more` counts the rest.
    """

    def __init__(self, faults: Sequence[Fault], more: int = 0) -> None:
        self.faults = tuple(faults[:MOST_LISTED])
        self.more = more + len(faults) - len(self.faults)
        rest = [f"and {self.more} more"] if self.more else []
        super().__init__("\n".join([*map(str, self.faults), *rest]))


def whole(message: str, line: int | None = None, place: str = "job") -> JobError:
    """The error of a text that is faulty as a whole."""
    return JobError([Fault(place, line, one_line(message))])


def dotted(path: Path) -> str:
    """A path as it is shown: `visit.1.reading.12.value`; the tree itself is `job`."""
    return ".".join(one_line(str(step)[:LONGEST_STEP]) for step in path) or "job"


def one_line(text: str) -> str:
    """Text fit for one line of any terminal: no line breaks, no control characters.

    >>> one_line("3.5\\n inwc\\x07")
    '3.5 inwc'
    """
    return " ".join("".join(char if char.isprintable() else " " for char in text).split())
