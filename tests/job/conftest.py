"""The example job, and a short way to break it in one place."""

import copy
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from lightoff.job import Fault, JobError, loads

FULL = Path(__file__).with_name("full.toml")

Tree = dict[str, Any]


@pytest.fixture(scope="session")
def full_text() -> str:
    return FULL.read_text(encoding="utf-8")


@pytest.fixture
def full_tree(full_text: str) -> Tree:
    return copy.deepcopy(tomllib.loads(full_text))


@pytest.fixture
def faults_of(full_text: str) -> Callable[..., tuple[Fault, ...]]:
    """The faults of the example after each `old` has been replaced by its `new`, once."""

    def faults_of(*changes: tuple[str, str]) -> tuple[Fault, ...]:
        text = full_text
        for old, new in changes:
            assert old in text
            text = text.replace(old, new, 1)
        with pytest.raises(JobError) as caught:
            loads(text, form="toml")
        return caught.value.faults

    return faults_of


@pytest.fixture
def line_of(full_text: str) -> Callable[[str], int]:
    """The line of the example on which a snippet begins."""

    def line_of(snippet: str) -> int:
        return full_text.count("\n", 0, full_text.index(snippet)) + 1

    return line_of
