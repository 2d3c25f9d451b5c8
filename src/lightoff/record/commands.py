"""What a person asks the record to write. Trees are those of the job file."""

from dataclasses import dataclass

from lightoff.job.job import Tree


@dataclass(frozen=True)
class DeclareUnit:
    """Begin a record with a job: the unit, and every visit the job already holds."""

    tree: Tree


@dataclass(frozen=True)
class CorrectPlate:
    """Put a whole declaration in place of the one before: the job's tree without its visits."""

    tree: Tree
    reason: str = ""  # an instrument added needs none


@dataclass(frozen=True)
class OpenVisit:
    """Begin the next visit: its own fields, and every entry it already holds."""

    tree: Tree


@dataclass(frozen=True)
class Note:
    """Write one entry of `kind`, a table of the visit such as `reading` or `trip`."""

    visit: int
    kind: str
    entry: Tree


@dataclass(frozen=True)
class Correct:
    """Put an entry right that was written down wrongly; the first stays in the record.

    This is not taking a reading again. A visit's opening and its closing are entries too.
    """

    entry_id: str
    now: Tree
    reason: str


@dataclass(frozen=True)
class Withdraw:
    """Take back an entry that should not be there; withdrawing a closing opens the visit again."""

    entry_id: str
    reason: str


@dataclass(frozen=True)
class CloseVisit:
    """End a visit: how the unit was left, and who was told."""

    visit: int
    left: str
    told: str | None = None


Command = DeclareUnit | CorrectPlate | OpenVisit | Note | Correct | Withdraw | CloseVisit
