"""The rows of a visit by group, in short or in full.

In short: the legs of one measurement share a line, a limit that is kept is silent beside the
window it belongs to, and proofs that conform are folded.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from lightoff.judgement import Row
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.fields import Typed
from lightoff.surfaces.web.contexts.proving import Proving, proving
from lightoff.surfaces.web.contexts.rows import (
    RowView,
    Value,
    by_key,
    is_silent,
    row_view,
    value_of,
)
from lightoff.surfaces.words.groups import Group, by_group
from lightoff.surfaces.words.plain import is_open

View = Literal["short", "open", "all"]
_LEGS = ("line voltage", "motor current", "motor current limit")
NO_BREAK = "\u2060"  # no space, and no new line either
_PROVEN = ("checks", "trips", "sequence")


@dataclass(frozen=True)
class Line:
    """A row, and the form under it where it has one."""

    row: RowView
    proving: Proving | None


@dataclass(frozen=True)
class GroupView:
    """The rows of one group; it is folded where nothing in it asks for anything."""

    anchor: str
    title: str
    count: str
    lines: tuple[Line, ...]
    silent: tuple[Line, ...]
    silent_title: str
    opened: bool


@dataclass(frozen=True)
class Listing:
    """How the rows are listed, and what their forms need."""

    view: View
    typed: Typed
    new_id: Callable[[], str]


def groups(bench: Bench, listing: Listing) -> tuple[GroupView, ...]:
    """Every group that has a row to show."""
    found = by_key(bench.answer.as_found)
    views = (_group(bench, g, rows, listing, found) for g, rows in by_group(bench.answer.targets))
    return tuple(view for view in views if view.lines or view.silent)


def _group(
    bench: Bench, group: Group, rows: Sequence[Row], listing: Listing, found: Mapping[str, Row]
) -> GroupView:
    short = listing.view == "short"
    shown = [row for row in rows if is_open(row) or listing.view != "open"]
    if short:
        shown = [row for row in shown if not is_silent(row, rows)]
    folded = [row for row in shown if short and group.name in _PROVEN and not is_open(row)]
    word = bench.speech.word
    return GroupView(
        anchor=f"group-{group.order}-{group.furnace}",
        title=group.title(bench.speech),
        count=word("group:measured", done=sum(map(_is_done, rows)), all=len(rows)),
        lines=_lines(bench, group, [row for row in shown if row not in folded], listing, found),
        silent=_lines(bench, group, folded, listing, found),
        silent_title=word("group:silent", count=len(folded)),
        opened=listing.view == "all" or any(map(is_open, rows)),
    )


def _is_done(row: Row) -> bool:
    return row.decision not in ("not measured", "deferred")


def _lines(
    bench: Bench, group: Group, rows: Sequence[Row], listing: Listing, found: Mapping[str, Row]
) -> tuple[Line, ...]:
    legs = _legs(rows) if listing.view == "short" else {}
    lines = []
    for row in rows:
        together = legs.get(row.key, (row,))
        if together[0] is not row:
            continue
        form = None if bench.closed else proving(bench, row, listing.typed, listing.new_id)
        view = row_view(
            _nearest(together),
            bench.speech,
            href=row_href(bench, row),
            found=found.get(row.key),
            furnace=not group.furnace,
        )
        lines.append(Line(_joined(view, together, bench) if len(together) > 1 else view, form))
    return tuple(lines)


def _legs(rows: Sequence[Row]) -> dict[str, tuple[Row, ...]]:
    """The rows that share a line, by the key of each: legs in one run of which all is well, or
    none is read."""
    sets: dict[tuple[str | None, ...], list[Row]] = {}
    for row in rows:
        quiet = row.decision in ("conforms", "not measured") and not (row.stale or row.unchecked)
        if row.id in _LEGS and quiet:
            sets.setdefault((row.id, row.run, row.decision), []).append(row)
    return {row.key: tuple(legs) for legs in sets.values() for row in legs}


def _nearest(legs: Sequence[Row]) -> Row:
    """The leg nearest to its limit speaks for all."""
    return min(legs, key=lambda row: 1.0 if row.probability is None else row.probability)


def _joined(view: RowView, legs: Sequence[Row], bench: Bench) -> RowView:
    """One line for several legs: their names and numbers, one after the other."""
    values = [value_of(row, bench.speech) for row in legs]
    there = [value for value in values if value is not None]
    points = [(row.point or "").rsplit(".", 1)[1] for row in legs]
    names = ", ".join(f"{NO_BREAK}–{NO_BREAK}".join(leg) for leg in points)
    name = f"{bench.speech.target(legs[0].id)} {names}"
    if not there:
        return replace(view, name=name)
    number = " · ".join(value.number for value in there)
    return replace(view, name=name, value=Value(number, "", there[0].unit))


def row_href(bench: Bench, row: Row) -> str:
    """Where a row leads: to its point, read or worked out; nowhere where it is proven here."""
    if row.run is None or row.point is None:
        return ""
    return bench.point_url(row.point, row.run)
