"""The API's description as a page, from our own files and without inline script."""

from fastapi import APIRouter
from starlette.responses import Response

from lightoff.surfaces.web.contexts.docs import docs_page
from lightoff.surfaces.web.routes.common import AtDesk

router = APIRouter(include_in_schema=False)


@router.get("/api/docs")
async def docs(desk: AtDesk) -> Response:
    """Every endpoint, to read and to try."""
    return desk.pages.show("docs", docs_page(desk.speech), desk.speech)
