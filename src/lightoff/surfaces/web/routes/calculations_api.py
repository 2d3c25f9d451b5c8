"""The calculations for programs: what there is, and the answer to what is sent."""

import json
from typing import Any

from fastapi import APIRouter, Request
from pydantic import BaseModel, Field
from starlette.responses import JSONResponse

from lightoff.calculations import CALCULATIONS, Calculation
from lightoff.job.text import decoded
from lightoff.quantity import LightoffError, System
from lightoff.surfaces.calculating import Fault, Typed, as_data, blank, example, filled
from lightoff.surfaces.calculating.sheet import InputShown
from lightoff.surfaces.web.routes.api import FaultOut, Faults
from lightoff.surfaces.web.routes.calculations import named
from lightoff.surfaces.words import Speech

router = APIRouter(prefix="/api/calculations", tags=["calculations"])

_NO_OBJECT = 'not a JSON object: write every input by its name, as {"seconds": "72 s"}'
UNITS = "units"  # the one name in a query that is no input


class InputOut(BaseModel):
    """One thing to send: a text with its unit, such as "2 ft3"; a bare number where it has none."""

    name: str
    label: str
    kind: str = Field(description="the kind of quantity; it says which units are understood")
    required: bool
    many: bool = Field(description="a list of values, or one text with commas")
    choices: list[str] = Field(description="the words it may be, where it is a word")
    default: Any = Field(description="what is assumed where it is left out [SI]; null if nothing")
    written: str = Field(description="right ways to write it")


class OutputOut(BaseModel):
    """One thing answered."""

    name: str
    label: str
    kind: str


class CalculationOut(BaseModel):
    """One calculation: the question it answers, what it asks and what it answers."""

    name: str
    title: str
    about: str
    inputs: list[InputOut]
    outputs: list[OutputOut]
    example: dict[str, str]


class Valued(BaseModel):
    """A value [SI] with its unit; a word or a list has none of its own."""

    value: Any
    unit: str


class Used(Valued):
    """An input as it was used; `assumed` where it is a default."""

    typed: str
    assumed: bool


class NoteOut(BaseModel):
    """Something to read beside the answer: what is not advice asks for care."""

    id: str
    sentence: str
    advice: bool


class TermOut(BaseModel):
    """One letter of an equation; not `in_range` where the formula does not hold for it."""

    symbol: str
    words: str
    value: float
    unit: str
    in_range: bool


class StepOut(BaseModel):
    """One equation of the working, in SI, with its source."""

    formula: str
    sentence: str
    equation: str
    numbers: str
    solved: bool
    terms: list[TermOut]
    value: float
    unit: str
    source: str


class AnswerOut(BaseModel):
    """The answer, with everything it rests on: the same as `lightoff calc --json` prints."""

    calculation: str
    title: str
    inputs: dict[str, Used]
    results: dict[str, Valued]
    notes: list[NoteOut]
    steps: list[StepOut]


_ANSWERS: dict[int | str, dict[str, Any]] = {
    404: {"model": Faults, "description": "no such calculation"},
    422: {"model": Faults, "description": "what is wrong, by input"},
}
_EXAMPLES = {name: tried for name in CALCULATIONS if (tried := example(name))}
_QUERY = {
    "parameters": [
        {
            "name": "inputs",
            "in": "query",
            "description": "every input by its own name; `units` is us or si, for the sentences",
            "style": "form",
            "explode": True,
            "schema": {"type": "object", "additionalProperties": {"type": "string"}},
            "example": next(iter(_EXAMPLES.values())),
        }
    ]
}
_BODY = {
    "requestBody": {
        "required": True,
        "description": "Every input by name.",
        "content": {
            "application/json": {
                "schema": {"type": "object", "title": "Inputs"},
                "examples": {name: {"value": typed} for name, typed in _EXAMPLES.items()},
            }
        },
    }
}


@router.get("", response_model=list[CalculationOut])
async def calculations() -> JSONResponse:
    """Every calculation: what it asks, and what it answers."""
    return JSONResponse([_told(each).model_dump() for each in CALCULATIONS.values()])


@router.get("/{name}", response_model=AnswerOut, responses=_ANSWERS, openapi_extra=_QUERY)
async def answer(name: str, request: Request) -> JSONResponse:
    """The answer to the inputs in the address."""
    typed = {key: text for key, text in request.query_params.items() if key != UNITS}
    return _answer(named(name), typed, request)


@router.post("/{name}", response_model=AnswerOut, responses=_ANSWERS, openapi_extra=_BODY)
async def answer_to(name: str, request: Request) -> JSONResponse:
    """The answer to the inputs in a JSON object."""
    calculation = named(name)
    try:
        typed = json.loads(decoded(await request.body()))
    except (LightoffError, ValueError, RecursionError):
        typed = None
    if not isinstance(typed, dict):
        return _refused((Fault("", _NO_OBJECT),))
    return _answer(calculation, typed, request)


def _answer(calculation: Calculation, typed: Typed, request: Request) -> JSONResponse:
    system: System = "si" if request.query_params.get(UNITS) == "si" else "us"
    sheet = filled(calculation, typed, Speech(system))
    return _refused(sheet.faults) if sheet.faults else JSONResponse(as_data(sheet))


def _refused(faults: tuple[Fault, ...]) -> JSONResponse:
    told = [FaultOut(place=each.place, line=None, message=each.message) for each in faults]
    return JSONResponse(Faults(faults=told).model_dump(), 422)


def _told(calculation: Calculation) -> CalculationOut:
    speech = Speech()
    sheet = blank(calculation, speech)
    asked = zip(sheet.inputs, calculation.inputs, strict=True)
    return CalculationOut(
        name=sheet.name,
        title=sheet.title,
        about=sheet.about,
        inputs=[_input(shown, each.default) for shown, each in asked],
        outputs=[
            OutputOut(name=each.name, label=speech.word(f"measure:{each.name}"), kind=each.kind)
            for each in calculation.outputs
        ],
        example=example(sheet.name),
    )


def _input(shown: InputShown, default: object) -> InputOut:
    return InputOut(
        name=shown.name,
        label=shown.label,
        kind=shown.kind,
        required=shown.required,
        many=shown.many,
        choices=[choice.word for choice in shown.choices],
        default=default,
        written=shown.hint,
    )
