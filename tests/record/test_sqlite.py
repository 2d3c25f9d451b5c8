"""A record file guards itself, and tells its troubles in one sentence each."""

import os
import sqlite3
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from pathlib import Path

import pytest

from lightoff.record import Clash, DeclareUnit, Note, OpenVisit, SqliteStore, StoreError, verify
from lightoff.record.sqlite_schema import VERSION
from record.world import ENTRIES, UNIT, numbered, register

FIRST = ENTRIES["reading"][0]


@pytest.fixture(name="file")
def _file(tmp_path: Path) -> Path:
    """A record with three events."""
    file = tmp_path / "record.sqlite"
    with SqliteStore(file) as store:
        register(store).add_job({**UNIT, "visit": [{"reading": [FIRST]}]}, by="R. Quill")
    return file


@pytest.fixture(name="raw")
def _raw(file: Path) -> Iterator[sqlite3.Connection]:
    """The same file in anybody's SQLite, which asks for nothing."""
    with closing(sqlite3.connect(file, isolation_level=None)) as connection:
        yield connection


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE event SET text = '{}'",
        "UPDATE event SET version = version + 10",
        "UPDATE OR REPLACE event SET version = 1 WHERE version = 2",
        "DELETE FROM event",
        "DELETE FROM event WHERE version = 3",
        "INSERT OR REPLACE INTO event SELECT stream, 1, 'x', '{}', '', '' FROM unit",
        "INSERT OR REPLACE INTO event SELECT stream, 4, id, '{}', '', '' FROM event LIMIT 1",
        "REPLACE INTO event SELECT stream, version, id, '{}', '', '' FROM event",
        "INSERT INTO event SELECT stream, version, 'x', '{}', '', '' FROM event WHERE version = 2"
        " ON CONFLICT DO UPDATE SET text = '{}'",
        "INSERT INTO event SELECT stream, 5, 'x', '{}', '', '' FROM unit",
        "INSERT OR IGNORE INTO event SELECT stream, 0, 'x', '{}', '', '' FROM unit",
    ],
)
def test_no_statement_changes_what_is_written(raw: sqlite3.Connection, statement: str) -> None:
    before = raw.execute("SELECT * FROM event").fetchall()
    with pytest.raises(sqlite3.IntegrityError, match="an event"):
        raw.execute(statement)
    assert raw.execute("SELECT * FROM event").fetchall() == before


def test_a_value_of_another_type_is_not_kept(raw: sqlite3.Connection) -> None:
    with pytest.raises(sqlite3.IntegrityError, match="cannot store"):
        raw.execute("INSERT INTO event SELECT stream, 4, 'x', x'00', '', '' FROM unit")


def test_it_is_kept_as_safely_as_sqlite_can(file: Path) -> None:
    with SqliteStore(file) as store:
        asked = ("journal_mode", "synchronous", "foreign_keys", "user_version")
        found = [store._connection.execute(f"PRAGMA {name}").fetchone()[0] for name in asked]
    assert found == ["wal", 2, 1, VERSION]


def test_an_event_of_no_listed_unit_is_not_kept(file: Path) -> None:
    with SqliteStore(file) as store, pytest.raises(sqlite3.IntegrityError, match="FOREIGN KEY"):
        store._connection.execute("INSERT INTO event VALUES ('nowhere', 1, 'x', '{}', '', '')")


def says(file: Path, **options: float) -> str:
    with pytest.raises(StoreError) as error, SqliteStore(file, **options):
        pass
    sentence = str(error.value)
    assert "\n" not in sentence
    assert sentence.startswith(file.name)
    return sentence


def test_a_file_of_a_newer_schema_is_left_alone(file: Path, raw: sqlite3.Connection) -> None:
    raw.execute(f"PRAGMA user_version = {VERSION + 1}")
    raw.close()
    before = file.read_bytes()
    assert "newer lightoff" in says(file)
    assert file.read_bytes() == before


@pytest.mark.parametrize("content", [b"hello", b"format = 1\n" * 500, os.urandom(8192)])
def test_a_file_of_another_kind_is_left_alone(tmp_path: Path, content: bytes) -> None:
    file = tmp_path / "job.toml"
    file.write_bytes(content)
    assert "no record" in says(file)
    assert file.read_bytes() == content


def test_a_database_of_another_program_is_left_alone(tmp_path: Path) -> None:
    file = tmp_path / "other.sqlite"
    with closing(sqlite3.connect(file)) as other:
        other.execute("CREATE TABLE thing (name TEXT)")
    before = file.read_bytes()
    assert "another program" in says(file)
    assert file.read_bytes() == before


