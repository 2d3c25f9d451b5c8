"""The same questions for programs: JSON in, JSON out, documented by OpenAPI."""

import json
from dataclasses import asdict
from typing import Any

from fastapi import APIRouter, Request
from pydantic import BaseModel, Field
from starlette.responses import JSONResponse

from lightoff.job import Job, JobError, parse_tree, schema
from lightoff.job.faults import whole
from lightoff.job.text import decoded
from lightoff.judgement import Assessment, assess
from lightoff.judgement.plan import Plan, plan
from lightoff.quantity import LightoffError, QuantityError
from lightoff.record import Note, Refused
from lightoff.surfaces.planning import expected_weather
from lightoff.surfaces.web.desk import Desk, Judged
from lightoff.surfaces.web.routes.common import AtDesk, reasons
from lightoff.surfaces.web.routes.plans import latest, planned

router = APIRouter(prefix="/api", tags=["lightoff"])


class FaultOut(BaseModel):
    """One thing that is wrong: where, on which line of a file, and what would be right."""

    place: str
    line: int | None
    message: str


class Faults(BaseModel):
    """Everything that is wrong, at once."""

    faults: list[FaultOut]


class UnitOut(BaseModel):
    """One unit of the record."""

    stream: str
    tag: str
    serves: str | None
    visits: int
    version: int


class Added(BaseModel):
    """A unit was put into the record."""

    stream: str


class Taken(BaseModel):
    """A reading was kept; `targets` are the rows for which it counts."""

    event_id: str
    version: int
    verdict: str
    targets: list[dict[str, Any]] = Field(description="rows as in the answer")


class ReadingIn(BaseModel):
    """A reading as in the job file, and an id by which a retry is known."""

    model_config = {"extra": "allow"}
    event_id: str | None = Field(None, description="a UUID; the same one again writes nothing")
    run: str = Field(examples=["high"])
    point: str = Field(examples=["train.1.1.manifold"])
    value: str | float | None = Field(None, examples=["3.12 inwc"])


_REFUSED: dict[int | str, dict[str, Any]] = {422: {"model": Faults, "description": "what is wrong"}}
_NOT_THERE: dict[int | str, dict[str, Any]] = {404: {"model": Faults, "description": "none such"}}
_JOB_BODY = {
    "requestBody": {
        "required": True,
        "content": {"application/json": {"schema": {"type": "object", "title": "Job"}}},
        "description": "A job's tree; its JSON Schema is at /api/schema.",
    }
}
_READING_BODY = {
    "requestBody": {
        "required": True,
        "content": {"application/json": {"schema": ReadingIn.model_json_schema()}},
    }
}


@router.post("/judge", responses=_REFUSED, response_model=Assessment, openapi_extra=_JOB_BODY)
async def judge(request: Request, visit: int | None = None) -> JSONResponse:
    """The answer for one visit of a job, the latest where none is named; nothing is kept."""
    try:
        return JSONResponse(_judged(parse_tree(await _tree(request)), visit))
    except JobError as error:
        return _refused(error)
    except LightoffError as error:  # no such visit
        return _refused(whole(str(error), place="visit"))


@router.post("/plan", responses=_REFUSED, response_model=Plan, openapi_extra=_JOB_BODY)
async def plan_of_job(
    request: Request, visit: int | None = None, outdoor: str = ""
) -> JSONResponse:
    """The plan of one visit of a job; `outdoor` as "38 degF", until the visit has read it."""
    try:
        job = parse_tree(await _tree(request))
        made = plan(job.machine(), job.visit(visit), weather=expected_weather(outdoor))
    except JobError as error:
        return _refused(error)
    except QuantityError as error:
        return _refused(whole(str(error), place="outdoor"))
    except LightoffError as error:  # no such visit
        return _refused(whole(str(error), place="visit"))
    return JSONResponse(made.to_dict())


@router.get("/schema", response_model=dict[str, Any])
async def job_schema() -> JSONResponse:
    """The JSON Schema of a job."""
    return JSONResponse(schema())


@router.get("/units", response_model=list[UnitOut])
async def units(desk: AtDesk) -> JSONResponse:
    """Every unit of the record."""
    there = desk.register.units()
    return JSONResponse(
        [UnitOut.model_validate(unit, from_attributes=True).model_dump() for unit in there]
    )


