"""The chain: every stored event carries a digest of itself and of all before it.

What stands in the middle of a stream cannot be changed or taken out unseen. A missing end can:
whoever keeps a stream's last digest elsewhere (a report does) can tell that too.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from hashlib import sha256

from lightoff.job.nearest import shown
from lightoff.record.events import Event, RecordError, event_of, is_uuid, text_of


@dataclass(frozen=True)
class Stored:
    """An event in its place: version 1 is the first of its stream.

    `text` is the event's canonical JSON, the digest is of its very bytes.
    """

    stream: str
    version: int
    text: str
    previous: str
    digest: str

    @cached_property
    def event(self) -> Event:
        try:
            return event_of(self.text)
        except RecordError as error:
            raise RecordError(f"event {self.version} of {self.stream}: {error}") from error


@dataclass(frozen=True)
class Broken:
    """Where a stream is first seen to be altered, and how that is known."""

    version: int
    sentence: str


def beginning(stream: str) -> str:
    """What stands as `previous` before the first event of a stream."""
    return _sha256(stream)


def digest(stream: str, version: int, previous: str, text: str) -> str:
    """SHA-256 of the canonical JSON of stream, version, previous digest and event.

    The event's text stands in it as it is kept, so that no altered byte reads as if it were not.
    """
    return _sha256(
        f'{{"event":{text},"previous":"{previous}","stream":"{stream}","version":{version}}}'
    )


def linked(stream: str, head: Stored | None, events: Sequence[Event]) -> tuple[Stored, ...]:
    """The events as they follow `head`, the last one stored."""
    if not is_uuid(stream):
        raise RecordError(f"{shown(stream)} is no stream: a stream is called by a UUID")
    stored = []
    for event in events:
        version, previous = (head.version + 1, head.digest) if head else (1, beginning(stream))
        text = text_of(event)
        head = Stored(stream, version, text, previous, digest(stream, version, previous, text))
        stored.append(head)
    return tuple(stored)


def verify(stored: Iterable[Stored]) -> Broken | None:
    """The first place where a whole stream is not as it was written; None where it is sound."""
    previous = None
    for due, link in enumerate(stored, start=1):
        if link.version != due:
            return Broken(due, f"event {due} is missing: event {link.version} follows there")
        if link.previous != (previous or beginning(link.stream)):
            return Broken(due, f"event {due} does not follow the one before it: one was altered")
        if link.digest != digest(link.stream, due, link.previous, link.text):
            return Broken(due, f"event {due} is not what was written: its digest differs")
        previous = link.digest
    return None


def _sha256(text: str) -> str:
    # damaged text may hold bytes that are none of UTF-8: they count like any other
    return sha256(text.encode("utf-8", "surrogateescape")).hexdigest()
