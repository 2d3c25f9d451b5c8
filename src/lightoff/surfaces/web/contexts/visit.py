"""The page of one visit: the answer, a form to take a reading, every row by group, what is left."""

import re
from collections.abc import Callable
from dataclasses import dataclass, field

from markupsafe import Markup, escape

from lightoff.judgement import Row
from lightoff.machine import kind_of
from lightoff.surfaces.web.contexts.answer import Answer, Count, answer_of, counts_of, weight
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.fields import Typed
from lightoff.surfaces.web.contexts.groups import GroupView, Listing, View, groups, row_href
from lightoff.surfaces.web.contexts.leaving import Closing, Noting, closing, noting
from lightoff.surfaces.web.contexts.rows import RowView, row_view
from lightoff.surfaces.web.contexts.shell import Link, Shell, around_unit, unit_url
from lightoff.surfaces.web.contexts.taking import Taking, taking
from lightoff.surfaces.web.contexts.told import Told
from lightoff.surfaces.web.contexts.turning import Turned, Turning, turned, turning
from lightoff.surfaces.web.contexts.withdrawing import Forms
from lightoff.surfaces.words.plain import is_open
from lightoff.surfaces.words.together import odd_readings, together

MOST_FIRST = 5
VIEWS: tuple[View, ...] = ("short", "open", "all")


@dataclass(frozen=True)
class RemarkView:
    """Something a technician would notice, where, and a way there."""

    place: str
    text: str
    href: str


@dataclass(frozen=True)
class VisitPage:
    """Everything on the page."""

    shell: Shell
    answer: Answer
    counts: tuple[Count, ...]
    together: Markup
    about: str
    others: tuple[Link, ...]
    told: Told | None
    notice: str
    views: tuple[Link, ...]
    taking: Taking | None
    turning: Turning | None
    first: tuple[RowView, ...]
    groups: tuple[GroupView, ...]
    remarks: tuple[RemarkView, ...]
    turned: tuple[Turned, ...]
    noting: tuple[Noting, ...]
    closing: Closing
    open_next: str


@dataclass(frozen=True)
class Asked:
    """What the request asked of the page, besides the visit itself."""

    typed: Typed = field(default_factory=Typed)
    told: Told | None = None
    notice: str = ""
    view: View = "short"
    at: str = ""  # the moment a form offers, local time without offset


def visit_page(bench: Bench, asked: Asked, new_id: Callable[[], str]) -> VisitPage:
    """The page of a visit."""
    speech, typed = bench.speech, asked.typed
    forms, made = not bench.closed, Forms(typed, new_id)
    title = speech.word("title:visit", n=bench.visit.number)
    return VisitPage(
        shell=around_unit(speech, bench.machine, bench.stream, bench.visit.number, "visit", title),
        answer=answer_of(bench.answer, speech),
        counts=counts_of(bench.answer.targets, speech),
        together=_together(bench),
        about=_about(bench),
        others=_others(bench),
        told=asked.told,
        notice=asked.notice,
        views=_views(bench, asked.view),
        taking=taking(bench, typed.of("reading"), new_id()) if forms else None,
        turning=turning(bench, typed, new_id(), asked.at) if forms else None,
        first=_first(bench),
        groups=groups(bench, Listing(asked.view, typed, new_id)),
        remarks=_remarks(bench),
        turned=turned(bench, made),
        noting=noting(bench, made),
        closing=closing(bench, typed, new_id()),
        open_next=f"{unit_url(bench.stream)}/open" if bench.closed else "",
    )


def _together(bench: Bench) -> Markup:
    """How the readings stand together; what does not fit leads to its page."""
    text = escape(together(bench.answer, bench.speech))
    for point, run in odd_readings(bench.answer):
        name = escape(bench.speech.reading(f"{point} {run}"))
        link = Markup('<a href="{}">{}</a>').format(bench.point_url(point, run), name)
        text = text.replace(name, link, 1)
    return text


def _about(bench: Bench) -> str:
    """Which visit this is: its number, purpose, day and author."""
    visit, word = bench.visit, bench.speech.word
    parts = [word("visit:number", n=visit.number), word(f"purpose:{visit.purpose}")]
    if visit.date is not None:
        parts.append(f"{visit.date.day} {visit.date:%b %Y}")
    return ", ".join([*parts, *filter(None, (visit.by, visit.licence))])


def _others(bench: Bench) -> tuple[Link, ...]:
    """The other visits to this unit."""
    return tuple(
        Link(bench.speech.word("visit:number", n=n), unit_url(bench.stream, n))
        for n in range(1, bench.visits + 1)
        if n != bench.visit.number
    )


def _views(bench: Bench, view: View) -> tuple[Link, ...]:
    return tuple(
        Link(bench.speech.word(f"view:{each}"), f"{bench.base}?show={each}#rows", each == view)
        for each in VIEWS
    )


def _first(bench: Bench) -> tuple[RowView, ...]:
    """The heaviest rows that are open, each point once."""
    rows = [row for row in bench.answer.targets if row.required and is_open(row)]
    seen: dict[tuple[str | None, ...], Row] = {}
    for row in sorted(rows, key=weight):
        seen.setdefault((row.point or row.id, str(row.furnace)), row)
    heaviest = [row for row in seen.values() if row.decision not in ("not measured", "deferred")]
    return tuple(
        row_view(row, bench.speech, href=row_href(bench, row)) for row in heaviest[:MOST_FIRST]
    )


def _remarks(bench: Bench) -> tuple[RemarkView, ...]:
    return tuple(
        RemarkView(
            _place(bench, remark.place), bench.speech.say(remark), _remark_href(bench, remark.place)
        )
        for remark in bench.answer.remarks
    )


def _place(bench: Bench, place: str) -> str:
    """What a remark is about: the point that was read, else the place in the job."""
    reading = _reading_at(bench, place)
    if reading is None:
        if found := re.match(r"instrument\.(\d+)\.", place):
            return bench.visit.instruments[int(found[1]) - 1].id
        steps = re.sub(r"\.(?=\d)", " ", place).split(".")
        return ", ".join(step for step in steps if not step.startswith("visit "))
    point, run = reading
    name = bench.speech.point(point) if kind_of(point) else point
    return bench.speech.word("answer:name", name=name, run=bench.speech.run(bench.canonical(run)))


def _reading_at(bench: Bench, place: str) -> tuple[str, str] | None:
    for reading in bench.visit.readings:
        if place.startswith(f"{reading.place}."):
            return reading.point, reading.run
    return None


def _remark_href(bench: Bench, place: str) -> str:
    reading = _reading_at(bench, place)
    if reading is None:
        return ""
    return bench.point_url(reading[0], bench.canonical(reading[1]))