@router.post(
    "/units", status_code=201, responses=_REFUSED, response_model=Added, openapi_extra=_JOB_BODY
)
async def add_unit(request: Request, desk: AtDesk, event_id: str = "") -> JSONResponse:
    """Put a job into the record: its unit, and every visit it holds."""
    try:
        tree = await _tree(request)
        parse_tree(tree)
        return JSONResponse({"stream": desk.add(tree, event_id)}, 201)
    except (JobError, Refused) as error:
        return _refused(error)


@router.get("/units/{stream}", responses=_NOT_THERE, response_model=dict[str, Any])
async def unit(stream: str, desk: AtDesk) -> JSONResponse:
    """The job's tree, as it stands."""
    return JSONResponse(desk.state(stream).tree)


@router.get(
    "/units/{stream}/visits/{number}/answer", responses=_NOT_THERE, response_model=Assessment
)
async def answer(stream: str, number: int, desk: AtDesk) -> JSONResponse:
    """The answer for one visit."""
    return JSONResponse(desk.bench(stream, number).whole.to_dict())


@router.get("/units/{stream}/plan", responses={**_REFUSED, **_NOT_THERE}, response_model=Plan)
async def plan_of_unit(stream: str, desk: AtDesk, outdoor: str = "") -> JSONResponse:
    """The plan of the latest visit; where there is none, of the first."""
    return _plan(desk, stream, latest(desk, stream), outdoor)


@router.get(
    "/units/{stream}/visits/{number}/plan",
    responses={**_REFUSED, **_NOT_THERE},
    response_model=Plan,
)
async def plan_of_visit(stream: str, number: int, desk: AtDesk, outdoor: str = "") -> JSONResponse:
    """The plan of one visit; `outdoor` as "38 degF", until the visit has read it."""
    return _plan(desk, stream, number, outdoor)


@router.post(
    "/units/{stream}/visits/{number}/readings",
    status_code=201,
    responses={**_REFUSED, **_NOT_THERE},
    response_model=Taken,
    openapi_extra=_READING_BODY,
)
async def take(stream: str, number: int, request: Request, desk: AtDesk) -> JSONResponse:
    """Keep a reading, and say at once what it decides."""
    bench = desk.bench(stream, number)
    try:
        entry = await _tree(request)
        event_id = str(entry.pop("event_id", None) or desk.new_id())
        # the same reading again is harmless; another one under a known id is a clash
        by = bench.visit.by or desk.by
        desk.register.do(stream, Note(number, "reading", entry), by=by, event_id=event_id)
    except (JobError, Refused) as error:
        return _refused(error)
    return JSONResponse(_taken(desk.judged(stream, number), event_id), 201)


async def _tree(request: Request) -> dict[str, Any]:
    """The JSON object of a body; a `JobError` where it is none."""
    text = decoded(await request.body())
    try:
        tree = json.loads(text)
    except RecursionError:
        raise whole("brackets are nested deeper than any job needs", place="body") from None
    except ValueError as error:
        raise whole(f"not JSON: {error}", place="body") from None
    if not isinstance(tree, dict):
        raise whole("not a JSON object: a job is an object with format = 1", place="body")
    return tree


def _refused(error: JobError | Refused) -> JSONResponse:
    faults = [
        {"place": fault.place, "line": fault.line, "message": fault.message}
        for fault in reasons(error)
    ]
    return JSONResponse({"faults": faults}, 422)


def _judged(job: Job, number: int | None) -> dict[str, Any]:
    visit = job.visit(number)
    before = job.visit(visit.number - 1) if visit.number > 1 else None
    return assess(job.machine(), visit, before=before).to_dict()


def _plan(desk: Desk, stream: str, number: int | None, outdoor: str) -> JSONResponse:
    try:
        weather = expected_weather(outdoor)
    except QuantityError as error:
        return _refused(whole(str(error), place="outdoor"))
    return JSONResponse(planned(desk, stream, number, weather).plan.to_dict())


def _taken(judged: Judged, event_id: str) -> dict[str, Any]:
    """The rows for which a kept reading counts."""
    bench = judged.bench
    entry = judged.state.entry(event_id)
    tree = entry.tree if entry else {}
    point, run = str(tree.get("point", "")), bench.canonical(str(tree.get("run", "")))
    return {
        "event_id": event_id,
        "version": judged.state.version,
        "verdict": bench.answer.verdict,
        "targets": [asdict(row) for row in bench.resting_on(point, run)],
    }
