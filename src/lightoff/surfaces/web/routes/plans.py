"""The plan of a visit, and of the first one before there is any."""

from fastapi import APIRouter
from starlette.responses import Response

from lightoff.job import parse_tree
from lightoff.judgement.plan import plan
from lightoff.quantity import QuantityError
from lightoff.surfaces.planning import expected_weather
from lightoff.surfaces.web.contexts.fields import Typed
from lightoff.surfaces.web.contexts.plan import Planned, plan_page
from lightoff.surfaces.web.desk import Desk
from lightoff.surfaces.web.entries import with_unit
from lightoff.surfaces.web.routes.common import AtDesk
from lightoff.surfaces.words.bound import PageSpeech

router = APIRouter(include_in_schema=False)


@router.get("/units/{stream}/plan")
async def of_unit(stream: str, desk: AtDesk, outdoor: str = "") -> Response:
    """The plan of the latest visit; where there is none, of the first."""
    return _show(desk, stream, latest(desk, stream), outdoor)


@router.get("/units/{stream}/visits/{number}/plan")
async def of_visit(stream: str, number: int, desk: AtDesk, outdoor: str = "") -> Response:
    """The plan of one visit."""
    return _show(desk, stream, number, outdoor)


def _show(desk: Desk, stream: str, number: int | None, outdoor: str) -> Response:
    """The page; what cannot be a temperature is told at its field, and planned without."""
    job = parse_tree(desk.state(stream).tree)
    speech = PageSpeech(job.display.units)
    typed, weather = Typed({"outdoor": outdoor}), dict[str, float]()
    try:
        weather = expected_weather(with_unit(outdoor.strip(), "temperature", speech.system))
    except QuantityError as error:
        typed = Typed({"outdoor": outdoor}, {"outdoor": str(error)})
    page = plan_page(planned(desk, stream, number, weather), speech, typed)
    return desk.pages.show("plan", page, speech)


def latest(desk: Desk, stream: str) -> int | None:
    """The number of a unit's latest visit; None before the first."""
    return desk.state(stream).visits or None


def planned(desk: Desk, stream: str, number: int | None, weather: dict[str, float]) -> Planned:
    """The plan of a visit on record; where no number is given, of the first before there is any."""
    today = desk.now().date()
    if number is not None:
        bench = desk.bench(stream, number)
        machine, visit = bench.machine, bench.visit
        made = plan(machine, visit, on=today, weather=weather, answer=bench.answer)
        return Planned(made, machine, visit, stream, bench)
    job = parse_tree(desk.state(stream).tree)
    machine, visit = job.machine(), job.visit()
    return Planned(plan(machine, visit, on=today, weather=weather), machine, visit, stream, None)
