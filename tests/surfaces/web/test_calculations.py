"""The calculations as pages: they answer what is typed, and say what they cannot use."""

import re

import pytest

from lightoff.calculations import CALCULATIONS
from lightoff.quantity import KINDS
from lightoff.surfaces.calculating import example, filled
from lightoff.surfaces.web.contexts.asked import asked_of
from lightoff.surfaces.web.contexts.calculations import TOPICS, calculation_url
from lightoff.surfaces.web.contexts.pictures import DRAWN
from lightoff.surfaces.words import Speech

NAMES = sorted(CALCULATIONS)
CLOCKING = {"dial": "2 ft3", "turns": "4", "seconds": "72 s"}


def opened(bench, name, system="us", **typed):
    return bench.browser.get(calculation_url(name, typed, Speech(system)))


def test_every_calculation_stands_under_its_topic(bench, text_of) -> None:
    named = [name for names in TOPICS.values() for name in names]
    assert sorted(named) == NAMES
    text = bench.browser.get("/calc").text
    assert [text.index(f'href="/calc/{name}"') for name in named] == sorted(
        text.index(f'href="/calc/{name}"') for name in named
    )
    assert "calc:" not in text_of(bench.browser.get("/calc"))


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("system", ["us", "si"])
def test_an_example_is_answered_and_worked_out(bench, text_of, name, system) -> None:
    answer = opened(bench, name, system, **example(name))
    assert answer.status_code == 200
    text = text_of(answer)
    sheet = filled(CALCULATIONS[name], example(name), Speech(system))
    assert sheet.results[0].number in text
    assert answer.text.count('display="block"') == len(sheet.steps)
    for step in sheet.steps:
        assert " ".join(step.source.split()) in text
    assert not re.search(r"\b(calc|measure|word|sheet|calc-form|picture):", text)


@pytest.mark.parametrize("name", NAMES)
def test_without_any_input_it_says_what_it_waits_for(bench, text_of, name) -> None:
    answer = opened(bench, name)
    assert answer.status_code == 200
    waits = any(each.required for each in CALCULATIONS[name].inputs)
    assert ("Still to fill in" in text_of(answer)) == waits
    assert 'class="read' not in answer.text
    assert "fault" not in answer.text


@pytest.mark.parametrize("name", NAMES)
def test_what_is_typed_stays_and_is_in_the_link(bench, name) -> None:
    calculation = CALCULATIONS[name]
    typed = asked_of(calculation, example(name)).typed
    text = opened(bench, name, **typed).text
    link = re.search(r'data-link="([^"]+)"', text)
    assert link is not None
    again = bench.browser.get(link[1].replace("&amp;", "&")).text
    assert re.findall(r'class="read.*', again) == re.findall(r'class="read.*', text)


def test_a_bare_number_is_taken_in_the_unit_beside_it(bench) -> None:
    query = {"dial": "2", "dial.unit": "ft3", "turns": "4", "seconds": "1.2", "seconds.unit": "min"}
    bare = bench.browser.get("/calc/clocking", params=query)
    written = opened(bench, "clocking", **CLOCKING)
    assert re.findall(r'class="read.*', bare.text) == re.findall(r'class="read.*', written.text)
    assert "seconds=1.2+min" in bare.text
    assert '<option value="min" selected>' in bare.text


def test_the_same_in_si_is_told_in_si(bench, text_of) -> None:
    answer = opened(bench, "clocking", "si", **CLOCKING)
    assert " kW" in text_of(answer)
    assert '<option value="ft3" selected>' in answer.text
    assert "units=si" in answer.text


def test_a_default_is_said_to_be_assumed(bench, text_of) -> None:
    text = text_of(opened(bench, "clocking", **CLOCKING))
    assert "Assumed Heating value, gross 1031 Btu/ft³" in text
    given = text_of(opened(bench, "clocking", **CLOCKING, heating_value="1010 Btu/ft3"))
    assert "Assumed Heating value" not in given


def test_a_fault_is_a_sentence_at_its_field_and_nothing_is_lost(bench, text_of) -> None:
    answer = opened(bench, "clocking", dial="2 ft3", turns="4", seconds="7x")
    text = text_of(answer)
    assert 'name="seconds" value="7x"' in answer.text
    assert '"x" in "7x" is not a known unit' in text
    assert "No answer: see what is marked in the form." in text
    assert 'id="seconds-about"' in answer.text
    assert 'name="turns" value="4"' in answer.text


def test_a_blank_is_marked_when_the_form_is_sent_and_not_while_one_types(bench) -> None:
    url = calculation_url("clocking", {"dial": "2 ft3"}, Speech())
    assert 'id="turns-about"' in bench.browser.get(url).text
    typing = bench.browser.get(url, headers={"hx-request": "true"})
    assert 'id="turns-about"' not in typing.text
    assert "<html" not in typing.text


def test_a_number_out_of_range_is_said_beside_it(bench, text_of) -> None:
    answer = opened(bench, "clocking", **CLOCKING, altitude="60000 ft")
    assert '<span class="out">' in answer.text
    assert "range" in text_of(answer)


def test_what_is_hostile_is_only_text(bench) -> None:
    for nasty in ('"><script>alert(1)</script>', "{{ 7*7 }}", "\x00", "9" * 5000, "½½", "%", "§"):
        answer = bench.browser.get("/calc/clocking", params={**CLOCKING, "seconds": nasty})
        assert answer.status_code == 200
        assert "<script>alert" not in answer.text
    strange = {"units": "metric", "nothing": "1", "seconds.unit": "psi"}
    assert bench.browser.get("/calc/clocking", params={**CLOCKING, **strange}).status_code == 200


def test_there_is_a_link_to_paper_and_it_is_a_pdf(bench) -> None:
    text = opened(bench, "clocking", **CLOCKING).text
    link = re.search(r'href="(/calc/clocking\.pdf[^"]+)"', text)
    assert link is not None
    paper = bench.browser.get(link[1].replace("&amp;", "&"))
    assert paper.headers["content-type"] == "application/pdf"
    assert paper.content.startswith(b"%PDF")


def test_paper_without_an_answer_leads_back_to_the_form(bench) -> None:
    answer = bench.browser.get("/calc/clocking.pdf?dial=2+ft3")
    assert answer.url.path == "/calc/clocking"


def test_no_calculation_beyond_those_there_are(bench) -> None:
    for path in ("/calc/nothing", "/calc/nothing.pdf", "/api/calculations/nothing"):
        assert bench.browser.get(path).status_code == 404


def test_every_picture_a_calculation_names_is_drawn(bench) -> None:
    assert {each.picture for each in CALCULATIONS.values()} - {None} == set(DRAWN)
    for name, calculation in CALCULATIONS.items():
        text = opened(bench, name, **example(name)).text
        assert ('class="card picture"' in text) == (calculation.picture is not None), name


def test_every_kind_asked_for_is_known() -> None:
    for calculation in CALCULATIONS.values():
        assert {each.kind for each in calculation.inputs} <= set(KINDS), calculation.name
