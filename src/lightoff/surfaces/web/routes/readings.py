"""Readings: tried, taken, put right, taken back."""

from fastapi import APIRouter, Request
from starlette.exceptions import HTTPException
from starlette.responses import Response

from lightoff.job import JobError
from lightoff.record import Correct, Entry, Note, Refused, Withdraw
from lightoff.surfaces.web import entries
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.fields import Typed
from lightoff.surfaces.web.contexts.past import CORRECTABLE
from lightoff.surfaces.web.contexts.point import Here
from lightoff.surfaces.web.contexts.taking import taking
from lightoff.surfaces.web.contexts.trying import Trying, trying
from lightoff.surfaces.web.desk import Desk
from lightoff.surfaces.web.forms import Sent, sent
from lightoff.surfaces.web.moments import reading_time
from lightoff.surfaces.web.routes.common import AtDesk, by_field, then
from lightoff.surfaces.web.routes.showing import show_point, show_visit

router = APIRouter(prefix="/units/{stream}/visits/{number}", include_in_schema=False)


@router.get("/taking")
async def fields(stream: str, number: int, request: Request, desk: AtDesk) -> Response:
    """The form for another point: its runs, its units, its instruments."""
    bench = desk.bench(stream, number)
    asked = {name: request.query_params.get(name, "") for name in ("point", "run", "note")}
    form = taking(bench, Typed(asked, form="reading"), desk.new_id())
    return desk.pages.show("taking", form, bench.speech)


@router.get("/preview")
async def preview(stream: str, number: int, request: Request, desk: AtDesk) -> Response:
    """What a reading would say, before anything is kept."""
    bench = desk.bench(stream, number)
    entry = entries.reading(request.query_params, bench.speech.system)
    if "value" not in entry and "traverse" not in entry:
        return desk.pages.show("preview", Trying(None, ()), bench.speech)
    place = f"visit.{number}.reading.{len(bench.visit.readings) + 1}"
    try:
        tried = desk.tried(stream, number, {**reading_time(bench, desk.now()), **entry})
    except JobError as error:
        mine = [f.message for f in error.faults if f.place.startswith(place)]
        return desk.pages.show("preview", Trying(None, tuple(mine)), bench.speech)
    return desk.pages.show("preview", trying(tried, place, bench.answer), bench.speech)


@router.post("/readings")
async def take(stream: str, number: int, request: Request, desk: AtDesk) -> Response:
    """Keep a reading, and show what it decides."""
    form, bench = await sent(request), desk.bench(stream, number)
    entry = entries.reading(form.fields, bench.speech.system)
    entry = {**reading_time(bench, desk.now()), **entry}
    event_id = form.get("event_id") or desk.new_id()
    try:
        desk.write(stream, Note(number, "reading", entry), event_id, bench.visit.by or "")
    except Refused as error:
        typed = Typed(form.fields, by_field(error.reasons), "reading")
        return _again(desk, stream, number, form, typed)
    if form.get("here"):
        return then(f"{bench.point_url(form.get('point'), form.get('run'))}&kept={event_id}")
    return then(f"{bench.base}?kept={event_id}")


def _again(desk: Desk, stream: str, number: int, form: Sent, typed: Typed) -> Response:
    """The page the form was on, with what was typed and what is wrong with it."""
    if form.get("here"):
        here = Here(form.get("here"), form.get("run"))
        return show_point(desk, stream, number, here, typed=typed, status=422)
    return show_visit(desk, stream, number, typed=typed, status=422)


@router.post("/entry/{entry_id}/correct")
async def correct(
    stream: str, number: int, entry_id: str, request: Request, desk: AtDesk
) -> Response:
    """Put a reading right that was written down wrongly."""
    form, bench = await sent(request), desk.bench(stream, number)
    entry = _entry(bench, entry_id)
    if entry.kind != "reading":  # anything else is taken back and written anew
        raise HTTPException(404)
    retyped = {name: form.get(name) for name in CORRECTABLE if name in entry.tree}
    now = {**entry.tree, **entries.retyped(retyped, str(entry.tree["point"]), bench.speech.system)}
    return _change(desk, bench, entry, Correct(entry_id, now, form.get("reason")), form)


@router.post("/entry/{entry_id}/withdraw")
async def withdraw(
    stream: str, number: int, entry_id: str, request: Request, desk: AtDesk
) -> Response:
    """Take an entry back that should not be there."""
    form, bench = await sent(request), desk.bench(stream, number)
    entry = _entry(bench, entry_id)
    return _change(desk, bench, entry, Withdraw(entry_id, form.get("reason")), form)


def _entry(bench: Bench, entry_id: str) -> Entry:
    """A standing entry of this visit, or one already taken back."""
    there = (*bench.entries.values(), *bench.withdrawn)
    found = (e for e in there if (e.id, e.visit) == (entry_id, bench.visit.number))
    if (entry := next(found, None)) is None:
        raise HTTPException(404)
    return entry


def _change(
    desk: Desk, bench: Bench, entry: Entry, command: Correct | Withdraw, form: Sent
) -> Response:
    """Write a change of an entry; a reading is looked at on the page of its point."""
    number, point = bench.visit.number, str(entry.tree.get("point", ""))
    here = Here(point, bench.canonical(str(entry.tree.get("run", ""))))
    try:
        desk.write(bench.stream, command, form.get("event_id"), bench.visit.by or "")
    except Refused as error:
        kind = "correct" if isinstance(command, Correct) else "withdraw"
        typed = Typed(form.fields, by_field(error.reasons), f"{kind}-{entry.id}")
        if entry.kind == "reading":
            return show_point(desk, bench.stream, number, here, typed=typed, status=422)
        return show_visit(desk, bench.stream, number, typed=typed, status=422)
    if entry.kind == "reading":
        return then(f"{bench.point_url(here.point, here.run)}&kept={entry.id}")
    return then(f"{bench.base}?kept={entry.id}")
