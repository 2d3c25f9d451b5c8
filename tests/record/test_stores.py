"""The one contract of every store."""

from collections.abc import Callable, Iterator
from datetime import timedelta
from pathlib import Path

import pytest

from lightoff.record import Clash, Event, RecordError, Store, TakenError, verify
from record.stores import STORES
from record.world import BEGAN, ENTRIES, UNIT, numbered

STREAM, OTHER = numbered(1000), numbered(2000)


@pytest.fixture(params=STORES, name="another")
def _another(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[Callable[[], Store]]:
    with STORES[request.param](tmp_path) as another:
        yield another


@pytest.fixture(name="store")
def _store(another: Callable[[], Store]) -> Store:
    return another()


def declared(number: int, tag: str = "MAU-5") -> Event:
    job = {**UNIT, "unit": {**UNIT["unit"], "tag": tag}}
    return Event(numbered(number), "unit declared", BEGAN, "R. Quill", {"job": job})


def opened(number: int, visit: int = 1) -> Event:
    body = {"visit": visit, "entry": {}}
    return Event(numbered(number), "visit opened", BEGAN, "R. Quill", body)


def taken(number: int, **changed: object) -> Event:
    entry = {**ENTRIES["reading"][0], **changed}
    return Event(numbered(number), "reading taken", BEGAN, "R. Quill", {"visit": 1, "entry": entry})


def test_what_is_added_is_read_in_order_by_every_writer(another: Callable[[], Store]) -> None:
    one, two = another(), another()
    first = one.append(STREAM, 0, [declared(1)])
    rest = two.append(STREAM, 1, [opened(2), taken(3)])
    for store in (one, two):
        assert store.read(STREAM) == first + rest
        assert store.read(STREAM, after=1) == rest
        assert store.read(STREAM, after=3) == ()
    assert [stored.version for stored in first + rest] == [1, 2, 3]
    assert [stored.event for stored in first + rest] == [declared(1), opened(2), taken(3)]
    assert verify(one.read(STREAM)) is None


def test_streams_know_nothing_of_each_other(store: Store) -> None:
    store.append(STREAM, 0, [declared(1)])
    store.append(OTHER, 0, [declared(2)])
    assert len(store.read(STREAM)) == len(store.read(OTHER)) == 1
    assert store.read(STREAM)[0].digest != store.read(OTHER)[0].digest
    assert store.read(numbered(3000)) == ()


def test_who_writes_second_is_told_what_the_first_wrote(another: Callable[[], Store]) -> None:
    one, two = another(), another()
    one.append(STREAM, 0, [declared(1)])
    written = one.append(STREAM, 1, [opened(2), taken(3)])
    with pytest.raises(Clash, match="2 since") as clash:
        two.append(STREAM, 1, [opened(4)])
    assert clash.value.events == written
    assert len(two.read(STREAM)) == 3


@pytest.mark.parametrize(("expected", "since"), [(-2, 2), (3, 0), (99, 0)])
def test_a_version_never_reached_is_a_clash_too(store: Store, expected: int, since: int) -> None:
    store.append(STREAM, 0, [declared(1), opened(2)])
    with pytest.raises(Clash, match="read it again") as clash:
        store.append(STREAM, expected, [opened(3)])
    assert len(clash.value.events) == since


def test_a_retry_is_answered_with_what_is_stored(store: Store) -> None:
    store.append(STREAM, 0, [declared(1)])
    batch = [opened(2), taken(3)]
    first = store.append(STREAM, 1, batch)
    store.append(STREAM, 3, [taken(4)])
    later = [Event(**{**vars(event), "at": BEGAN + timedelta(hours=1)}) for event in batch]
    assert store.append(STREAM, 1, later) == first
    assert store.append(STREAM, 99, batch) == first  # whatever version the retry expects
    assert len(store.read(STREAM)) == 4


@pytest.mark.parametrize(
    ("stream", "events"),
    [
        (STREAM, [taken(3, value="3.6 inwc")]),
        (STREAM, [taken(3), taken(4)]),
        (STREAM, [taken(4), taken(3)]),
        (OTHER, [taken(3)]),
        (STREAM, [taken(5), taken(5)]),
    ],
)
def test_an_id_stands_for_one_event_for_ever(
    store: Store, stream: str, events: list[Event]
) -> None:
    before = store.append(STREAM, 0, [declared(1), opened(2), taken(3)])
    with pytest.raises(TakenError):
        store.append(stream, 3, events)
    assert store.read(STREAM) == before
    assert store.read(OTHER) == ()


@pytest.mark.parametrize("stream", ["", "MAU-5", '"', "../record", numbered(0xA).upper()])
def test_a_stream_is_called_by_a_uuid(store: Store, stream: str) -> None:
    with pytest.raises(RecordError, match="UUID"):
        store.append(stream, 0, [declared(1)])
    assert store.streams() == ()


def test_adding_nothing_adds_nothing(store: Store) -> None:
    assert store.append(STREAM, 0, []) == ()
    assert store.streams() == ()


def test_units_are_listed_by_tag_with_what_is_last_known(store: Store) -> None:
    store.append(STREAM, 0, [declared(1, "MAU-9"), opened(2), opened(3, 2)])
    store.append(OTHER, 0, [declared(4, "MAU-1")])
    plate = Event(
        numbered(5),
        "plate corrected",
        BEGAN + timedelta(hours=1),
        "R. Quill",
        {"job": {"unit": {"tag": "MAU-8"}}},
    )
    store.append(STREAM, 3, [plate])
    one, two = store.streams()
    assert (one.stream, one.tag, one.serves, one.visits, one.version) == (
        OTHER,
        "MAU-1",
        "dye house, Teasel Row",
        0,
        1,
    )
    assert (two.stream, two.tag, two.serves, two.visits, two.version) == (
        STREAM,
        "MAU-8",
        None,
        2,
        4,
    )
    assert two.at == BEGAN + timedelta(hours=1)
