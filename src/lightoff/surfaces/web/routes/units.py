"""All units, one unit, and the beginning of a visit."""

from fastapi import APIRouter, Request
from starlette.responses import Response

from lightoff.job import parse_tree
from lightoff.record import OpenVisit, Refused
from lightoff.surfaces.web.contexts.fields import Typed
from lightoff.surfaces.web.contexts.opening import opening_page
from lightoff.surfaces.web.contexts.shell import unit_url
from lightoff.surfaces.web.contexts.units import units_page
from lightoff.surfaces.web.desk import Desk
from lightoff.surfaces.web.entries import without_blanks
from lightoff.surfaces.web.forms import sent
from lightoff.surfaces.web.routes.common import AtDesk, by_field, then
from lightoff.surfaces.words.bound import PageSpeech

router = APIRouter(include_in_schema=False)


@router.get("/")
async def units(desk: AtDesk) -> Response:
    """Where every unit stands."""
    return desk.pages.show("units", units_page(desk.standings(), desk.speech), desk.speech)


@router.get("/units/{stream}")
async def unit(stream: str, desk: AtDesk) -> Response:
    """The latest visit; where there is none, the page that begins one."""
    visits = desk.state(stream).visits
    return then(unit_url(stream, visits)) if visits else _opening(desk, stream, Typed())


@router.get("/units/{stream}/open")
async def opening(stream: str, desk: AtDesk) -> Response:
    """The page that begins the next visit."""
    return _opening(desk, stream, Typed())


@router.post("/units/{stream}/visits")
async def open_visit(stream: str, request: Request, desk: AtDesk) -> Response:
    """Begin a visit."""
    form = await sent(request)
    tree = {name: form.get(name) for name in ("purpose", "by", "licence", "date")}
    symptom = form.get("symptom")
    visit = without_blanks({**tree, "symptom": [{"what": symptom}] if symptom else []})
    try:
        desk.write(stream, OpenVisit(visit), form.get("event_id"), form.get("by"))
    except Refused as error:
        return _opening(desk, stream, Typed(form.fields, by_field(error.reasons)), status=422)
    return then(unit_url(stream, desk.state(stream).visits))


def _opening(desk: Desk, stream: str, typed: Typed, status: int = 200) -> Response:
    job = parse_tree(desk.state(stream).tree)
    speech = PageSpeech(job.display.units)
    today = {"date": f"{desk.now():%Y-%m-%d}", **typed.values}
    page = opening_page(
        stream, job.machine(), job.visits, speech, Typed(today, typed.faults), desk.new_id()
    )
    return desk.pages.show("opening", page, speech, status=status)
