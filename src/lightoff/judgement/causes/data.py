"""The tables of this folder: data files of the package, read once."""

import tomllib
from collections.abc import Mapping, Sequence
from functools import cache
from importlib import resources
from typing import Any


@cache
def table(name: str) -> Mapping[str, Sequence[Mapping[str, Any]]]:
    """One of them, its rows by kind."""
    return tomllib.loads(resources.files(__package__).joinpath(f"{name}.toml").read_text("utf-8"))
