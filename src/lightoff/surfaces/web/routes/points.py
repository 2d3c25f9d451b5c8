"""One point in one run, and the report of the visit."""

from fastapi import APIRouter
from starlette.responses import HTMLResponse, Response

from lightoff.job import parse_tree
from lightoff.surfaces.report import page
from lightoff.surfaces.report.page import style
from lightoff.surfaces.web.contexts.point import Here
from lightoff.surfaces.web.routes.common import AtDesk
from lightoff.surfaces.web.routes.showing import show_point

STYLE = "/report.css"

router = APIRouter(prefix="/units/{stream}/visits/{number}", include_in_schema=False)
sheet = APIRouter(include_in_schema=False)


@router.get("/points/{point}")
async def point(
    stream: str, number: int, point: str, desk: AtDesk, run: str = "", kept: str = ""
) -> Response:
    """Everything about a point in a run."""
    return show_point(desk, stream, number, Here(point, run), kept=kept)


@router.get("/report")
async def report(stream: str, number: int, desk: AtDesk) -> Response:
    """The page made for paper."""
    judged = desk.judged(stream, number)
    job = parse_tree(judged.state.tree)
    text = page(job, number, speech=judged.bench.speech, css=STYLE)
    return HTMLResponse(text, headers={"Cache-Control": "no-store"})


@sheet.get(STYLE)
async def report_style() -> Response:
    """The report's style sheet: no page of ours carries its own."""
    return Response(style(), media_type="text/css", headers={"Cache-Control": "max-age=3600"})
