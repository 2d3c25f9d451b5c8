"""What is proven, turned, put off and left open; and how a visit ends."""

import pytest

FINDINGS = "two-furnaces-with-findings"


def posted(entry: dict[str, str]) -> dict[str, str]:
    """The fields of a form: what the entry calls its id is a thing there."""
    return {"thing" if name == "id" else name: text for name, text in entry.items()}


@pytest.mark.parametrize(
    ("kind", "sent", "kept"),
    [
        ("check", {"id": "adjusters.sealed", "outcome": "right"},
         {"id": "adjusters.sealed", "outcome": "right"}),
        ("trip", {"id": "high limit", "furnace": "2", "acted": "yes", "restarted": "yes",
                  "value": "182", "seconds": "4.5"},
         {"id": "high limit", "furnace": 2, "acted": True, "restarted": True,
          "value": "182 degF", "seconds": 4.5}),
        ("trip", {"id": "disconnect", "acted": "no", "restarted": ""},
         {"id": "disconnect", "acted": False}),
        ("step", {"id": "purge", "furnace": "1", "seconds": "46 s"},
         {"id": "purge", "furnace": 1, "seconds": 46}),
        ("joint", {"id": "meter union", "furnace": "", "outcome": "tight", "how": "soap"},
         {"id": "meter union", "outcome": "tight", "how": "soap"}),
        ("decay", {"section": "roof main", "medium": "air", "start": "1.5", "end": "1.49 psi",
                   "minutes": "15", "isolated": "yes", "volume": "2"},
         {"section": "roof main", "medium": "air", "start": "1.5 psi", "end": "1.49 psi",
          "minutes": 15, "isolated": True, "volume": "2 ft3"}),
        ("deficiency", {"what": "hood seam", "severity": "note", "waits_on": "roofer"},
         {"what": "hood seam", "severity": "note", "waits_on": "roofer"}),
        ("deferred", {"target": "thermal efficiency", "furnace": "1", "why": "no traverse"},
         {"target": "thermal efficiency", "furnace": 1, "why": "no traverse"}),
        ("setpoint", {"id": "discharge", "found": "65", "left": "70 degF"},
         {"id": "discharge", "found": "65 degF", "left": "70 degF"}),
        ("symptom", {"what": "hunts", "furnace": ""}, {"what": "hunts"}),
        ("adjustment", {"what": "train.1.1.manifold", "run": "high", "from": "3.6", "to": "3.2",
                        "at": "2026-11-12T11:00"},
         {"what": "train.1.1.manifold", "run": "high", "from": "3.6 inwc", "to": "3.2 inwc",
          "at": "2026-11-12T11:00:00-06:00"}),
        ("adjustment", {"what": "wiring", "to": "two leads swapped", "at": "2026-11-12T11:00"},
         {"what": "wiring", "to": "two leads swapped", "at": "2026-11-12T11:00:00-06:00"}),
    ],
)  # fmt: skip
def test_an_entry_is_kept_as_the_job_file_has_it(bench, kind, sent, kept) -> None:
    address = bench.reopened(FINDINGS)
    answer = bench.browser.post(f"{address}/entries/{kind}", posted(sent))
    assert answer.status_code == 200, answer.text
    assert 'id="told"' in answer.text
    assert bench.entries(FINDINGS, kind)[-1] == kept


@pytest.mark.parametrize(
    ("kind", "sent", "sentence"),
    [
        ("step", {"id": "purge", "furnace": "1", "seconds": "soon"}, "write a number as"),
        ("trip", {"id": "high limit", "furnace": "1", "value": "hot"}, "does not begin"),
        ("decay", {"section": "main", "start": "1.5", "minutes": "15"}, "end is missing"),
        ("decay", {"section": "main", "medium": "oxygen", "start": "0.2", "end": "0.2",
                   "minutes": "15"}, "oxygen makes grease and sealant burn"),
        ("deficiency", {"what": "", "severity": "note"}, "what is missing"),
        ("adjustment", {"what": "vfd.hz", "to": "60 rpm", "at": "2026-11-12T11:00"},
         "a frequency is due"),
        ("adjustment", {"what": "vfd.hz", "to": "60", "at": ""}, "at is missing"),
    ],
)  # fmt: skip
def test_a_wrong_entry_is_answered_where_it_was_typed(bench, text_of, kind, sent, sentence) -> None:
    address = bench.reopened(FINDINGS)
    form = {"step": "row-purge-purge--1", "trip": "row-trip__high_limit-high_limit--1"}
    named = {
        **posted(sent),
        "row": form.get(kind, "row-tightness__decay---" if kind == "decay" else kind),
    }
    answer = bench.browser.post(f"{address}/entries/{kind}", named)
    assert answer.status_code == 422
    assert sentence in text_of(answer)
    for text in sent.values():
        if len(text) > 2 and kind not in ("adjustment",):
            assert text in answer.text


