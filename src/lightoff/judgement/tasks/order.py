"""What comes before what."""

from collections.abc import Hashable, Iterable, Mapping
from typing import TypeVar

K = TypeVar("K", bound=Hashable)


def nearest(ties: Mapping[K, Iterable[K]], needs: Iterable[K]) -> tuple[K, ...]:
    """Needs without those that another of them needs anyway.

    >>> nearest({"fire": ["purge"], "purge": ["fan"], "fan": []}, ["fan", "purge"])
    ('purge',)
    """
    there = tuple(needs)
    further = before(ties, there)
    return tuple(need for need in there if need not in further)


def before(ties: Mapping[K, Iterable[K]], keys: Iterable[K]) -> set[K]:
    """Everything that comes before any of these."""
    found: set[K] = set()
    ahead = [need for key in keys for need in ties[key]]
    while ahead:
        key = ahead.pop()
        if key not in found:
            found.add(key)
            ahead += ties[key]
    return found
