"""Every page answers, in words of the catalogue, and says calmly what it cannot do."""

import re
from pathlib import Path

import pytest

import lightoff.surfaces.web as web
from lightoff.surfaces.words import has

TEMPLATES = sorted((Path(web.__file__).parent / "templates").glob("*.html"))
PAGE = 150_000  # bytes of a page without charts, at most
EXAMPLES = [
    "direct-drive-indoor",
    "one-furnace-propane",
    "three-furnaces-at-altitude",
    "two-furnaces-vfd",
    "two-furnaces-with-findings",
]


@pytest.mark.parametrize("example", EXAMPLES)
@pytest.mark.parametrize("view", ["", "?show=open", "?show=all", "?point=gas.supply&run=off"])
def test_the_page_of_a_visit_answers_whatever_is_asked_of_it(bench, example, view) -> None:
    for address in (bench.visit(example), bench.reopened(example)):
        answer = bench.browser.get(f"{address}{view}")
        assert answer.status_code == 200
        assert "Readings and proofs" in answer.text


@pytest.mark.parametrize("example", EXAMPLES)
def test_every_row_of_a_visit_leads_to_a_page(bench, example) -> None:
    address = bench.reopened(example)
    text = bench.browser.get(f"{address}?show=all").text
    links = sorted(set(re.findall(r'class="row" id="[^"]+" href="([^"]+)"', text)))
    assert len(links) > 20
    for link in links:
        answer = bench.browser.get(link.replace("&amp;", "&"))
        assert answer.status_code == 200, link
        assert "Limits" in answer.text


@pytest.mark.parametrize("example", EXAMPLES)
def test_every_number_of_the_model_opens(bench, text_of, example) -> None:
    """From the page of a point to what the model makes of it: by all readings, by the plate."""
    address = bench.visit(example)
    for point in ("fan.rpm", "airflow", "input.1", "rise.unit", "gas.supply", "efficiency.1"):
        page = bench.browser.get(f"{address}/points/{point}?run=high").text
        (there,) = re.findall(r'href="([^"]+/model/[^"]+)"', page)
        shown = bench.browser.get(there.replace("&amp;", "&"))
        assert shown.status_code == 200, there
        assert "The machine as its readings leave it" in shown.text
        assert len(shown.content) < PAGE, there
        bare = bench.browser.get(there.replace("&amp;", "&").replace("by=readings", "by=plate"))
        assert "By the plate alone, nothing being read yet" in text_of(bare)


def test_the_first_page_says_where_every_unit_stands(bench, text_of) -> None:
    text = text_of(bench.browser.get("/"))
    assert text.startswith("Six units. One not to be left running")
    for tag in ("MAU-1", "MAU-2", "MAU-3", "MAU-4", "MAU-7", "MAU-9"):
        assert tag in text
    assert "manifold, furnace 1, high fire, is 3.60 in. w.c.; at most 3.52 in. w.c." in text


def test_a_unit_without_a_visit_offers_to_open_the_first(bench, text_of) -> None:
    answer = bench.browser.get(f"/units/{bench.streams['plate-only']}")
    assert "Open the first visit" in text_of(answer)
    stream = bench.streams["plate-only"]
    opened = bench.browser.post(
        f"/units/{stream}/visits",
        {"purpose": "start-up", "by": "A. Person", "date": "2026-12-01", "symptom": "hunts"},
    )
    assert opened.url.path == f"/units/{stream}/visits/1"
    assert "things still to measure" in text_of(opened)
    assert bench.entries("plate-only", "symptom") == [{"what": "hunts"}]


def test_a_unit_leads_to_its_latest_visit(bench) -> None:
    answer = bench.browser.get(f"/units/{bench.streams['two-furnaces-vfd']}")
    assert answer.url.path == bench.visit("two-furnaces-vfd")


def test_the_report_is_one_link_away(bench) -> None:
    address = bench.visit("two-furnaces-vfd")
    assert f'href="{address}/report"' in bench.browser.get(address).text
    report = bench.browser.get(f"{address}/report")
    assert report.status_code == 200
    assert "<style" not in report.text
    assert "@font-face" in bench.browser.get("/report.css").text


@pytest.mark.parametrize(
    ("method", "path", "status"),
    [
        ("GET", "/nowhere", 404),
        ("GET", "/units/none", 404),
        ("GET", "/units/none/visits/1", 404),
        ("GET", "/units/none/visits/one", 404),
        ("GET", "/assets/../app.py", 404),
        ("GET", "/assets/nothing.css", 404),
        ("DELETE", "/", 405),
        ("POST", "/units/none/visits/1/entries/nonsense", 404),
    ],
)
def test_what_is_not_there_is_said_calmly(bench, method, path, status) -> None:
    answer = bench.browser.send(method, path)
    assert answer.status_code == status
    assert "<h1>" in answer.text
    assert "Traceback" not in answer.text


def test_no_visit_and_no_point_beyond_those_there_are(bench) -> None:
    address = bench.visit("one-furnace-propane")
    for path in (
        address.replace("/visits/1", "/visits/2"),
        address.replace("/visits/1", "/visits/0"),
        f"{address}/points/flue.3.o2",
        f"{address}/points/nonsense",
        f"{address}/model/nonsense",
        f"{address}/model/fan.rpm?run=nonsense",
        f"{address}/model/fan.rpm?run=off",
    ):
        assert bench.browser.get(path).status_code == 404


def test_an_unexpected_error_is_one_calm_sentence_and_a_line_in_the_log(bench, caplog) -> None:
    bench.register.units = None  # nothing works any more
    answer = bench.browser.get("/")
    assert answer.status_code == 500
    assert "Something went wrong here, not with what you did." in answer.text
    assert "TypeError" not in answer.text
    assert answer.headers["content-security-policy"]
    assert "GET / failed" in caplog.text


def test_no_page_carries_a_script_or_a_style_of_its_own() -> None:
    for template in TEMPLATES:
        text = template.read_text(encoding="utf-8")
        assert not re.search(r"<script(?![^>]*\bsrc=)", text), template.name
        assert not re.search(r"<style|\sstyle=|\son[a-z]+=|hx-on|js:", text), template.name


def test_every_sentence_a_template_says_is_in_the_catalogue() -> None:
    said = [
        name
        for template in TEMPLATES
        for call in re.findall(r"word\((.*?)\)", template.read_text(encoding="utf-8"))
        for name in re.findall(r"""["']([^"']+)["']""", call.split(",")[0])
    ]
    assert len(said) > 60
    assert [name for name in said if not has(name)] == []
