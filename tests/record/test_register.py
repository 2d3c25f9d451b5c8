"""What the surfaces ask of the record."""

import tomllib
from pathlib import Path
from typing import Any
from uuid import UUID

import pytest

from lightoff.judgement import assess
from lightoff.record import (
    Clash,
    CloseVisit,
    CorrectPlate,
    DeclareUnit,
    MemoryStore,
    Note,
    OpenVisit,
    Refused,
    Register,
    Stored,
    TakenError,
    UnknownUnitError,
)
from lightoff.record.register import TRIES
from record.world import ENTRIES, UNIT, numbered, register

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.toml"))
READING = Note(1, "reading", ENTRIES["reading"][0])


class Crowded(MemoryStore):
    """A store in which somebody else writes first, so many times."""

    def __init__(self, others: int) -> None:
        super().__init__()
        self.others = others

    def append(self, stream: str, expected_version: int, events: Any) -> tuple[Stored, ...]:
        if self.others and expected_version:
            self.others -= 1
            plate = CorrectPlate({**UNIT, "site": {"altitude": f"{self.others} ft"}})
            Register(Quiet(self)).do(stream, plate, by="T. Marrow")
        return super().append(stream, expected_version, events)


class Quiet(MemoryStore):
    """The same streams without the crowd."""

    def __init__(self, crowded: Crowded) -> None:
        vars(self).update(vars(crowded))


@pytest.mark.parametrize("file", EXAMPLES, ids=lambda file: file.stem)
def test_an_example_is_kept_and_judged_as_its_file_is(file: Path) -> None:
    tree = tomllib.loads(file.read_text("utf-8"))
    record = Register(MemoryStore())
    job = record.job(record.add_job(tree, by="R. Quill"))
    assert job.tree["unit"] == tree["unit"]
    assert assess(job.machine(), job.visit()).unit == tree["unit"]["tag"]


def test_a_unit_is_added_listed_and_read() -> None:
    record = register(MemoryStore())
    stream = record.add_job(UNIT, by="R. Quill")
    assert str(UUID(stream)) == stream
    (unit,) = record.units()
    assert (unit.stream, unit.tag, unit.version) == (stream, "MAU-5", 1)
    record.do(stream, OpenVisit({}), by="R. Quill")
    (stored,) = record.do(stream, READING, by="T. Marrow")
    assert record.state(stream).places["visit.1.reading.1"].id == stored.event.id
    assert record.history(stream)[-1] == stored
    assert record.job(stream).visit(1).readings[0].point == "train.1.1.manifold"
    assert record.verify(stream) is None


def test_a_job_sent_twice_is_one_unit() -> None:
    record = register(MemoryStore())
    job = {**UNIT, "visit": [{"reading": list(ENTRIES["reading"])}]}
    first = record.add_job(job, by="R. Quill", event_id=numbered(7))
    assert record.add_job(job, by="R. Quill", event_id=numbered(7)) == first == numbered(7)
    assert len(record.units()) == 1
    with pytest.raises(TakenError):
        record.add_job(UNIT | {"display": {"units": "si"}}, by="R. Quill", event_id=numbered(7))


def test_a_retry_is_harmless_even_when_its_time_is_past() -> None:
    record = register(MemoryStore())
    stream = record.add_job({**UNIT, "visit": [{}]}, by="R. Quill")
    first = record.do(stream, READING, by="R. Quill", event_id=numbered(70))
    record.do(stream, CloseVisit(1, "off"), by="R. Quill")
    assert record.do(stream, READING, by="R. Quill", event_id=numbered(70)) == first
    stale = record.do(stream, READING, by="R. Quill", event_id=numbered(70), expected_version=1)
    assert stale == first
    with pytest.raises(Refused):
        record.do(stream, READING, by="R. Quill", event_id=numbered(71))


def test_a_unit_that_is_not_here_is_told_in_a_sentence() -> None:
    record = register(MemoryStore())
    for ask in (record.state, record.job, record.history, record.verify):
        with pytest.raises(UnknownUnitError, match="no unit"):
            ask("../etc")
    with pytest.raises(Refused, match="no unit is declared"):
        record.do(numbered(7), READING, by="R. Quill")


def test_a_refused_job_leaves_no_unit_behind() -> None:
    record = register(MemoryStore())
    with pytest.raises(Refused) as refused:
        record.add_job({**UNIT, "design": {}, "visit": [{"by": 7}]}, by="R. Quill")
    places = {reason.place for reason in refused.value.reasons}
    assert {"design.airflow", "visit.1.by"} <= places
    assert record.units() == ()


def test_a_reading_is_kept_though_others_write_at_the_same_time() -> None:
    record = register(Crowded(others=TRIES - 1))
    stream = record.add_job({**UNIT, "visit": [{}]}, by="R. Quill")
    record.do(stream, READING, by="R. Quill")
    names = [stored.event.name for stored in record.history(stream)]
    assert names.count("plate corrected") == TRIES - 1
    assert names[-1] == "reading taken"


def test_a_crowd_without_end_is_told() -> None:
    record = register(Crowded(others=100))
    stream = record.add_job({**UNIT, "visit": [{}]}, by="R. Quill")
    with pytest.raises(Clash):
        record.do(stream, READING, by="R. Quill")


def test_who_says_which_version_was_seen_is_never_written_over_another() -> None:
    record = register(MemoryStore())
    stream = record.add_job({**UNIT, "visit": [{}]}, by="R. Quill")
    seen = record.state(stream).version
    others = record.do(stream, READING, by="T. Marrow")
    plate = CorrectPlate({**UNIT, "site": {"altitude": "10 ft"}})
    with pytest.raises(Clash) as clash:
        record.do(stream, plate, by="R. Quill", expected_version=seen)
    assert clash.value.events == others
    record.do(stream, plate, by="R. Quill", expected_version=seen + 1)


def test_times_and_ids_come_from_outside_or_from_the_machine() -> None:
    record = Register(MemoryStore())
    stream = numbered(7)
    (stored,) = record.do(stream, DeclareUnit(UNIT), by="R. Quill")
    assert stored.event.at.tzinfo is not None
    assert stored.event.id != stream
