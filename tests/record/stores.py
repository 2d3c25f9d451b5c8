"""Each store under its name, on a folder of its own."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from lightoff.record import MemoryStore, SqliteStore, Store


@contextmanager
def _memory(_: Path) -> Iterator[Callable[[], Store]]:
    store = MemoryStore()
    yield lambda: store


@contextmanager
def _sqlite(folder: Path) -> Iterator[Callable[[], Store]]:
    opened: list[SqliteStore] = []

    def another() -> Store:
        opened.append(SqliteStore(folder / "record.sqlite"))
        return opened[-1]

    yield another
    for store in opened:
        store.close()


# what a context gives opens the same record, each time for another writer
STORES = {"memory": _memory, "sqlite": _sqlite}
