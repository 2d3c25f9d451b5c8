"""A sentence that is not yet one: an id and SI values, put into words by the surfaces."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True)
class Message:
    """`message` is an id of the sentence catalogue, `values` what the sentence needs [SI]."""

    message: str
    values: Mapping[str, Any] = field(default_factory=dict)


def message(message_id: str, **values: Any) -> Message:
    """Shorthand for a `Message`."""
    return Message(message_id, values)


@dataclass(frozen=True)
class Remark:
    """Something a technician would notice, and where in the job it stands."""

    place: str
    message: str
    values: Mapping[str, Any] = field(default_factory=dict)
