"""A reading is answered at once, kept once, and put right with a reason."""

import re
from datetime import timedelta

import pytest

from .conftest import AFTER

FINDINGS = "two-furnaces-with-findings"
MANIFOLD = {"point": "train.1.1.manifold", "run": "high", "instrument": "gauge-1"}


def test_a_reading_kept_is_answered_with_its_decision(bench, text_of) -> None:
    address = bench.reopened(FINDINGS)
    answer = bench.browser.post(f"{address}/readings", {**MANIFOLD, "value": "3.20"})
    assert answer.status_code == 200
    told = text_of(answer)
    # furnace 1 alone was read at 3.60 and nothing was turned since
    assert re.search(r"Undecided\. Manifold, furnace 1, high fire: .* \(read as 3\.20\)", told)
    assert "all other readings together say 3.60 in. w.c." in told
    kept = bench.entries(FINDINGS, "reading")[-1]
    assert kept == {**MANIFOLD, "value": "3.20 inwc", "at": AFTER.isoformat()}


def test_a_reading_is_kept_with_the_unit_it_was_typed_in(bench) -> None:
    address = bench.reopened(FINDINGS)
    bench.browser.post(f"{address}/readings", {**MANIFOLD, "value": "797 Pa"})
    bench.browser.post(f"{address}/readings", {**MANIFOLD, "value": "8.0", "unit": "mbar"})
    values = [entry["value"] for entry in bench.entries(FINDINGS, "reading")[-2:]]
    assert values == ["797 Pa", "8.0 mbar"]


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ({"value": "abc"}, "“abc” does not begin with a number"),
        ({"value": "3.5 kg"}, "a pressure is due"),
        ({"value": ""}, "needs its value"),
        ({"value": "3.5", "run": "hihg"}, "is not a run of this unit"),
        ({"value": "3.5", "point": "nonsense"}, "is not a point"),
        ({"value": "3.5", "instrument": "gauge-99"}, "is not a declared instrument"),
        ({"value": "4", "point": "flue.1.o2", "run": "fan"}, "does not fire in run"),
    ],
)
def test_wrong_input_is_answered_in_a_sentence_and_nothing_typed_is_lost(
    bench, text_of, typed, sentence
) -> None:
    address = bench.reopened(FINDINGS)
    before = len(bench.entries(FINDINGS, "reading"))
    sent = {**MANIFOLD, "note": "doors on", "position": "port 2", **typed}
    answer = bench.browser.post(f"{address}/readings", sent)
    assert answer.status_code == 422
    assert sentence.replace("“", '"').replace("”", '"') in text_of(answer)
    for kept in ("doors on", "port 2", sent["value"]):
        assert f'value="{kept}"' in answer.text
    assert len(bench.entries(FINDINGS, "reading")) == before


def test_the_same_form_sent_twice_is_kept_once(bench, text_of) -> None:
    address = bench.reopened(FINDINGS)
    page = bench.browser.get(address).text
    event_id = re.search(r'id="taking".*?name="event_id" value="([^"]+)"', page, re.DOTALL)[1]
    before = len(bench.entries(FINDINGS, "reading"))
    sent = {**MANIFOLD, "value": "3.20", "event_id": event_id}
    first = bench.browser.post(f"{address}/readings", sent)
    second = bench.browser.post(f"{address}/readings", sent)
    assert first.status_code == second.status_code == 200
    assert first.url == second.url
    assert len(bench.entries(FINDINGS, "reading")) == before + 1


def test_after_a_reading_the_form_goes_on_to_the_next_point_of_the_run(bench) -> None:
    bench.browser.post(
        f"/units/{bench.streams['plate-only']}/visits", {"purpose": "start-up", "by": "A"}
    )
    address = bench.visit("plate-only")
    sent = {"point": "power.volts.ab", "run": "fan", "value": "460"}
    answer = bench.browser.post(f"{address}/readings", sent)
    assert '<option value="power.volts.bc" selected>' in answer.text
    assert '<option value="fan" selected>' in answer.text


def test_what_is_being_typed_is_judged_before_it_is_kept(bench) -> None:
    address = bench.reopened(FINDINGS)
    version = bench.register.state(bench.streams[FINDINGS]).version
    high = bench.browser.get(f"{address}/preview", params={**MANIFOLD, "value": "3.95"}).text
    assert "Would not conform: too high." in high
    fine = bench.browser.get(f"{address}/preview", params={**MANIFOLD, "value": "3.2"}).text
    assert "Would stay undecided" in fine
    wrong = bench.browser.get(f"{address}/preview", params={**MANIFOLD, "value": "3.2 kg"}).text
    assert "a pressure is due" in wrong
    nothing = bench.browser.get(f"{address}/preview", params=MANIFOLD).text
    assert nothing.strip() == ""
    assert bench.register.state(bench.streams[FINDINGS]).version == version


