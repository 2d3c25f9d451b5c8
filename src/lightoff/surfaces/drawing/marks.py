"""The marks of a decision: a shape first, a word second, colour third.

Ticked disc = conforms; diamond with an arrow or a cross = does not conform (too high, too low,
other); half disc = undecided; dashed ring = not measured. A return arrow = stale, a struck square
= unchecked.
"""

from collections.abc import Iterable
from typing import Literal

from markupsafe import Markup

from lightoff.judgement import Row

State = Literal["ok", "hi", "lo", "no", "un", "nm"]
Mark = Literal["ok", "hi", "lo", "no", "un", "nm", "stale", "lone", "care"]

_WORST_FIRST: tuple[State, ...] = ("hi", "lo", "no", "un", "nm", "ok")

_DIAMOND = '<path d="M10 .2 19.8 10 10 19.8 .2 10z" fill="var(--no)"/>'
_ON_DIAMOND = (
    'fill="none" stroke="var(--sheet)" stroke-width="2.1" stroke-linecap="round" '
    'stroke-linejoin="round"'
)
_BESIDE = (
    'fill="none" stroke="var(--ink-2)" stroke-width="1.9" stroke-linecap="round" '
    'stroke-linejoin="round"'
)

MARKS: dict[Mark, str] = {
    "ok": '<circle cx="10" cy="10" r="8" fill="var(--ok)"/>'
    f'<path d="M6.2 10.3l2.7 2.7 5-5.6" {_ON_DIAMOND}/>',
    "no": f'{_DIAMOND}<path d="M7 7l6 6M13 7l-6 6" {_ON_DIAMOND}/>',
    "hi": f'{_DIAMOND}<path d="M10 14.6V6M6.6 9 10 5.6 13.4 9" {_ON_DIAMOND}/>',
    "lo": f'{_DIAMOND}<path d="M10 5.4V14M6.6 11 10 14.4 13.4 11" {_ON_DIAMOND}/>',
    "un": '<circle cx="10" cy="10" r="7.1" fill="var(--sheet)" stroke="var(--un)" '
    'stroke-width="1.8"/><path d="M10 2a8 8 0 0 0 0 16z" fill="var(--un)"/>'
    '<path d="M10 0v20" stroke="var(--un)" stroke-width="1.8"/>',
    "nm": '<circle cx="10" cy="10" r="6.6" fill="var(--sheet)" stroke="var(--nm)" '
    'stroke-width="1.7" stroke-dasharray="2.6 2.58"/>',
    "stale": f'<path d="M15.6 6.4A6.6 6.6 0 1 0 16.6 10" {_BESIDE}/>'
    f'<path d="M16.6 2.6v4.2h-4.2" {_BESIDE}/>',
    "lone": '<path d="M3.5 3.5h13v13h-13z" fill="none" stroke="var(--ink-2)" stroke-width="1.6"/>'
    f'<path d="M6.8 13.2l6.4-6.4" {_BESIDE}/>',
    "care": '<path d="M10 2l8.6 15.4H1.4z" fill="none" stroke="var(--ink)" stroke-width="1.8" '
    'stroke-linejoin="round"/><path d="M10 8v4.4M10 14.6v.4" stroke="var(--ink)" '
    'stroke-width="2" stroke-linecap="round"/>',
}


def mark(name: Mark) -> Markup:
    """One mark as an inline picture; the word stands beside it, so it is hidden from readers."""
    return Markup(
        f'<svg class="m" viewBox="0 0 20 20" aria-hidden="true">{MARKS[name]}</svg>'
    )  # every part is a constant above


def state_of(row: Row) -> State:
    """Which mark a row bears."""
    if row.decision == "conforms":
        return "ok"
    if row.decision == "undecided":
        return "un"
    if row.decision != "does not conform":
        return "nm"
    if row.estimate is not None:
        if row.upper is not None and row.estimate > row.upper:
            return "hi"
        if row.lower is not None and row.estimate < row.lower:
            return "lo"
    return "no"


def worst(rows: Iterable[Row]) -> State:
    """The worst mark among rows, for a group of them."""
    there = {state_of(row) for row in rows}
    return next((state for state in _WORST_FIRST if state in there), "nm")
