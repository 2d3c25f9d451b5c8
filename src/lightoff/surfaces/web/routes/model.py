"""One number of the model, opened."""

from fastapi import APIRouter
from starlette.exceptions import HTTPException
from starlette.responses import Response

from lightoff.job import parse_tree
from lightoff.judgement.foretell import as_left
from lightoff.judgement.opened import opened
from lightoff.judgement.plan import weather_read
from lightoff.machine import Machine, Visit, canonical, runs
from lightoff.quantity import QuantityError
from lightoff.surfaces.planning import expected_weather
from lightoff.surfaces.web.contexts.model import Number, model_page
from lightoff.surfaces.web.desk import Desk
from lightoff.surfaces.web.entries import with_unit
from lightoff.surfaces.web.routes.common import AtDesk
from lightoff.surfaces.words.bound import PageSpeech

router = APIRouter(include_in_schema=False)


@router.get("/units/{stream}/model/{point}")
async def of_unit(
    stream: str, point: str, desk: AtDesk, run: str = "high", outdoor: str = ""
) -> Response:
    """A number of a unit that nobody has read yet."""
    job = parse_tree(desk.state(stream).tree)
    asked = Number(point, run, by_readings=False, outdoor=outdoor)
    return _show(desk, stream, job.machine(), None, asked, PageSpeech(job.display.units))


@router.get("/units/{stream}/visits/{number}/model/{point}")
async def of_visit(
    stream: str, number: int, point: str, desk: AtDesk, run: str = "high", by: str = "readings",
    outdoor: str = "",
) -> Response:  # fmt: skip
    """A number of a visit: as its readings say, or by the plate in the weather of its day."""
    bench = desk.bench(stream, number)
    asked = Number(point, run, by_readings=by == "readings", outdoor=outdoor)
    return _show(desk, stream, bench.machine, bench.visit, asked, bench.speech)


def _show(
    desk: Desk, stream: str, machine: Machine, visit: Visit | None, asked: Number,
    speech: PageSpeech,
) -> Response:  # fmt: skip
    """The page; a 404 where the model has no such number."""
    run = canonical(machine, asked.run)
    if run not in runs(machine):
        raise HTTPException(404)
    day = _weather(asked, speech)
    model = as_left(machine, visit, desk.fits) if visit is not None and asked.by_readings else None
    asked = Number(asked.point, run, model is not None, asked.outdoor)
    if model is None and visit is not None:
        day |= weather_read(machine, visit)
    found = opened(machine, model, asked.name, run, day)
    if found is None:
        raise HTTPException(404)
    page = model_page(machine, stream, visit, asked, found, day, speech)
    return desk.pages.show("model", page, speech)


def _weather(asked: Number, speech: PageSpeech) -> dict[str, float]:
    """The weather asked for; none where what was typed is no temperature."""
    try:
        return expected_weather(with_unit(asked.outdoor.strip(), "temperature", speech.system))
    except QuantityError:
        return {}