def test_a_place_where_no_file_can_be_is_told(tmp_path: Path) -> None:
    assert "cannot be opened" in says(tmp_path)
    assert "cannot be opened" in says(tmp_path / "nowhere" / "record.sqlite")


def test_an_empty_file_becomes_a_record(tmp_path: Path) -> None:
    file = tmp_path / "record.sqlite"
    file.touch()
    with SqliteStore(file) as store:
        assert store.streams() == ()


def test_a_file_held_by_another_program_is_told(file: Path, raw: sqlite3.Connection) -> None:
    with SqliteStore(file, busy=0.01) as store:
        record = register(store)
        (unit,) = record.units()
        raw.execute("BEGIN IMMEDIATE")
        with pytest.raises(StoreError, match="held by another program"):
            record.do(unit.stream, OpenVisit({}), by="R. Quill", event_id=numbered(99))
        assert len(record.history(unit.stream)) == 3  # reading goes on
        raw.execute("ROLLBACK")
        record.do(unit.stream, OpenVisit({}), by="R. Quill", event_id=numbered(99))


def test_a_read_only_file_is_told_and_can_be_read(file: Path) -> None:
    with SqliteStore(file) as store:
        store._connection.execute("PRAGMA query_only = ON")
        record = register(store)
        (unit,) = record.units()
        with pytest.raises(StoreError, match="read-only"):
            record.do(unit.stream, OpenVisit({}), by="R. Quill", event_id=numbered(99))
        assert len(record.history(unit.stream)) == 3


def test_a_full_disk_is_told_and_nothing_is_half_written(file: Path) -> None:
    with SqliteStore(file) as store:
        pages = store._connection.execute("PRAGMA page_count").fetchone()[0]
        store._connection.execute(f"PRAGMA max_page_count = {pages}")
        record = register(store)
        (unit,) = record.units()
        long = {"what": "hood seam open " * 200, "severity": "note"}
        many = OpenVisit({"deficiency": [long] * 20})
        with pytest.raises(StoreError, match="disk is full"):
            record.do(unit.stream, many, by="R. Quill", event_id=numbered(99))
        assert len(record.history(unit.stream)) == 3
        store._connection.execute(f"PRAGMA max_page_count = {pages + 1000}")
        record.do(unit.stream, many, by="R. Quill", event_id=numbered(99))
        assert record.verify(unit.stream) is None


def test_a_closed_store_says_so(file: Path) -> None:
    store = SqliteStore(file)
    store.close()
    with pytest.raises(StoreError, match="closed"):
        store.streams()


def test_threads_share_a_store_and_lose_nothing(file: Path) -> None:
    with SqliteStore(file) as store, ThreadPoolExecutor(4) as pool:
        record = register(store)
        (unit,) = record.units()

        def note(number: int) -> int:
            entry = {"run": "fan", "point": "fan.rpm", "value": f"{number} rpm"}
            while True:  # with four at once the five tries of `do` may not be enough
                try:
                    stored = record.do(
                        unit.stream,
                        Note(1, "reading", entry),
                        by="R. Quill",
                        event_id=numbered(1000 + number),
                    )
                except Clash:
                    continue
                return stored[0].version

        versions = list(pool.map(note, range(40)))
        assert sorted(versions) == list(range(4, 44))
        assert verify(record.history(unit.stream)) is None


def test_two_programs_may_make_the_same_file(tmp_path: Path) -> None:
    def make(_: int) -> int:
        with SqliteStore(tmp_path / "record.sqlite") as store:
            return len(store.streams())

    with ThreadPoolExecutor(8) as pool:
        assert list(pool.map(make, range(16))) == [0] * 16


def test_damaged_bytes_are_read_and_found(file: Path, raw: sqlite3.Connection) -> None:
    raw.execute("DROP TRIGGER event_never_changes")
    raw.execute("UPDATE event SET text = CAST(x'7BFF7D' AS TEXT) WHERE version = 2")
    raw.close()
    with SqliteStore(file) as store:
        (unit,) = store.streams()
        broken = verify(store.read(unit.stream))
        assert broken is not None
        assert broken.version == 2
        with pytest.raises(ValueError, match=rf"event 2 of {unit.stream}.*damaged"):
            register(store).state(unit.stream)


def test_a_unit_declared_twice_is_two_streams(file: Path) -> None:
    with SqliteStore(file) as store:
        record = register(store)
        for number in (50, 60):
            record.do(numbered(number), DeclareUnit(UNIT), by="R. Quill", event_id=numbered(number))
        assert len(store.streams()) == 3
