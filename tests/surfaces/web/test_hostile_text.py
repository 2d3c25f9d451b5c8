"""What a person typed is shown as text, wherever it appears."""

import tomllib

from .conftest import EXAMPLES

SCRIPT = "<script>alert('x')</script>\"'><img src=x onerror=alert(1)>"
FINDINGS = next(path for path in EXAMPLES if "findings" in path.stem)


def assert_harmless(page) -> None:
    assert page.status_code in (200, 422)
    assert "<script>alert" not in page.text
    assert "<img" not in page.text
    assert "onerror=alert(1)>" not in page.text


def test_every_free_text_of_a_job_is_escaped(bench) -> None:
    tree = tomllib.loads(FINDINGS.read_text(encoding="utf-8"))
    tree["unit"]["tag"] = tree["unit"]["serves"] = SCRIPT
    visit = tree["visit"][0]
    visit["by"] = visit["licence"] = visit["told"] = SCRIPT
    for reading in visit["reading"]:
        reading["note"] = reading["position"] = SCRIPT
    for each in visit["deficiency"]:
        each["what"] = each["waits_on"] = SCRIPT
    visit["deferred"] = [{"target": "thermal efficiency", "why": SCRIPT}]
    visit["symptom"] = [{"what": SCRIPT}]
    visit["joint"].append({"id": SCRIPT, "outcome": "leaks"})
    visit["setpoint"].append({"id": SCRIPT, "found": SCRIPT, "left": SCRIPT})
    visit["adjustment"].append(
        {"at": visit["adjustment"][0]["at"], "what": "wiring", "from": SCRIPT, "to": SCRIPT}
    )
    tree["instrument"][0]["id"] = SCRIPT
    for reading in visit["reading"]:
        if reading.get("instrument") == "gauge-1":
            reading["instrument"] = SCRIPT
    stream = bench.register.add_job(tree, by="test")
    base = f"/units/{stream}/visits/1"
    point = f"{base}/points/train.1.1.manifold?run=high"
    for path in ("/", f"{base}?show=all", point, f"{base}/report"):
        assert_harmless(bench.browser.get(path))
    bench.browser.post(f"{base}/reopen", {"reason": SCRIPT})
    for path in (f"{base}?show=all", point, f"{base}/taking?point=gas.supply"):
        assert_harmless(bench.browser.get(path))


def test_whatever_is_sent_back_to_be_put_right_is_escaped(bench) -> None:
    base = bench.reopened("two-furnaces-with-findings")
    sent = {"point": SCRIPT, "run": SCRIPT, "value": SCRIPT, "note": SCRIPT, "here": SCRIPT}
    del sent["here"]
    assert_harmless(bench.browser.post(f"{base}/readings", sent))
    assert_harmless(bench.browser.get(f"{base}/preview", params=sent))
    assert_harmless(bench.browser.post(f"{base}/entries/check", {"thing": SCRIPT, "row": SCRIPT}))
    assert_harmless(bench.browser.post("/new", {"unit.tag": SCRIPT, "design.airflow": SCRIPT}))
    assert_harmless(bench.browser.post("/new/file", {"text": SCRIPT}))
    assert_harmless(bench.browser.get("/?kept=" + SCRIPT))


def test_where_one_is_sent_after_a_form_is_ours(bench) -> None:
    base = bench.reopened("two-furnaces-with-findings")
    sent = {"thing": "covers.on", "outcome": "right", "row": "x\r\nLocation: http://evil.example"}
    answer = bench.browser.post(f"{base}/entries/check", sent, follow=False)
    assert answer.headers["location"].startswith(f"{base}?kept=")
    assert "evil" not in answer.headers["location"]
