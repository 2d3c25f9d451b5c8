"""Everything written into a visit besides readings: what was turned, proven, seen, put off."""

from fastapi import APIRouter, Request
from starlette.exceptions import HTTPException
from starlette.responses import Response

from lightoff.record import Note, Refused
from lightoff.surfaces.web import entries
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.fields import Typed
from lightoff.surfaces.web.forms import Sent, sent
from lightoff.surfaces.web.moments import visit_zone
from lightoff.surfaces.web.routes.common import AtDesk, by_field, then
from lightoff.surfaces.web.routes.showing import show_visit

THING = "thing"  # the field that becomes the entry's `id`: a form must not have one of that name

router = APIRouter(prefix="/units/{stream}/visits/{number}", include_in_schema=False)


@router.post("/entries/{kind}")
async def note(stream: str, number: int, kind: str, request: Request, desk: AtDesk) -> Response:
    """Keep one entry; the page is shown again at the row it belongs to."""
    if kind not in entries.KINDS_NOTED:
        raise HTTPException(404)
    form, bench = await sent(request), desk.bench(stream, number)
    zone = visit_zone(bench, desk.now())
    entry = _entry(kind, form, bench, lambda at: at.replace(tzinfo=zone))
    event_id = form.get("event_id") or desk.new_id()
    try:
        desk.write(stream, Note(number, kind, entry), event_id, bench.visit.by or "")
    except Refused as error:
        faults = by_field(error.reasons)
        named = {THING if name == "id" else name: text for name, text in faults.items()}
        typed = Typed(form.fields, named, form.get("row") or kind)
        return show_visit(desk, stream, number, typed=typed, status=422)
    anchor = form.get("row")
    known = anchor.replace("-", "").replace("_", "").isalnum()
    return then(f"{bench.base}?kept={event_id}" + (f"#{anchor}" if known else ""))


def _entry(kind: str, form: Sent, bench: Bench, zone: entries.Zone) -> entries.Entry:
    system = bench.speech.system
    fields = {"id" if name == THING else name: text for name, text in form.fields.items()}
    if kind == "adjustment":
        return entries.adjustment(fields, system, zone)
    if kind == "setpoint":
        return entries.set_point(fields, system)
    return entries.proof(kind, fields, system)