def test_what_an_adjustment_moved_is_told_to_be_taken_again(bench, text_of) -> None:
    address = bench.reopened("two-furnaces-vfd")
    before = text_of(bench.browser.get(address))
    assert "take again" not in before
    sent = {"what": "train.1.1.manifold", "run": "high", "from": "3.2", "to": "3.3",
            "at": "2026-12-01T09:00"}  # fmt: skip
    after = text_of(bench.browser.post(f"{address}/entries/adjustment", sent))
    assert "What it moved is marked stale" in after
    assert "stale, take again" in after


def test_an_entry_is_taken_back_with_a_reason(bench, text_of) -> None:
    address = bench.reopened(FINDINGS)
    place = bench.register.state(bench.streams[FINDINGS]).places["visit.1.adjustment.1"]
    url = f"{address}/entry/{place.id}/withdraw"
    refused = bench.browser.post(url, {"reason": ""})
    assert refused.status_code == 422
    assert "no reason is given" in text_of(refused)
    done = bench.browser.post(url, {"reason": "was not turned"})
    assert done.status_code == 200
    assert bench.entries(FINDINGS, "adjustment") == []


def test_only_a_reading_is_put_right_by_typing_it_again(bench) -> None:
    address = bench.reopened(FINDINGS)
    places = bench.register.state(bench.streams[FINDINGS]).places
    for place in ("visit.1", "visit.1.adjustment.1"):
        url = f"{address}/entry/{places[place].id}/correct"
        assert bench.browser.post(url, {"reason": "x"}).status_code == 404


def test_an_entry_of_nowhere_cannot_be_taken_back(bench) -> None:
    address = bench.reopened(FINDINGS)
    url = f"{address}/entry/00000000-0000-4000-8000-000000000001/withdraw"
    assert bench.browser.post(url, {"reason": "x"}).status_code == 404


def test_left_running_is_refused_while_the_verdict_forbids_it(bench, text_of) -> None:
    address = bench.reopened(FINDINGS)
    refused = bench.browser.post(f"{address}/close", {"left": "running", "told": "the foreman"})
    assert refused.status_code == 422
    assert 'the verdict is "not to be left running"' in text_of(refused)
    assert 'value="the foreman"' in refused.text
    done = bench.browser.post(f"{address}/close", {"left": "off", "told": "the foreman"})
    assert "Left off; told: the foreman." in text_of(done)
    assert bench.entries(FINDINGS, "reading")


def test_a_closed_visit_is_opened_again_only_with_a_reason(bench, text_of) -> None:
    address = bench.visit("two-furnaces-vfd")
    refused = bench.browser.post(f"{address}/reopen", {"reason": ""})
    assert refused.status_code == 422
    done = bench.browser.post(f"{address}/reopen", {"reason": "forgot a joint"})
    assert "Take a reading" in text_of(done)
    again = bench.browser.post(f"{address}/reopen", {"reason": "sent twice"})
    assert again.status_code == 200


def test_a_second_visit_carries_what_the_first_found(bench, text_of) -> None:
    stream = bench.streams["two-furnaces-vfd"]
    sent = {"purpose": "service", "by": "B. Person", "date": "2027-01-10"}
    page = bench.browser.post(f"/units/{stream}/visits", sent)
    assert page.url.path == f"/units/{stream}/visits/2"
    text = text_of(page)
    assert "Visit 2, service, 10 Jan 2027, B. Person · Visit 1" in text
    assert "at the visit of 2026-11-03, not asked for this time" in text
