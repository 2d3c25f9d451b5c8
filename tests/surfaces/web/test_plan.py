"""The page of a plan: reached from every page of a unit, and leading to what it asks for."""

import re
from html import unescape

import pytest

FINDINGS, BLANK = "two-furnaces-with-findings", "plate-only"


def links(text: str) -> list[str]:
    """Every address a page leads to."""
    return [unescape(each) for each in re.findall(r'href="([^"]+)"', text)]


def test_every_page_of_a_unit_leads_to_its_plan(bench) -> None:
    base = bench.visit(FINDINGS)
    for page in (base, f"{base}/points/gas.supply?run=off", f"/units/{bench.streams[BLANK]}"):
        shown = bench.browser.get(page)
        there = [link for link in links(shown.text) if link.endswith("/plan")]
        assert there, page
        assert bench.browser.get(there[0]).status_code == 200


@pytest.mark.parametrize(
    "example",
    ["one-furnace-propane", "direct-drive-indoor", "two-furnaces-vfd", FINDINGS,
     "three-furnaces-at-altitude"],
)  # fmt: skip
def test_the_plan_of_an_example(bench, text_of, example: str) -> None:
    shown = bench.browser.get(f"{bench.visit(example)}/plan")
    assert shown.status_code == 200
    text = text_of(shown)
    for title in ("What to carry", "Ready now", "What it should read"):
        assert title in text
    assert "{" not in text
    assert "None" not in text


def test_before_the_first_visit_there_is_a_plan_as_well(bench, text_of) -> None:
    stream = bench.streams[BLANK]
    text = text_of(bench.browser.get(f"/units/{stream}/plan"))
    assert "Site ready" in text
    assert "Roof edge" in text  # a caution beside the task that is ready
    assert "0 tasks done" in text
    assert bench.browser.get(f"/units/{stream}/visits/1/plan").status_code == 404


def test_the_plan_of_a_unit_is_that_of_its_latest_visit(bench, text_of) -> None:
    stream = bench.streams[FINDINGS]
    latest = text_of(bench.browser.get(f"/units/{stream}/plan"))
    assert latest == text_of(bench.browser.get(f"{bench.visit(FINDINGS)}/plan"))


def test_what_a_task_asks_for_is_a_link_to_where_it_is_recorded(bench) -> None:
    base = bench.reopened(FINDINGS)
    shown = bench.browser.get(f"{base}/plan").text
    there = {link for link in links(shown) if link.startswith(base)}
    assert f"{base}/points/train.1.1.manifold?run=high.1" in there  # past its limit: put right
    proofs = {link for link in there if "#row-trip" in link}
    assert proofs
    page = bench.browser.get(base).text
    assert all(f'id="{link.split("#")[1]}"' in page for link in proofs)
    for link in sorted(there):
        assert bench.browser.get(link).status_code == 200, link


def test_a_closed_visit_asks_for_nothing_any_more(bench) -> None:
    shown = bench.browser.get(f"{bench.visit(FINDINGS)}/plan").text
    assert not [link for link in links(shown) if "/points/" in link]


def test_within_the_page_what_waits_leads_to_what_it_waits_for(bench) -> None:
    shown = bench.browser.get(f"/units/{bench.streams[BLANK]}/plan").text
    anchors = {link[1:] for link in links(shown) if link.startswith("#task-")}
    assert len(anchors) > 20
    assert all(f'id="{anchor}"' in shown for anchor in anchors)


class TestWeather:
    def plan(self, bench, outdoor: str) -> str:
        shown = bench.browser.get(
            f"/units/{bench.streams[BLANK]}/plan", params={"outdoor": outdoor}
        )
        assert shown.status_code == 200
        return str(shown.text)

    def test_a_bare_number_is_taken_in_the_unit_beside_it(self, bench) -> None:
        assert "outdoors −5.0\u00a0°F" in self.plan(bench, "-5")
        assert "outdoors 14.0\u00a0°F" in self.plan(bench, "-10 degC")

    @pytest.mark.parametrize("typed", ["warm", "900", "5 ft", "<b>"])
    def test_what_is_no_temperature_is_told_at_its_field(self, bench, typed: str) -> None:
        text = self.plan(bench, typed)
        assert 'aria-invalid="true"' in text
        assert "for any weather" in text
        assert "<b>&" not in text

    def test_once_it_is_read_it_is_not_asked_for(self, bench) -> None:
        assert 'name="outdoor"' not in bench.browser.get(f"{bench.visit(FINDINGS)}/plan").text


class TestForPrograms:
    def test_the_plan_of_a_visit(self, bench) -> None:
        told = bench.browser.get(f"/api{bench.visit(FINDINGS)}/plan").json()
        assert (told["unit"], told["visit"]) == ("MAU-9", 1)
        same = bench.browser.get(f"/api/units/{bench.streams[FINDINGS]}/plan").json()
        assert told == same
        ready = [each["task"]["id"] for each in told["tasks"] if each["state"] == "ready"]
        assert "high limit, furnace 2" in ready

    def test_the_plan_of_a_job_that_is_sent(self, bench) -> None:
        stream = bench.streams[BLANK]
        job = bench.browser.get(f"/api/units/{stream}").json()
        cold = bench.browser.send("POST", "/api/plan", json=job, params={"outdoor": "0 degF"})
        assert cold.status_code == 200
        assert cold.json()["weather"] == {"air.outdoor.db": pytest.approx(255.372, abs=1e-3)}
        assert (
            cold.json()["windows"]
            != bench.browser.send("POST", "/api/plan", json=job).json()["windows"]
        )

    def test_what_is_wrong_is_said_with_its_place(self, bench) -> None:
        stream = bench.streams[BLANK]
        job = bench.browser.get(f"/api/units/{stream}").json()
        for params, place in (({"outdoor": "warm"}, "outdoor"), ({"visit": "3"}, "visit")):
            told = bench.browser.send("POST", "/api/plan", json=job, params=params)
            assert told.status_code == 422
            assert told.json()["faults"][0]["place"] == place
        assert bench.browser.send("POST", "/api/plan", json={}).status_code == 422
        assert bench.browser.get("/api/units/nobody/visits/1/plan").status_code == 404
        assert bench.browser.get(f"/api/units/{stream}/visits/0/plan").status_code == 404


def test_what_is_expected_leads_to_how_the_model_comes_to_it(bench, text_of) -> None:
    shown = bench.browser.get(f"/units/{bench.streams[BLANK]}/plan?outdoor=20").text
    numbers = [link for link in links(shown) if "/model/" in link]
    assert len(numbers) > 30
    for link in numbers:
        assert bench.browser.get(link).status_code == 200, link
    amps = next(link for link in numbers if "/model/motor.amps.a" in link)
    text = text_of(bench.browser.get(amps))
    assert "By the plate alone, nothing being read yet" in text
    assert "20.0 °F outdoors" in text
    assert "power the fan takes" in text
