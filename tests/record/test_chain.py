"""Whatever was altered in a stream is found, and found where it is."""

import sqlite3
from dataclasses import replace
from hashlib import sha256
from pathlib import Path

import pytest
import rfc8785
from hypothesis import given
from hypothesis import strategies as st

from lightoff.record import DeclareUnit, MemoryStore, SqliteStore, Stored, verify
from lightoff.record.chain import digest
from record.world import ENTRIES, UNIT, register

VISIT = {kind: list(entries) for kind, entries in ENTRIES.items()}
JOB = DeclareUnit({**UNIT, "visit": [{**VISIT, "left": "off"}]})


def whole_stream() -> tuple[Stored, ...]:
    record = register(MemoryStore())
    return record.history(record.add_job(JOB.tree, by="R. Quíll \u2028\x01"))


STREAM = whole_stream()
versions = st.integers(1, len(STREAM))


def flipped(data: bytes, at: int, bit: int) -> bytes:
    return data[:at] + bytes([data[at] ^ (1 << bit)]) + data[at + 1 :]


def test_digests_are_those_of_anybodys_canonical_json() -> None:
    previous = sha256(STREAM[0].stream.encode()).hexdigest()
    for stored in STREAM:
        event = {**vars(stored.event), "at": stored.event.at.isoformat()}
        said = {
            "stream": stored.stream,
            "version": stored.version,
            "previous": previous,
            "event": event,
        }
        assert stored.digest == sha256(rfc8785.dumps(said)).hexdigest()
        previous = stored.digest


def test_a_sound_stream_is_not_accused() -> None:
    assert verify(STREAM) is None
    assert verify(STREAM[:5]) is None
    assert verify(()) is None


@given(versions, st.sampled_from(["text", "previous", "digest", "stream"]), st.data())
def test_one_flipped_bit_is_found_where_it_is(
    version: int, field: str, data: st.DataObject
) -> None:
    link = STREAM[version - 1]
    sound = getattr(link, field).encode()
    at = data.draw(st.integers(0, len(sound) - 1))
    damaged = flipped(sound, at, data.draw(st.integers(0, 7))).decode("utf-8", "surrogateescape")
    stream = (*STREAM[: version - 1], replace(link, **{field: damaged}), *STREAM[version:])
    broken = verify(stream)
    assert broken is not None
    assert broken.version == version
    assert str(version) in broken.sentence


@given(st.lists(versions, min_size=1, unique=True))
def test_what_is_taken_out_of_the_middle_is_missed(gone: list[int]) -> None:
    left = [stored for stored in STREAM if stored.version not in gone]
    if not left or min(gone) > left[-1].version:
        assert verify(left) is None  # a missing end shows only beside a digest kept elsewhere
    else:
        broken = verify(left)
        assert broken is not None
        assert broken.version == min(gone)
        assert "missing" in broken.sentence


@given(versions)
def test_what_was_altered_with_its_digest_shows_in_the_one_after_it(version: int) -> None:
    link = STREAM[version - 1]
    text = link.text.replace("R. Qu", "T. Qu")
    forged = replace(link, text=text, digest=digest(link.stream, version, link.previous, text))
    broken = verify((*STREAM[: version - 1], forged, *STREAM[version:]))
    if version == len(STREAM):
        assert broken is None  # as with a missing end
    else:
        assert broken is not None
        assert broken.version == version + 1


@given(st.permutations(STREAM))
def test_another_order_is_found(order: list[Stored]) -> None:
    moved = next((n for n, (a, b) in enumerate(zip(order, STREAM, strict=True), 1) if a != b), None)
    broken = verify(order)
    assert (broken.version if broken else None) == moved


@pytest.fixture(scope="module", name="file")
def _file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    file = tmp_path_factory.mktemp("chain") / "record.sqlite"
    with SqliteStore(file) as store:
        register(store).add_job(JOB.tree, by="R. Quill")
    return file


@given(st.data())
def test_one_flipped_bit_in_the_file_is_found_where_it_is(file: Path, data: st.DataObject) -> None:
    sound = file.read_bytes()
    with sqlite3.connect(file) as connection:
        rows = connection.execute("SELECT stream, version, text FROM event").fetchall()
    connection.close()
    # a long text lies in several pages of the file, where it is not found in one piece
    whole = [row for row in rows if row[2].encode() in sound]
    assert len(whole) > 15
    stream, version, text = data.draw(st.sampled_from(whole))
    at = data.draw(st.integers(0, len(text.encode()) - 1))
    damaged = file.with_name("damaged.sqlite")
    damaged.write_bytes(
        flipped(sound, sound.index(text.encode()) + at, data.draw(st.integers(0, 7)))
    )
    with SqliteStore(damaged) as store:
        broken = verify(store.read(stream))
    assert broken is not None
    assert broken.version == version
