"""What a mistyped word was probably meant to be."""

import difflib
from collections.abc import Iterable
from datetime import date, time

from lightoff.job.faults import one_line

LONGEST = 40  # characters of a typed text that a sentence repeats
MOST_LISTED = 12  # words; a longer list is not read, so only the nearest are named
_LARGEST = 10**15


def nearest(word: str, known: Iterable[str], most: int = 1, cutoff: float = 0.6) -> list[str]:
    """The known words most like `word`, capitals aside, best first.

    >>> nearest("Hihg", ["off", "fan", "high"])
    ['high']
    """
    folded = {name.casefold(): name for name in known}
    near = difflib.get_close_matches(word[:LONGEST].casefold(), folded, most, cutoff)
    return [folded[name] for name in near]


def unknown(word: object, noun: str, known: Iterable[str]) -> str:
    """The sentence for a word that is not among the known ones.

    >>> unknown("hihg", "a run", ["off", "fan", "high"])
    '"hihg" is not a run (did you mean "high"?): write "off", "fan" or "high"'
    """
    names = list(known)
    near = nearest(word, names) if isinstance(word, str) else []
    hint = f" (did you mean {shown(near[0])}?)" if near else ""
    if len(names) <= MOST_LISTED:
        return f"{shown(word)} is not {noun}{hint}: write {either(names)}"
    if near:
        return f"{shown(word)} is not {noun}: did you mean {shown(near[0])}?"
    return (
        f"{shown(word)} is not {noun}: write one such as "
        f"{either(nearest(str(word), names, most=4, cutoff=0.0))}"
    )


def either(words: Iterable[object], last: str = "or") -> str:
    """Words as a sentence offers them.

    >>> either(["off", "fan", "high"])
    '"off", "fan" or "high"'
    """
    quoted = [shown(word) for word in words]
    if len(quoted) < 2:
        return "".join(quoted)
    return f"{', '.join(quoted[:-1])} {last} {quoted[-1]}"


def shown(value: object) -> str:
    """What was typed, short enough for a sentence.

    >>> shown("blow-through"), shown(True), shown([1])
    ('"blow-through"', 'true', 'a list')
    """
    if isinstance(value, str):
        flat = one_line(value[: 4 * LONGEST])
        return f'"{flat}"' if len(flat) <= LONGEST else f'"{flat[: LONGEST - 3]}..."'
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int) and abs(value) > _LARGEST:
        return "a huge number"
    if isinstance(value, (int, float, date, time)):
        return str(value)
    words = {dict: "a table", list: "a list", type(None): "a blank"}
    return words.get(type(value), "this")
