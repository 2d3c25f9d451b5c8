"""On which line of a TOML text each key of its tree stands.

The text is known to be valid TOML (tomllib has read it), so the scanner only tells keys, headers
and brackets apart and steps over everything else.
"""

import re
import tomllib
from dataclasses import dataclass

from lightoff.job.faults import Path

_TOKEN = re.compile(
    r"""
      (?P<comment> \#[^\n]* )
    | (?P<word> \"{3}(?:\\.|[^\\])*?\"{3,5} | '{3}.*?'{3,5} | "(?:\\.|[^"\\\n])*" | '[^'\n]*' )
    | (?P<newline> \n )
    | (?P<mark> [][{}=,.] )
    | (?P<bare> [^][{}=,.\s\#"']+ )
    """,
    re.VERBOSE | re.DOTALL,
)


class Lines:
    """The line of every path of a text, counted from 1."""

    def __init__(self, text: str) -> None:
        scanner = _Scanner()
        line = 1
        for token in _TOKEN.finditer(text):
            scanner.take(token, line)
            line += token[0].count("\n")
        self.of = scanner.lines

    def __call__(self, path: Path) -> int | None:
        """The line of `path`, or of the nearest table around it that has one."""
        while path and path not in self.of:
            path = path[:-1]
        return self.of.get(path)


@dataclass
class _Bracket:
    """An open bracket: an array, which counts its values from 1, or an inline table."""

    path: Path
    at: int | None


class _Scanner:
    """Walks the tokens once, knowing at each whether a key or a value is due."""

    def __init__(self) -> None:
        self.lines: dict[Path, int] = {}
        self._table: Path = ()  # what the last header opened
        self._counts: dict[Path, int] = {}  # tables in each array of tables
        self._header = 0  # brackets of the header being read
        self._key: list[str] = []
        self._value: Path | None = None  # None: a key is due
        self._open: list[_Bracket] = []

    def take(self, token: re.Match[str], line: int) -> None:
        if token.lastgroup == "mark":
            self._mark(token[0], line)
        elif token.lastgroup == "newline" and not self._open:
            self._value, self._key = None, []
        elif token.lastgroup in ("word", "bare"):
            if self._value is None:
                self._key.append(_unquoted(token[0]))
            else:
                self._note(self._value, line)

    def _mark(self, mark: str, line: int) -> None:
        if mark == "=" and self._value is None:
            self._value = (*self._container(), *self._key)
            self._key = []
            self._note(self._value, line)
        elif mark in "[]" and self._value is None and not self._open:
            self._bracket_of_header(mark, line)
        elif mark in "[{" and self._value is not None:
            self._begin(mark, line)
        elif mark in "]}":
            self._end()
        elif mark == ",":
            self._next()

    def _bracket_of_header(self, mark: str, line: int) -> None:
        if mark == "[":
            self._header += 1
        elif self._key:  # the first closing bracket ends it; the second of `]]` finds no key
            self._begin_table(line)

    def _begin_table(self, line: int) -> None:
        *outer, last = self._key
        path: Path = ()
        for key in outer:
            path = self._current((*path, key))
        path = (*path, last)
        if self._header > 1:
            self._counts[path] = self._counts.get(path, 0) + 1
            self._note(path, line)
        self._table = self._current(path)
        self._note(self._table, line)
        self.lines[self._table] = line  # its own header, not the first of the tables within
        self._header, self._key = 0, []

    def _current(self, path: Path) -> Path:
        """The path itself, or the last table of the array of tables it names."""
        return (*path, self._counts[path]) if path in self._counts else path

    def _container(self) -> Path:
        return self._open[-1].path if self._open else self._table

    def _begin(self, mark: str, line: int) -> None:
        path = self._value or ()
        self._note(path, line)
        self._open.append(_Bracket(path, 1 if mark == "[" else None))
        self._value = (*path, 1) if mark == "[" else None

    def _end(self) -> None:
        closed = self._open.pop()
        self._value = closed.path

    def _next(self) -> None:
        bracket = self._open[-1]
        if bracket.at is None:
            self._value = None
        else:
            bracket.at += 1
            self._value = (*bracket.path, bracket.at)

    def _note(self, path: Path, line: int) -> None:
        """Keep the first line of a path and of everything around it."""
        while path and path not in self.lines:
            self.lines[path] = line
            path = path[:-1]


def _unquoted(key: str) -> str:
    return str(tomllib.loads(f"key = {key}")["key"]) if key[0] in "\"'" else key
