"""A new unit: from a file, or from the fields a job cannot do without."""

from fastapi import APIRouter, Request
from starlette.responses import Response

from lightoff.job import JobError, loads, parse_tree
from lightoff.job.text import Form, decoded
from lightoff.record import Refused
from lightoff.surfaces.web import plate
from lightoff.surfaces.web.contexts.fields import Typed
from lightoff.surfaces.web.contexts.new import Submitted, new_page
from lightoff.surfaces.web.contexts.shell import unit_url
from lightoff.surfaces.web.desk import Desk
from lightoff.surfaces.web.forms import sent
from lightoff.surfaces.web.routes.common import AtDesk, reasons, then

router = APIRouter(prefix="/new", include_in_schema=False)


@router.get("")
async def new(desk: AtDesk) -> Response:
    """The page for a new unit."""
    return _page(desk, Submitted())


@router.post("/file")
async def from_file(request: Request, desk: AtDesk) -> Response:
    """Put the unit of a job file into the record; every fault is told with its line."""
    form, text = await sent(request), ""
    try:
        text = decoded(form.file) if form.file else form.get("text")
        job = loads(text, form=_form(form.file_name, text))
        stream = desk.add(job.tree, form.get("event_id"))
    except (JobError, Refused) as error:
        more = error.more if isinstance(error, JobError) else 0
        told = Submitted(file_text=text, file_faults=reasons(error), more_faults=more)
        return _page(desk, told, status=422)
    return then(unit_url(stream))


@router.post("")
async def from_form(request: Request, desk: AtDesk) -> Response:
    """Put a unit typed in by hand into the record; a furnace more or less is no submission yet."""
    form = await sent(request)
    count = plate.furnaces(form.fields)
    if changed := plate.changed(form.fields, count):
        return _page(desk, Submitted(Typed(changed[0]), changed[1]))
    try:
        tree = plate.tree(form.fields, count)
        parse_tree(tree)
        stream = desk.add(tree, form.get("event_id"))
    except (JobError, Refused) as error:
        faults = {fault.place: fault.message for fault in reasons(error)}
        return _page(desk, Submitted(Typed(form.fields, faults), count), status=422)
    return then(unit_url(stream))


def _form(name: str, text: str) -> Form:
    """TOML or JSON, by the file's name; pasted text by its first character."""
    if name.lower().endswith(".json"):
        return "json"
    return "json" if not name and text.lstrip().startswith("{") else "toml"


def _page(desk: Desk, told: Submitted, status: int = 200) -> Response:
    page = new_page(desk.speech, told, desk.new_id())
    return desk.pages.show("new", page, desk.speech, status=status)
