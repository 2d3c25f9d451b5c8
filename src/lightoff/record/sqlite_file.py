"""Opening a record file, writing to it all or nothing, and its troubles as sentences."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from lightoff.record.sqlite_schema import APPLICATION_ID, STEPS, VERSION
from lightoff.record.store import StoreError

_TROUBLES = {
    sqlite3.SQLITE_BUSY: "is held by another program: try again in a moment",
    sqlite3.SQLITE_CANTOPEN: "cannot be opened: is there such a folder, and may it be used?",
    sqlite3.SQLITE_CORRUPT: "is damaged: bring back a copy, and keep this one for whoever mends it",
    sqlite3.SQLITE_FULL: "cannot grow, the disk is full: nothing of this was written",
    sqlite3.SQLITE_IOERR: "cannot be reached: its disk answers with an error",
    sqlite3.SQLITE_NOTADB: "is no record: it is another kind of file",
    sqlite3.SQLITE_READONLY: "is read-only: nothing can be written to it",
}


def opened(path: Path, busy: float) -> sqlite3.Connection:
    """A connection to the record at `path`, made where there is none and brought up to date.

    `busy` [s] is how long it waits for another program's write.
    """
    connection = sqlite3.connect(path, timeout=busy, isolation_level=None, check_same_thread=False)
    # bytes that are damaged must reach the chain's check instead of stopping the reading
    connection.text_factory = lambda data: data.decode("utf-8", "surrogateescape")
    try:
        _recognise(connection, path.name)
        # where the file system knows no WAL SQLite keeps its journal, which is as safe
        connection.execute("PRAGMA journal_mode = WAL")
        connection.execute("PRAGMA synchronous = FULL")
        connection.execute("PRAGMA foreign_keys = ON")
        _upgrade(connection)
    except BaseException:
        connection.close()
        raise
    return connection


@contextmanager
def transaction(connection: sqlite3.Connection) -> Iterator[None]:
    """All of what is written within is kept, or nothing of it."""
    connection.execute("BEGIN IMMEDIATE")
    try:
        yield
        connection.execute("COMMIT")
    except BaseException:
        if connection.in_transaction:  # a full disk has ended it already
            connection.execute("ROLLBACK")
        raise


@contextmanager
def telling(name: str) -> Iterator[None]:
    """What SQLite says of the file, as one sentence."""
    try:
        yield
    except sqlite3.Error as error:
        code = getattr(error, "sqlite_errorcode", 0) & 0xFF  # the rest tells the finer cause
        raise StoreError(f"{name} {_TROUBLES.get(code, f'cannot be used: {error}')}") from error


def _recognise(connection: sqlite3.Connection, name: str) -> None:
    """Refuse a file that is not ours, before anything is changed in it."""
    is_empty = _pragma(connection, "schema_version") == 0
    if not is_empty and _pragma(connection, "application_id") != APPLICATION_ID:
        raise StoreError(f"{name} is no record: another program keeps its data in it")
    if _pragma(connection, "user_version") > VERSION:
        raise StoreError(f"{name} was written by a newer lightoff: open it with that one")


def _upgrade(connection: sqlite3.Connection) -> None:
    if _pragma(connection, "user_version") == VERSION:
        return
    with transaction(connection):  # asked again within: two programs may open a file at once
        for step in STEPS[_pragma(connection, "user_version") :]:
            for statement in step:
                connection.execute(statement)
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        connection.execute(f"PRAGMA user_version = {VERSION}")


def _pragma(connection: sqlite3.Connection, name: str) -> int:
    return int(connection.execute(f"PRAGMA {name}").fetchone()[0])
