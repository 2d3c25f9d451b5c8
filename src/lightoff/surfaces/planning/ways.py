"""Where things are recorded: addresses on a page, nowhere on paper."""

from collections.abc import Callable
from dataclasses import dataclass

from lightoff.judgement.tasks import Record


@dataclass(frozen=True)
class Ways:
    """The address of a point in a run, of the model's number of it, and of what else a task leaves
    on record.
    """

    point: Callable[[str, str], str]
    model: Callable[[str, str], str]
    proof: Callable[[Record], str]

    def to(self, record: Record) -> str:
        """Where a record is made; one that any run will do for, in the first that is taken."""
        if record.kind != "reading":
            return self.proof(record)
        return self.point(record.names[0], (*record.runs, "fan")[0])


NOWHERE = Ways(point=lambda _point, _run: "", model=lambda _point, _run: "", proof=lambda _: "")
