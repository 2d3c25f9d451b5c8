"""The same answers for programs."""

import json
import tomllib

import pytest
from jsonschema import Draft202012Validator

import lightoff

from .conftest import EXAMPLES

FINDINGS = "two-furnaces-with-findings"


def as_json(example) -> dict:
    return json.loads(json.dumps(tomllib.loads(example.read_text(encoding="utf-8")), default=str))


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda path: path.stem)
def test_a_job_is_judged_as_the_library_judges_it(bench, example) -> None:
    answer = bench.browser.post("/api/judge", json=as_json(example))
    assert answer.status_code == 200
    own = lightoff.assess(lightoff.load(example)).to_dict()
    assert answer.json() == json.loads(json.dumps(own, default=str))


def test_nothing_judged_is_kept(bench) -> None:
    bench.browser.post("/api/judge", json=as_json(EXAMPLES[0]))
    assert len(bench.register.units()) == len(EXAMPLES)


def test_every_fault_of_a_job_has_its_place(bench) -> None:
    tree = as_json(EXAMPLES[0])
    tree["unit"]["motor"]["power"] = "15"
    del tree["site"]["altitude"]
    for path in ("/api/judge", "/api/units"):
        answer = bench.browser.post(path, json=tree)
        assert answer.status_code == 422
        faults = answer.json()["faults"]
        assert [fault["place"] for fault in faults] == ["unit.motor.power", "site.altitude"]
        assert all(set(fault) == {"place", "line", "message"} for fault in faults)


@pytest.mark.parametrize("body", [b"", b"{", b"[]", b"\xff", b"1", b'{"format":1}', b"[" * 99_999])
def test_what_is_no_job_is_faults_too(bench, body) -> None:
    for path in ("/api/judge", "/api/units"):
        answer = bench.browser.post(path, content=body)
        assert answer.status_code == 422
        assert answer.json()["faults"]


def test_a_visit_there_is_not_is_a_fault(bench) -> None:
    answer = bench.browser.post("/api/judge?visit=9", json=as_json(EXAMPLES[0]))
    assert answer.status_code == 422
    assert "there is no visit 9" in answer.json()["faults"][0]["message"]


def test_the_schema_is_one_and_holds_for_the_examples(bench) -> None:
    validator = Draft202012Validator(bench.browser.get("/api/schema").json())
    for example in EXAMPLES:
        validator.validate(as_json(example))


def test_a_unit_is_put_in_and_read_back(bench) -> None:
    tree = as_json(EXAMPLES[0])
    added = bench.browser.post("/api/units", json=tree)
    assert added.status_code == 201
    stream = added.json()["stream"]
    assert bench.browser.get(f"/api/units/{stream}").json()["unit"] == tree["unit"]
    listed = {unit["stream"]: unit for unit in bench.browser.get("/api/units").json()}
    assert listed[stream]["tag"] == tree["unit"]["tag"]
    answer = bench.browser.get(f"/api/units/{stream}/visits/1/answer").json()
    assert answer["verdict"] == lightoff.assess(lightoff.load(EXAMPLES[0])).verdict


def test_a_reading_is_kept_once_and_answered(bench) -> None:
    bench.reopened(FINDINGS)
    url = f"/api/units/{bench.streams[FINDINGS]}/visits/1/readings"
    sent = {
        "run": "high",
        "point": "train.1.1.manifold",
        "value": "3.2 inwc",
        "instrument": "gauge-1",
        "event_id": "00000000-0000-4000-8000-0000000000aa",
    }
    first = bench.browser.post(url, json=sent)
    assert first.status_code == 201
    body = first.json()
    assert body["event_id"] == sent["event_id"]
    assert {row["id"] for row in body["targets"]} >= {"manifold high", "manifold high limit"}
    again = bench.browser.post(url, json=sent)
    assert again.status_code == 201
    assert again.json()["version"] == body["version"]
    other = bench.browser.post(url, json={**sent, "value": "3.3 inwc"})
    assert other.status_code == 409
    wrong = bench.browser.post(url, json={**sent, "event_id": None, "value": "3.2"})
    assert wrong.status_code == 422
    assert wrong.json()["faults"][0]["place"] == "value"


def test_an_id_that_is_none_is_a_sentence(bench) -> None:
    bench.reopened(FINDINGS)
    url = f"/api/units/{bench.streams[FINDINGS]}/visits/1/readings"
    sent = {"run": "fan", "point": "fan.rpm", "value": "930 rpm", "event_id": "x"}
    answer = bench.browser.post(url, json=sent)
    assert answer.status_code == 422
    assert "no event id" in answer.json()["faults"][0]["message"]


@pytest.mark.parametrize(
    "path", ["/api/nowhere", "/api/units/none", "/api/units/none/visits/1/answer"]
)
def test_what_is_not_there_is_a_fault_in_json(bench, path) -> None:
    answer = bench.browser.get(path)
    assert answer.status_code == 404
    assert answer.json()["faults"][0]["message"]


def test_the_description_names_every_endpoint(bench) -> None:
    described = bench.browser.get("/api/openapi.json").json()
    assert set(described["paths"]) == {
        "/api/calculations",
        "/api/calculations/{name}",
        "/api/judge",
        "/api/plan",
        "/api/schema",
        "/api/units",
        "/api/units/{stream}",
        "/api/units/{stream}/plan",
        "/api/units/{stream}/visits/{number}/answer",
        "/api/units/{stream}/visits/{number}/plan",
        "/api/units/{stream}/visits/{number}/readings",
    }
    assert 'id="swagger"' in bench.browser.get("/api/docs").text
