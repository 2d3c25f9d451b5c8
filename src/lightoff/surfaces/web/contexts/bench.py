"""What the pages of one visit are made from: the unit, the visit, its answer, and the reader."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from lightoff.judgement import Assessment, Fits, Row, assess
from lightoff.judgement.tasks.resting import Needs
from lightoff.machine import Machine, Visit, canonical
from lightoff.record import Entry
from lightoff.surfaces.web.contexts.shell import unit_url
from lightoff.surfaces.words.bound import PageSpeech


@dataclass(frozen=True)
class Bench:
    """One visit, judged. `entries` are the record's, by place; `needs` which points a row wants."""

    stream: str
    machine: Machine
    visit: Visit
    answer: Assessment
    speech: PageSpeech
    needs: Needs
    entries: Mapping[str, Entry]
    withdrawn: tuple[Entry, ...]
    visits: int
    closed: bool
    before: Visit | None = None
    fits: Fits | None = None

    @cached_property
    def whole(self) -> Assessment:
        """The answer with everything in it: it takes longer, and most pages show less."""
        return assess(self.machine, self.visit, before=self.before, fits=self.fits)

    @property
    def base(self) -> str:
        """The address of the visit."""
        return unit_url(self.stream, self.visit.number)

    def needed(self, row: Row) -> tuple[str, ...]:
        """The points whose reading makes a row."""
        return self.needs.get((row.id, row.point or ""), ())

    def resting_on(self, point: str, run: str) -> Iterator[Row]:
        """The rows for which a reading of this point in this run counts."""
        return (row for row in self.answer.targets if row.run == run and point in self.needed(row))

    def unread(self, row: Row) -> str:
        """The first point a row still wants a reading of; nothing where it waits for none."""
        if row.decision != "not measured" or row.run is None:
            return ""
        read = {point.id for point in self.answer.points if point.run == row.run}
        return next((need for need in self.needed(row) if need not in read), "")

    def canonical(self, run: str) -> str:
        """The name a run is answered under."""
        return canonical(self.machine, run)

    def point_url(self, point: str, run: str) -> str:
        """The address of a point in a run."""
        return f"{self.base}/points/{point}?run={run}"
