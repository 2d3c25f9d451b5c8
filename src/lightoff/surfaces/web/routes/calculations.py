"""The calculations as pages: a form that is an address, so that a link carries its inputs."""

from fastapi import APIRouter, Request
from starlette.exceptions import HTTPException
from starlette.responses import Response

from lightoff.calculations import CALCULATIONS, Calculation
from lightoff.surfaces.calculating import filled
from lightoff.surfaces.web.contexts.asked import asked_of
from lightoff.surfaces.web.contexts.calculation import calculation_page
from lightoff.surfaces.web.contexts.calculations import calculation_url, calculations_page
from lightoff.surfaces.web.routes.common import AtDesk, then
from lightoff.surfaces.words.bound import PageSpeech

router = APIRouter(prefix="/calc", include_in_schema=False)


@router.get("")
async def calculations(request: Request, desk: AtDesk) -> Response:
    """Every calculation there is."""
    speech = PageSpeech("si" if request.query_params.get("units") == "si" else "us")
    return desk.pages.show("calculations", calculations_page(speech), speech)


@router.get("/{name}.pdf")
async def paper(name: str, request: Request) -> Response:
    """The same on paper; where there is no answer yet, the page that says why."""
    from lightoff.surfaces.calculating.paper import paper  # sets type, which takes a while to load

    asked = asked_of(named(name), request.query_params)
    speech = PageSpeech(asked.system)
    sheet = filled(asked.calculation, asked.typed, speech)
    if not sheet.results:
        return then(calculation_url(name, asked.typed, speech))
    headers = {"Content-Disposition": f'inline; filename="{name}.pdf"', "Cache-Control": "no-store"}
    return Response(paper(sheet, speech), media_type="application/pdf", headers=headers)


@router.get("/{name}")
async def calculation(name: str, request: Request, desk: AtDesk) -> Response:
    """One of them, with its answer to what was typed; while one types, only what changes."""
    asked = asked_of(named(name), request.query_params)
    speech, typing = PageSpeech(asked.system), "hx-request" in request.headers
    page = calculation_page(asked, speech, sent=not typing)
    return desk.pages.show("calculated" if typing else "calculation", page, speech)


def named(name: str) -> Calculation:
    """A calculation by its name; a 404 where there is none."""
    found = CALCULATIONS.get(name)
    if found is None:
        raise HTTPException(404)
    return found
