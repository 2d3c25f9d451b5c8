"""Every way a tree can fail to be a job, as one sentence: what is wrong and what would be right."""

from collections.abc import Callable
from typing import Any

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from lightoff.job.faults import MOST_LISTED, Fault, JobError, Path, dotted, one_line
from lightoff.job.guide import Guide
from lightoff.job.nearest import either, nearest, shown, unknown
from lightoff.job.table import UNKNOWN_WORD

Sentence = Callable[[Path, Any, Guide], str]
LineOf = Callable[[Path], int | None]


def job_error(
    error: ValidationError,
    guide: Guide,
    *,
    place: Callable[[Path], str] = dotted,
    line: LineOf = lambda _: None,
) -> JobError:
    """Pydantic's findings as faults, with their places and lines."""
    found = error.errors(include_url=False)
    faults = []
    for details in found[:MOST_LISTED]:
        path = _path(details)
        message = one_line(_sentence(details, path, guide))
        faults.append(Fault(place(path), line(path), message))
    return JobError(faults, more=len(found) - len(faults))


def _path(details: ErrorDetails) -> Path:
    """Where it is, list positions from 1; a faulty key stands where its value would."""
    steps = (step + 1 if isinstance(step, int) else step for step in details["loc"])
    return tuple(step for step in steps if step != "[key]")


def _sentence(details: ErrorDetails, path: Path, guide: Guide) -> str:
    if details["type"] == "value_error":
        return str(details["ctx"]["error"])
    if details["type"] == UNKNOWN_WORD:
        return unknown(**details["ctx"])
    return _SENTENCES.get(details["type"], _other)(path, details["input"], guide)


def _missing(path: Path, _: Any, guide: Guide) -> str:
    field, name = guide.at(path), path[-1]
    if field.is_table:
        return f"the table {name} is missing: write {_header(path)}"
    if field.is_list_of_tables:
        return f"{name} is missing: write at least one {_header(path, many=True)}"
    ways = " or ".join(f"{name} = {way}" for way in field.ways[:3])
    return f"{name} is missing: write {ways}"


def _unknown_key(path: Path, _: Any, guide: Guide) -> str:
    name, keys = str(path[-1]), guide.at(path[:-1]).keys
    if near := nearest(name, keys):
        return f"{shown(name)} is not known here: did you mean {shown(near[0])}?"
    return f"{shown(name)} is not known here: the keys are {either(keys, 'and')}"


def _word(path: Path, value: Any, guide: Guide) -> str:
    words = guide.at(path).words
    texts = [word for word in words if isinstance(word, str)]
    near = nearest(value, texts) if isinstance(value, str) else []
    hint = f" (did you mean {shown(near[0])}?)" if near else ""
    return f"{shown(value)} is not known here{hint}: write {either(words)}"


def _flag(_: Path, value: Any, __: Guide) -> str:
    return f"{shown(value)} is neither true nor false: write true or false, without quotes"


def _whole_number(path: Path, value: Any, _: Guide) -> str:
    return f"{shown(value)} is not a whole number from 1: write {_name(path)} = 1 or = 2, and so on"


def _text(path: Path, value: Any, guide: Guide) -> str:
    ways = guide.at(path).ways or ['"..."']
    return f"{shown(value)} is not text: write it in quotes, as {_name(path)} = {ways[0]}"


def _bad_text(_: Path, __: Any, ___: Guide) -> str:
    return "the text holds characters that are none: type it again"


def _table(path: Path, value: Any, _: Guide) -> str:
    many = isinstance(path[-1], int) if path else False
    return f"{shown(value)} is not a table: write {_header(path, many=many)}"


def _list(path: Path, value: Any, guide: Guide) -> str:
    if guide.at(path).is_list_of_tables:
        return f"{shown(value)} is not a list of tables: write {_header(path, many=True)}"
    return f"{shown(value)} is not a list: write {_name(path)} = [ ... ]"


def _length(path: Path, value: Any, guide: Guide) -> str:
    least, most = guide.at(path).lengths
    noun = "characters" if isinstance(value, str) else "entries"
    due = (
        f"at least {least}"
        if most is None
        else f"{least} to {most}"
        if least
        else f"at most {most}"
    )
    return f"{_name(path)} has {len(value)} {noun}: {due} can be"


def _key(_: Path, value: Any, __: Guide) -> str:
    return f"{shown(value)} is not text: a key is text"


def _other(_: Path, value: Any, __: Guide) -> str:
    return f"{shown(value)} is not what is due here"


def _name(path: Path) -> str:
    return next((step for step in reversed(path) if isinstance(step, str)), "job")


def _header(path: Path, *, many: bool = False) -> str:
    """How a table is begun in a TOML file."""
    name = ".".join(step for step in path if isinstance(step, str))
    return f"[[{name}]]" if many else f"[{name}]"


_SENTENCES: dict[str, Sentence] = {
    "missing": _missing,
    "extra_forbidden": _unknown_key,
    "literal_error": _word,
    "bool_type": _flag,
    "int_type": _whole_number,
    "greater_than_equal": _whole_number,
    "string_type": _text,
    "string_unicode": _bad_text,
    "string_too_long": _length,
    "too_short": _length,
    "too_long": _length,
    "list_type": _list,
    "dict_type": _table,
    "model_type": _table,
    "invalid_key": _key,
}
