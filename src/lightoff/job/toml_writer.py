"""A job's tree as TOML that a person likes to read."""

import json
import re
from collections.abc import Iterator, Mapping
from datetime import date, time
from typing import Any

WIDTH = 100
_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")

Tree = Mapping[str, Any]


def tree_to_toml(tree: Tree) -> str:
    """The tree as TOML text; what is None is left out, since TOML has no blank."""
    return "\n".join(_table(tree, ())).strip("\n") + "\n"


def _table(table: Tree, path: tuple[str, ...], *, is_row: bool = False) -> Iterator[str]:
    """The lines of a table: its own values first, then the tables within it."""
    inner = []
    for key, value in table.items():
        if _needs_header(value) and not (is_row and _is_short(key, value)):
            inner.append(key)
        elif value is not None:
            yield f"{_key(key)} = {_wrapped(key, value)}"
    for key in inner:
        yield from _inner(table[key], (*path, key))


def _inner(value: Any, path: tuple[str, ...]) -> Iterator[str]:
    name = ".".join(_key(key) for key in path)
    if isinstance(value, dict):
        yield from ("", f"[{name}]")
        yield from _table(value, path)
        return
    for row in value:
        yield from ("", f"[[{name}]]")
        yield from _table(row, path, is_row=True)


def _needs_header(value: Any) -> bool:
    return isinstance(value, dict) or _is_tables(value)


def _is_short(key: str, value: Any) -> bool:
    """Whether a table within a row of many reads better on the row's own line."""
    if not isinstance(value, dict) or any(_needs_header(part) for part in value.values()):
        return False
    return len(f"{_key(key)} = {_value(value)}") <= WIDTH


def _is_tables(value: Any) -> bool:
    return isinstance(value, list) and bool(value) and all(isinstance(row, dict) for row in value)


def _wrapped(key: str, value: Any) -> str:
    """A value on one line, or a list that would run over it with one entry a line."""
    line = _value(value)
    if not isinstance(value, list) or len(f"{_key(key)} = {line}") <= WIDTH:
        return line
    entries = "".join(f"    {_value(entry)},\n" for entry in value)
    return f"[\n{entries}]"


def _value(value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return _text(value)
    if isinstance(value, (date, time)):
        return value.isoformat()
    if isinstance(value, list):
        return f"[{', '.join(_value(entry) for entry in value)}]"
    if isinstance(value, dict):
        pairs = ", ".join(f"{_key(k)} = {_value(v)}" for k, v in value.items() if v is not None)
        return f"{{ {pairs} }}" if pairs else "{}"
    return repr(value)


def _key(key: str) -> str:
    return key if _BARE_KEY.fullmatch(key) else _text(key)


def _text(text: str) -> str:
    # JSON's escapes are TOML's, save that TOML wants one more character escaped
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")
