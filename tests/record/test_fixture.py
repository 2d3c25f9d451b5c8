"""A record kept by an earlier version opens, is sound, reads the same, and goes on."""

import shutil
import tomllib
from pathlib import Path

import pytest

from lightoff.record import CloseVisit, Note, Register, SqliteStore
from lightoff.record.events import event_of, text_of
from record.world import ENTRIES

FILES = sorted((Path(__file__).with_name("fixtures")).glob("store-v*.sqlite"))


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_a_record_of_an_earlier_version_opens_with_this_one(file: Path, tmp_path: Path) -> None:
    expected = tomllib.loads(file.with_suffix(".toml").read_text("utf-8"))
    copy = Path(shutil.copy(file, tmp_path))
    with SqliteStore(copy) as store:
        record = Register(store)
        unit = max(record.units(), key=lambda unit: unit.version)
        before = record.history(unit.stream)
        assert all(record.verify(each.stream) is None for each in record.units())
        assert record.state(unit.stream).tree == expected
        assert len(record.job(unit.stream).visits) == unit.visits == 2
        record.do(unit.stream, Note(2, "reading", ENTRIES["reading"][0]), by="R. Quill")
        record.do(unit.stream, CloseVisit(2, "running"), by="R. Quill")
        assert record.history(unit.stream)[: len(before)] == before
        assert record.verify(unit.stream) is None


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_its_events_are_written_today_as_they_were_then(file: Path, tmp_path: Path) -> None:
    with SqliteStore(shutil.copy(file, tmp_path)) as store:
        for unit in store.streams():
            for stored in store.read(unit.stream):
                assert text_of(event_of(stored.text)) == stored.text


def test_there_is_such_a_record() -> None:
    assert FILES
