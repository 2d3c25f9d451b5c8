"""What every page needs at hand: the record, answers already worked out, the clock, the words."""

from collections import OrderedDict
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime

from starlette.exceptions import HTTPException

from lightoff.job import Job, parse_tree
from lightoff.job.job import Tree
from lightoff.judgement import Fits, assess, quick_fits
from lightoff.judgement.tasks.resting import needs_of
from lightoff.record import Register, State, UnknownUnitError
from lightoff.record.commands import Command
from lightoff.record.fold import OPENING
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.units import Standing
from lightoff.surfaces.web.pages import Pages
from lightoff.surfaces.words.bound import PageSpeech

MOST_KEPT = 256  # answers of as many visits


Key = tuple[str, int, int]  # stream, version, visit


@dataclass(frozen=True)
class Judged:
    """One visit with its answer, and the record it was judged from."""

    bench: Bench
    state: State


@dataclass
class Answers:
    """Visits judged, by their key: what has not changed is not judged again."""

    most: int = MOST_KEPT
    _kept: OrderedDict[Key, Judged] = field(default_factory=OrderedDict)

    def find(self, key: Key) -> Judged | None:
        if key in self._kept:
            self._kept.move_to_end(key)
        return self._kept.get(key)

    def keep(self, key: Key, judged: Judged) -> None:
        self._kept[key] = judged
        while len(self._kept) > self.most:
            self._kept.popitem(last=False)


@dataclass(frozen=True)
class Desk:
    """The app's own things, handed to every route. `by` signs where a form names nobody."""

    register: Register
    pages: Pages
    now: Callable[[], datetime]
    new_id: Callable[[], str]
    by: str
    answers: Answers = field(default_factory=Answers)
    fits: Fits = field(default_factory=quick_fits)

    @property
    def speech(self) -> PageSpeech:
        """How the pages of no unit speak."""
        return PageSpeech()

    def standings(self) -> list[Standing]:
        """Every unit, with its latest visit judged."""
        return [
            Standing(
                unit.stream,
                unit.tag,
                unit.serves or "",
                self._judged(unit.stream, unit.version, unit.visits).bench if unit.visits else None,
            )
            for unit in self.register.units()
        ]

    def bench(self, stream: str, visit: int) -> Bench:
        """One visit, judged; a 404 where there is none."""
        return self.judged(stream, visit).bench

    def judged(self, stream: str, visit: int) -> Judged:
        """The same, with the record it was judged from."""
        unit = next((u for u in self.register.units() if u.stream == stream), None)
        if unit is None or not 1 <= visit <= unit.visits:
            raise HTTPException(404)
        return self._judged(stream, unit.version, visit)

    def _judged(self, stream: str, version: int, visit: int) -> Judged:
        key = (stream, version, visit)
        found = self.answers.find(key)
        if found is None:
            state = self.state(stream)
            job = parse_tree(state.tree)
            found = Judged(bench_of(stream, state, job, visit, self.fits), state)
            self.answers.keep(key, found)
        return found

    def tried(self, stream: str, visit: int, entry: Tree) -> Bench:
        """The visit as it would be with one more reading; a `JobError` where it cannot be."""
        state = self.judged(stream, visit).state
        visits = [dict(each) for each in state.tree["visit"]]
        now = visits[visit - 1]
        now["reading"] = [*now.get("reading", ()), entry]
        job = parse_tree({**state.tree, "visit": visits})
        return bench_of(stream, state, job, visit, self.fits)

    def state(self, stream: str) -> State:
        """What the record says of a unit; a 404 where it says nothing."""
        try:
            return self.register.state(stream)
        except UnknownUnitError:
            raise HTTPException(404) from None

    def add(self, tree: Tree, event_id: str) -> str:
        """Begin the record of a unit; the answer is its stream."""
        if event_id and any(unit.stream == event_id for unit in self.register.units()):
            return event_id  # a form sent twice
        return self.register.add_job(tree, by=self.by, event_id=event_id or None)

    def write(self, stream: str, command: Command, event_id: str, by: str = "") -> None:
        """Write a command once, however often its form is sent."""
        if event_id and self._is_kept(stream, event_id):
            return
        self.register.do(stream, command, by=by or self.by, event_id=event_id or None)

    def _is_kept(self, stream: str, event_id: str) -> bool:
        # a form sent twice bears another time; its id tells that it is the same
        return any(link.event.id == event_id for link in self.register.history(stream))


def bench_of(stream: str, state: State, job: Job, number: int, fits: Fits) -> Bench:
    """One visit of a job with its answer and its entries in the record."""
    machine, visit = job.machine(), job.visit(number)
    before = job.visit(number - 1) if number > 1 else None
    mine = [entry for entry in state.entries if entry.visit == number]
    return Bench(
        stream=stream,
        machine=machine,
        visit=visit,
        answer=assess(machine, visit, before=before, whole=False, fits=fits),
        speech=PageSpeech(job.display.units),
        needs=needs_of(machine),
        entries=state.places,
        withdrawn=tuple(e for e in mine if e.withdrawn and e.kind != OPENING),
        visits=state.visits,
        closed=state.closing(number) is not None,
        before=before,
        fits=fits,
    )
