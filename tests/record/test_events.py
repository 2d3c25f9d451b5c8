"""An event says what was typed, and is read again as it was written or not at all."""

from datetime import datetime
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.record import NOTED, Event, RecordError
from lightoff.record.canonical import canonical, from_canonical, plain
from lightoff.record.events import event_of, text_of
from record.world import BEGAN, ENTRIES, numbered

JSON = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(2**53) + 1, 2**53 - 1)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(),
    lambda parts: st.lists(parts, max_size=3) | st.dictionaries(st.text(), parts, max_size=3),
)


def event(**changed: Any) -> Event:
    said = {"visit": 1, "entry": ENTRIES["reading"][0]}
    own = {"id": numbered(7), "name": "reading taken", "at": BEGAN, "by": "R. Quill", "body": said}
    return Event(**{**own, **changed})


@given(JSON)
def test_every_value_of_json_comes_back_equal(value: Any) -> None:
    assert from_canonical(canonical(value)) == value


@given(JSON)
def test_the_text_of_a_value_is_the_text_of_what_is_read_from_it(value: Any) -> None:
    text = canonical(value)
    assert canonical(from_canonical(text)) == text


@pytest.mark.parametrize("value", [float("nan"), float("inf"), 2**53, "\ud800", {1: 2}, b"x"])
def test_what_json_cannot_keep_is_refused(value: Any) -> None:
    with pytest.raises(ValueError, match=r"\w"):
        canonical(value)


def test_dates_of_toml_become_text() -> None:
    moment = datetime.fromisoformat("2026-11-03T10:12:00-06:00")
    tree = {"at": moment, "days": [moment.date(), moment.time()]}
    assert plain(tree) == {
        "at": "2026-11-03T10:12:00-06:00",
        "days": ["2026-11-03", "10:12:00"],
    }


def test_what_is_nested_without_end_gets_a_sentence() -> None:
    tree: Any = []
    for _ in range(5000):
        tree = [tree]
    with pytest.raises(ValueError, match="deeper than any job"):
        plain(tree)


@pytest.mark.parametrize("name", NOTED.values())
def test_an_event_is_read_as_it_was_written(name: str) -> None:
    written = event(name=name)
    assert event_of(text_of(written)) == written


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({"name": "reading dreamt"}, "newer lightoff"),
        ({"format": 2}, "newer lightoff"),
        ({"body": {"visit": 1}}, "does not say its entry"),
        ({"at": BEGAN.replace(tzinfo=None)}, "no offset"),
        ({"id": "7"}, "UUID"),
        ({"id": numbered(0xABC).upper()}, "UUID"),
    ],
)
def test_an_event_not_known_here_is_told_in_a_sentence(changed: Any, said: str) -> None:
    with pytest.raises(RecordError, match=said):
        event(**changed)
    text = canonical({**vars(event()), **changed, "at": str(changed.get("at", BEGAN))})
    with pytest.raises(RecordError, match=said):
        event_of(text)


@pytest.mark.parametrize("text", ["", "7", "{}", '{"at":7}', '{"at":"2026-11-03T10:12:00Z"}'])
def test_what_is_no_event_is_told_in_a_sentence(text: str) -> None:
    with pytest.raises(RecordError, match="damaged"):
        event_of(text)


def test_a_retry_tells_the_same_at_another_time() -> None:
    again = event(at=BEGAN.replace(hour=23))
    assert event().tells_the_same(again)
    assert not event().tells_the_same(event(by="T. Marrow"))
