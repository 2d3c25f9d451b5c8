"""Killed at any moment, a record holds what it acknowledged, whole batches, and a sound chain."""

import multiprocessing
from multiprocessing.connection import Connection
from pathlib import Path
from random import Random
from time import sleep

import pytest

from lightoff.record import SqliteStore, verify
from record.writer import STREAM, event, write

LONGEST = 0.03  # [s] a writer lives, from its start or from its first acknowledgement
PATIENCE = 60  # [s] for a first acknowledgement, on the slowest machine
SEED = 20261103


def killed(path: Path, seed: int, *, at_work: bool, after: float) -> int:
    """The last version that a writer acknowledged before it was killed; 0 for none."""
    context = multiprocessing.get_context("forkserver")
    context.set_forkserver_preload(["__main__", "lightoff.record"])  # for all
    here, there = context.Pipe(duplex=False)
    writer = context.Process(target=write, args=(str(path), seed, there))
    writer.start()
    there.close()
    if at_work:
        assert here.poll(PATIENCE)
    sleep(after)
    writer.kill()
    writer.join()
    assert writer.exitcode == -9, "the writer died of something else"
    return max(heard(here), default=0)


def heard(pipe: Connection) -> list[int]:
    versions = []
    with pipe:
        try:
            while pipe.poll():
                versions.append(int(pipe.recv_bytes()))
        except EOFError:  # all is read
            pass
    return versions


def check(path: Path, acknowledged: int) -> int:
    """What is kept is sound and holds all that was acknowledged; how much is kept."""
    with SqliteStore(path) as store:
        stored = store.read(STREAM)
    assert len(stored) >= acknowledged
    assert verify(stored) is None
    kept = [link.event for link in stored]
    assert kept == [event(link.version, link.event.body["end"]) for link in stored]
    assert not kept or kept[-1].body["end"] == len(kept), "half of a batch is there"
    return len(kept)


def kill_often(times: int, path: Path) -> tuple[int, int]:
    """How much was kept in the end, and how often a kill met a writer at work."""
    random, kept, working = Random(SEED), 0, 0
    for number in range(times):
        at_work, after = random.random() < 0.8, random.uniform(0, LONGEST)
        acknowledged = killed(path, SEED + number, at_work=at_work, after=after)
        before, kept = kept, check(path, acknowledged)
        assert kept >= before
        working += acknowledged > 0
    print(f"seed {SEED}: {times} kills, {working} of them at work, {kept} events kept")
    return kept, working


def test_nothing_acknowledged_is_lost_to_kills(tmp_path: Path) -> None:
    kept, working = kill_often(50, tmp_path / "record.sqlite")
    assert working > 25
    assert kept > 50


@pytest.mark.prove
def test_nothing_acknowledged_is_lost_to_five_hundred_kills(tmp_path: Path) -> None:
    kept, working = kill_often(500, tmp_path / "record.sqlite")
    assert working > 250
    assert kept > 500