def test_a_slip_that_would_explain_the_value_is_named(bench, text_of) -> None:
    address = bench.reopened(FINDINGS)
    sent = {"point": "gas.supply", "run": "high", "value": "75 inwc", "instrument": "gauge-1"}
    answer = bench.browser.get(f"{address}/preview", params=sent).text
    assert "kept as typed" in answer


def test_the_form_of_another_point_has_its_runs_units_and_instruments(bench) -> None:
    address = bench.reopened(FINDINGS)
    form = bench.browser.get(f"{address}/taking", params={"point": "flue.1.o2", "run": "fan"}).text
    assert '<option value="fan"' not in form
    assert '<option value="high"' in form
    assert "flue-1, analyser" in form
    assert ">%</span>" in form


def test_a_meter_is_read_with_its_dial_and_its_turns(bench) -> None:
    address = bench.reopened(FINDINGS)
    sent = {"point": "gas.meter.seconds", "run": "high.1", "value": "75", "instrument": "watch-1"}
    bench.browser.post(f"{address}/readings", {**sent, "dial": "2", "revolutions": "3"})
    kept = bench.entries(FINDINGS, "reading")[-1]
    assert (kept["value"], kept["dial"], kept["revolutions"]) == ("75 s", "2 ft3", 3)


def test_a_traverse_is_read_by_its_pressures(bench) -> None:
    address = bench.reopened(FINDINGS)
    sent = {
        "point": "duct.traverse", "run": "high", "instrument": "gauge-2", "shape": "rectangular",
        "width": "36", "height": "24 in", "pressures": "0.101\n0.110 inwc\r\n0.095",
    }  # fmt: skip
    answer = bench.browser.post(f"{address}/readings", sent)
    assert answer.status_code == 200
    assert bench.entries(FINDINGS, "reading")[-1]["traverse"] == {
        "shape": "rectangular", "width": "36 in", "height": "24 in",
        "pressures": ["0.101 inwc", "0.110 inwc", "0.095 inwc"],
    }  # fmt: skip


def test_a_clock_behind_the_visit_puts_no_reading_before_older_ones(make) -> None:
    bench = make(lambda: AFTER - timedelta(days=400))
    address = bench.reopened(FINDINGS)
    stale = {"point": "train.2.1.manifold", "run": "high.2", "value": "3.50"}
    answer = bench.browser.post(f"{address}/readings", stale)
    kept = bench.entries(FINDINGS, "reading")[-1]
    assert "at" not in kept
    assert kept["state"] == "as left"
    row = re.search(r'id="row-manifold_high-train_2_1_manifold-high_2-2".*?</a>', answer.text, re.S)
    assert "stale" not in row[0]


def test_a_reading_is_put_right_only_with_a_reason_and_says_what_it_was(bench, text_of) -> None:
    address = bench.reopened(FINDINGS)
    point = f"{address}/points/train.1.1.manifold?run=high"
    entry = re.search(r"/entry/([0-9a-f-]+)/correct", bench.browser.get(point).text)[1]
    url = f"{address}/entry/{entry}/correct"
    refused = bench.browser.post(url, {"value": "3.10", "reason": " "})
    assert refused.status_code == 422
    assert "no reason is given" in text_of(refused)
    assert 'value="3.10"' in refused.text
    done = bench.browser.post(url, {"value": "3.10", "reason": "read the wrong gauge"})
    assert done.status_code == 200
    assert "was 3.60 in. w.c.: read the wrong gauge" in text_of(done)
    assert bench.register.state(bench.streams[FINDINGS]).entry(entry).tree["value"] == "3.10 inwc"


def test_a_reading_taken_back_stays_to_be_seen(bench, text_of) -> None:
    address = bench.reopened(FINDINGS)
    point = f"{address}/points/train.1.1.manifold?run=high"
    entry = re.search(r"/entry/([0-9a-f-]+)/withdraw", bench.browser.get(point).text)[1]
    done = bench.browser.post(f"{address}/entry/{entry}/withdraw", {"reason": "another unit"})
    assert "taken back, another unit" in text_of(done)
    assert bench.register.state(bench.streams[FINDINGS]).entry(entry).withdrawn


def test_a_reading_from_the_page_of_its_point_stays_there(bench) -> None:
    address = bench.reopened(FINDINGS)
    sent = {**MANIFOLD, "here": MANIFOLD["point"]}
    kept = bench.browser.post(f"{address}/readings", {**sent, "value": "3.20"})
    assert kept.url.path == f"{address}/points/train.1.1.manifold"
    wrong = bench.browser.post(f"{address}/readings", {**sent, "value": "x"})
    assert wrong.status_code == 422
    assert 'data-key="7"' in wrong.text


def test_a_closed_visit_takes_no_reading(bench, text_of) -> None:
    address = bench.visit(FINDINGS)
    assert "Keep this reading" not in bench.browser.get(address).text
    answer = bench.browser.post(f"{address}/readings", {**MANIFOLD, "value": "3.2"})
    assert answer.status_code == 422
