"""The text of a job, TOML or JSON, read into a plain tree and from there into a job."""

import json
import re
import tomllib
from collections import Counter
from collections.abc import Callable
from typing import Any, Literal

from lightoff.job.faults import JobError, whole
from lightoff.job.job import Job, Tree
from lightoff.job.lines import Lines
from lightoff.job.nearest import shown
from lightoff.job.parse import parse_tree
from lightoff.quantity import LightoffError

Form = Literal["toml", "json"]
MOST_BYTES = 5_000_000
_TOO_DEEP = "brackets are nested deeper than any job needs"
_TOO_LONG = "a whole number in it has thousands of digits"


def loads(text: str, *, form: Form) -> Job:
    """The job a text declares; a `JobError` tells every fault at once."""
    text = sound(text)
    if form == "json":
        return parse_tree(_tree(_from_json, text))
    return parse_tree(_tree(_from_toml, text), line_of=lambda: Lines(text))


def decoded(data: bytes) -> str:
    """The text in a file's bytes."""
    if len(data) > MOST_BYTES:
        raise whole(f"larger than {MOST_BYTES // 1_000_000} MB: no job needs that")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise whole("not text in UTF-8: save the file as UTF-8", line) from None


def sound(text: str) -> str:
    """The text without its byte order mark, when there is something in it and not too much."""
    text = text.removeprefix("\ufeff")
    if len(text) > MOST_BYTES:
        raise whole(f"larger than {MOST_BYTES // 1_000_000} MB: no job needs that")
    if not text.strip():
        raise whole("empty: a job begins with format = 1 and a [unit]")
    return text


def _tree(read: Callable[[str], Any], text: str) -> Any:
    """What `read` makes of the text; whatever else goes wrong in it becomes a sentence."""
    try:
        return read(text)
    except JobError:
        raise
    except RecursionError:
        raise whole(_TOO_DEEP) from None
    except LightoffError as error:
        raise whole(str(error)) from None
    except ValueError:  # Python's own limit on the digits of an int, the only one left
        raise whole(_TOO_LONG) from None


def _from_toml(text: str) -> Tree:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise _not_toml(str(error), text) from None


_TOML_PLACE = re.compile(r"(.*) \(at (?:line (\d+), column (\d+)|end of document)\)", re.DOTALL)
_KEY_TUPLE = re.compile(r"\('(.*?)',?\)")


def _not_toml(said: str, text: str) -> JobError:
    """tomllib's finding in our words; it names keys as Python tuples."""
    match = _TOML_PLACE.fullmatch(said)
    what = match[1] if match else said
    what = _KEY_TUPLE.sub(lambda key: key[1].replace("', '", "."), what)
    what = what[:1].lower() + what[1:]
    if match and match[2]:
        return whole(f"not TOML: {what} (column {match[3]})", int(match[2]))
    return whole(f"not TOML: {what} at the end", text.count("\n") + 1)


def _from_json(text: str) -> Any:
    try:
        return json.loads(text, parse_constant=_no_constant, object_pairs_hook=_object)
    except json.JSONDecodeError as error:
        what = error.msg[:1].lower() + error.msg[1:]
        raise whole(f"not JSON: {what} (column {error.colno})", error.lineno) from None


def _no_constant(word: str) -> float:
    raise LightoffError(f"{word} is not a number: leave the key out where nothing is known")


def _object(pairs: list[tuple[str, Any]]) -> Tree:
    tree = dict(pairs)
    if len(tree) < len(pairs):
        (twice, _), *_ = Counter(name for name, _ in pairs).most_common(1)
        raise LightoffError(f"the key {shown(twice)} stands twice in one object: keep one")
    return tree
