"""A program that writes until it is killed, and says what was acknowledged."""

from multiprocessing.connection import Connection
from random import Random
from uuid import UUID

from lightoff.record.events import Event
from lightoff.record.sqlite import SqliteStore
from record.world import BEGAN, UNIT

STREAM = str(UUID(int=1))
MOST = 4  # events in a batch


def event(version: int, end: int) -> Event:
    """What stands at `version`, in a batch that ends with version `end`."""
    if version == 1:
        name, body = "unit declared", {"job": UNIT}
    else:
        name, body = "symptom reported", {"visit": 1, "entry": {"what": f"number {version}"}}
    return Event(str(UUID(int=version)), name, BEGAN, "R. Quill", {**body, "end": end})


def write(path: str, seed: int, acknowledged: Connection) -> None:
    size = Random(seed)
    with SqliteStore(path) as store:
        version = len(store.read(STREAM))
        while True:
            end = version + size.randint(1, MOST)
            batch = [event(number, end) for number in range(version + 1, end + 1)]
            version = store.append(STREAM, version, batch)[-1].version
            acknowledged.send_bytes(str(version).encode())
