"""A new unit, from a file or typed in: every fault in its place, and nothing typed is lost."""

import json
import tomllib

from lightoff.surfaces.web.plate import tree

from .conftest import EXAMPLES

TYPED = {
    "furnaces": "2",
    "leading": "2",
    "unit.tag": "MAU-40",
    "unit.serves": "press shop",
    "unit.arrangement": "draw-through",
    "unit.electrical.volts": "460 V",
    "unit.electrical.phases": "3",
    "unit.motor.power": "7.5 hp",
    "unit.motor.full_load_amps": "11 A",
    "unit.drive.kind": "belt",
    "unit.drive.vfd": "yes",
    "unit.furnace.1.gas": "natural gas",
    "unit.furnace.1.control": "two-stage",
    "unit.furnace.1.input": "300 kBtu/h",
    "unit.furnace.1.train.1.manifold_high": "3.5 inwc",
    "unit.furnace.2.gas": "natural gas",
    "unit.furnace.2.control": "modulating",
    "unit.furnace.2.input": "250 kBtu/h",
    "design.airflow": "7000 cfm",
    "design.discharge": "70 degF",
    "design.winter_outdoor": "5 degF",
    "site.altitude": "640 ft",
}


def test_a_unit_typed_in_is_a_unit_of_the_record(bench, text_of) -> None:
    page = bench.browser.post("/new", TYPED)
    assert page.status_code == 200
    assert "Open the first visit" in text_of(page)
    job = bench.register.job(page.url.path.removeprefix("/units/"))
    assert job.unit.tag == "MAU-40"
    assert [furnace.leading for furnace in job.unit.furnaces] == [False, True]
    assert job.tree["unit"]["furnace"][0]["train"] == [{"manifold_high": "3.5 inwc"}]
    assert job.tree["unit"]["drive"] == {"kind": "belt", "vfd": True}


def test_each_fault_stands_at_its_field_and_all_that_was_typed_stays(bench, text_of) -> None:
    wrong = {**TYPED, "unit.motor.power": "7.5", "design.airflow": "lots", "site.altitude": ""}
    page = bench.browser.post("/new", wrong)
    assert page.status_code == 422
    text = text_of(page)
    for sentence in ('"7.5" has no unit', '"lots" does not begin with a number', "Needed, such as"):
        assert sentence in text
    for name, value in wrong.items():
        if name.startswith(("unit.", "design.")) and " " in value:
            assert value in page.text, name
    assert page.text.count('aria-invalid="true"') == 3
    assert len(bench.register.units()) == len(EXAMPLES)


def test_furnaces_are_added_and_removed_without_script(bench) -> None:
    more = bench.browser.post("/new", {**TYPED, "add": "furnace"})
    assert more.status_code == 200
    assert 'name="unit.furnace.3.gas"' in more.text
    assert 'value="300 kBtu/h"' in more.text
    assert 'value="add"' not in more.text
    fewer = bench.browser.post("/new", {**TYPED, "remove": "1"})
    assert 'name="unit.furnace.2.gas"' not in fewer.text
    assert 'name="unit.furnace.1.input" value="250 kBtu/h"' in fewer.text
    assert 'name="leading" value="1" checked' in fewer.text


def test_fields_that_are_none_of_the_form_are_left_alone() -> None:
    hostile = {**TYPED, "unit.motor": "x", "unit.furnace.9.gas": "y", "__proto__": "z"}
    assert tree(hostile, 2) == tree(TYPED, 2)


def test_the_same_form_sent_twice_makes_one_unit(bench) -> None:
    sent = {**TYPED, "event_id": "00000000-0000-4000-8000-00000000beef"}
    first, second = bench.browser.post("/new", sent), bench.browser.post("/new", sent)
    assert first.url == second.url
    assert len(bench.register.units()) == len(EXAMPLES) + 1


def test_a_job_file_is_read_and_leads_to_its_latest_visit(bench, text_of) -> None:
    for example in EXAMPLES:
        text = example.read_bytes()
        as_json = json.dumps(tomllib.loads(text.decode()), default=str).encode()
        for name, data in ((example.name, text), ("job.json", as_json)):
            page = bench.browser.post("/new/file", {"event_id": ""}, files={"file": (name, data)})
            assert page.status_code == 200, name
            assert page.url.path.startswith("/units/")


def test_every_fault_of_a_file_is_told_with_its_line_and_the_text_can_be_put_right(
    bench, text_of
) -> None:
    good = EXAMPLES[0].read_text(encoding="utf-8")
    bad = good.replace('kind = "direct"', 'kind = "chain"').replace(' hp"', '"', 1)
    page = bench.browser.post("/new/file", {}, files={"file": ("job.toml", bad.encode())})
    assert page.status_code == 422
    text = text_of(page)
    line = bad[: bad.index('kind = "chain"')].count("\n") + 1
    assert f"line {line} unit.drive.kind" in text
    assert "unit.motor.power" in text
    assert "<textarea" in page.text
    assert len(bench.register.units()) == len(EXAMPLES)
    mended = bench.browser.post("/new/file", {"text": good})
    assert mended.status_code == 200


def test_what_is_no_job_at_all_is_said_in_a_sentence(bench, text_of) -> None:
    files = {
        "nothing.toml": b"",
        "binary.toml": b"\xff\xfe\x00\x01",
        "broken.json": b"{",
        "deep.json": b"[" * 100_000,
        "list.json": b"[1]",
    }
    for name, data in files.items():
        page = bench.browser.post("/new/file", {"event_id": "a"}, files={"file": (name, data)})
        assert page.status_code == 422, name
        assert "Nothing was kept" in text_of(page)
