"""One visit: looking at it, closing it, and opening it again."""

from fastapi import APIRouter, Request
from starlette.responses import Response

from lightoff.record import CloseVisit, Refused, Withdraw
from lightoff.surfaces.web.contexts.fields import Typed
from lightoff.surfaces.web.contexts.leaving import CLOSING, REOPENING
from lightoff.surfaces.web.desk import Desk
from lightoff.surfaces.web.forms import sent
from lightoff.surfaces.web.routes.common import AtDesk, by_field, then
from lightoff.surfaces.web.routes.showing import show_visit

router = APIRouter(prefix="/units/{stream}/visits/{number}", include_in_schema=False)


@router.get("")
async def visit(
    stream: str, number: int, desk: AtDesk,
    kept: str = "", show: str = "", point: str = "", run: str = "",
) -> Response:  # fmt: skip
    """Everything about a visit; `kept` is the id of what was just written."""
    typed = Typed({"point": point, "run": run} if point else {}, form="reading")
    return show_visit(desk, stream, number, typed=typed, kept=kept, show=show)


@router.post("/close")
async def close(stream: str, number: int, request: Request, desk: AtDesk) -> Response:
    """End the visit; refused where it must not be left running."""
    form = await sent(request)
    command = CloseVisit(number, form.get("left"), form.get("told") or None)
    try:
        desk.write(stream, command, form.get("event_id"), _author(desk, stream, number))
    except Refused as error:
        typed = Typed(form.fields, by_field(error.reasons), CLOSING)
        return show_visit(desk, stream, number, typed=typed, status=422)
    return then(desk.bench(stream, number).base)


@router.post("/reopen")
async def reopen(stream: str, number: int, request: Request, desk: AtDesk) -> Response:
    """Take the closing back, with a reason."""
    form = await sent(request)
    closing = desk.state(stream).closing(number)
    if closing is None:
        return then(desk.bench(stream, number).base)
    command = Withdraw(closing.id, form.get("reason"))
    try:
        desk.write(stream, command, form.get("event_id"), _author(desk, stream, number))
    except Refused as error:
        typed = Typed(form.fields, by_field(error.reasons), REOPENING)
        return show_visit(desk, stream, number, typed=typed, status=422)
    return then(desk.bench(stream, number).base)


def _author(desk: Desk, stream: str, number: int) -> str:
    return desk.bench(stream, number).visit.by or ""
