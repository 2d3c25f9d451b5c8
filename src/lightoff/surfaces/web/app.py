"""The workbench as an ASGI app: composed here, and nowhere else."""

from collections.abc import Callable
from datetime import datetime
from uuid import uuid4

from fastapi import FastAPI
from fastapi.exceptions import RequestValidationError
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.types import ASGIApp, Scope

from lightoff import __version__
from lightoff.record import (
    Clash,
    RecordError,
    Register,
    StoreError,
    TakenError,
    UnknownUnitError,
)
from lightoff.surfaces.web.assets import load_assets
from lightoff.surfaces.web.calm import Calm, Caught
from lightoff.surfaces.web.desk import Desk
from lightoff.surfaces.web.guard import Guard, Refusal
from lightoff.surfaces.web.pages import load_pages
from lightoff.surfaces.web.routes import (
    api,
    calculations,
    calculations_api,
    docs,
    entries,
    model,
    new,
    plans,
    points,
    readings,
    units,
    visits,
)

STATUS: dict[Refusal, int] = {"host": 421, "origin": 403, "large": 413}
ROUTERS = (
    units, new, visits, plans, readings, entries, points, model, calculations, docs, api,
    calculations_api,
)  # fmt: skip


def local_time() -> datetime:
    """Now, with this machine's offset."""
    return datetime.now().astimezone()


def fresh_id() -> str:
    return str(uuid4())


def create_app(
    register: Register,
    *,
    now: Callable[[], datetime] = local_time,
    new_id: Callable[[], str] = fresh_id,
    by: str = "the technician",
) -> FastAPI:
    """The app over one register; `by` signs where a form names nobody."""
    assets = load_assets()
    pages = load_pages(assets)
    calm = Calm(pages)
    app = FastAPI(
        title="lightoff",
        version=__version__,
        docs_url=None,
        redoc_url=None,
        openapi_url="/api/openapi.json",
    )
    app.state.desk = Desk(register, pages, now, new_id, by)
    app.add_route("/assets/{name:path}", assets.answer, include_in_schema=False)
    for noun in ROUTERS:
        app.include_router(noun.router)
    app.include_router(points.sheet)
    _say_errors(app, calm)

    async def refused(scope: Scope, reason: Refusal) -> ASGIApp:
        return calm.answer(scope["path"], STATUS[reason], reason)

    app.add_middleware(Caught, calm=calm)
    app.add_middleware(Guard, refused=refused)
    return app


def _say_errors(app: FastAPI, calm: Calm) -> None:
    """Every error a person may meet is one sentence."""

    async def not_understood(request: Request, _: Exception) -> Response:
        # an address with letters where a number is due
        return calm.answer(request.url.path, 404)

    async def clashed(request: Request, _: Exception) -> Response:
        return calm.answer(request.url.path, 409, "clash")

    async def no_store(request: Request, _: Exception) -> Response:
        return calm.answer(request.url.path, 503, "store")

    async def not_there(request: Request, _: Exception) -> Response:
        return calm.answer(request.url.path, 404)

    async def not_recorded(request: Request, error: Exception) -> Response:
        # an id that is none, or that was used for something else
        status = 409 if isinstance(error, TakenError) else 422
        return calm.answer(request.url.path, status, said=str(error))

    app.add_exception_handler(HTTPException, calm.http)
    app.add_exception_handler(RecordError, not_recorded)
    app.add_exception_handler(UnknownUnitError, not_there)
    app.add_exception_handler(RequestValidationError, not_understood)
    app.add_exception_handler(Clash, clashed)
    app.add_exception_handler(StoreError, no_store)
