"""The calculations for programs: the same answer as the command, every fault at its input."""

import json

import pytest
from jsonschema import Draft202012Validator

from lightoff.calculations import CALCULATIONS
from lightoff.surfaces.calculating import as_data, example, filled
from lightoff.surfaces.words import Speech

NAMES = sorted(CALCULATIONS)
HERE = "/api/calculations"


def test_every_calculation_is_listed_with_what_it_asks_and_answers(bench) -> None:
    listed = {each["name"]: each for each in bench.browser.get(HERE).json()}
    assert list(listed) == list(CALCULATIONS)
    for name, calculation in CALCULATIONS.items():
        told = listed[name]
        assert [each["name"] for each in told["inputs"]] == [i.name for i in calculation.inputs]
        assert [each["name"] for each in told["outputs"]] == [o.name for o in calculation.outputs]
        assert told["example"] == example(name)
        assert [each["required"] for each in told["inputs"]] == [
            each.required for each in calculation.inputs
        ]


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("system", ["us", "si"])
def test_it_answers_as_the_command_does(bench, name, system) -> None:
    own = as_data(filled(CALCULATIONS[name], example(name), Speech(system)))
    own = json.loads(json.dumps(own))
    got = bench.browser.get(f"{HERE}/{name}", params={**example(name), "units": system})
    assert got.status_code == 200
    assert got.json() == own
    sent = bench.browser.post(f"{HERE}/{name}?units={system}", json=example(name))
    assert sent.json() == own


@pytest.mark.parametrize("name", NAMES)
def test_the_answer_is_as_described(bench, name) -> None:
    described = bench.browser.get("/api/openapi.json").json()
    schema = {"$ref": "#/components/schemas/AnswerOut", "components": described["components"]}
    answer = bench.browser.post(f"{HERE}/{name}", json=example(name)).json()
    Draft202012Validator(schema).validate(answer)


def test_every_fault_has_its_input(bench) -> None:
    wrong = {"dial": "2 psi", "turns": "4", "colour": "red"}
    for answer in (
        bench.browser.get(f"{HERE}/clocking", params=wrong),
        bench.browser.post(f"{HERE}/clocking", json=wrong),
    ):
        assert answer.status_code == 422
        faults = {fault["place"]: fault["message"] for fault in answer.json()["faults"]}
        assert set(faults) == {"colour", "dial", "seconds"}
        assert '"2 psi" is a pressure' in faults["dial"]


@pytest.mark.parametrize("body", [b"", b"{", b"[]", b"\xff", b"1", b"[" * 99_999, b'{"dial": NaN}'])
def test_what_is_no_object_is_a_fault_too(bench, body) -> None:
    answer = bench.browser.post(f"{HERE}/clocking", content=body)
    assert answer.status_code == 422
    assert answer.json()["faults"][0]["message"]


def test_the_examples_of_the_description_are_tried_ones(bench) -> None:
    described = bench.browser.get("/api/openapi.json").json()
    post = described["paths"]["/api/calculations/{name}"]["post"]
    examples = post["requestBody"]["content"]["application/json"]["examples"]
    assert {name: each["value"] for name, each in examples.items()} == {
        name: example(name) for name in CALCULATIONS
    }
