"""What a technician does, in a real browser, as a person does it."""

import re
from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import Page, expect

from .conftest import EXAMPLES, PHONE

Open = Callable[..., Page]
Add = Callable[..., str]


def test_from_the_units_to_a_visit_and_back(opened: Open) -> None:
    page = opened("/")
    expect(page.locator("h1")).to_contain_text("not to be left running")
    page.get_by_role("link", name=re.compile("MAU-9")).first.click()
    expect(page.locator("h1")).to_contain_text("Not to be left running: manifold, furnace 1")
    page.get_by_role("link", name="Units").click()
    expect(page.locator("h1")).to_contain_text("units")


def test_a_reading_is_judged_while_it_is_typed_and_answered_when_kept(
    opened: Open, add: Add
) -> None:
    page = opened(f"/units/{add('two-furnaces-vfd')}/visits/1")
    page.get_by_label("Point", exact=True).select_option("train.2.1.manifold")
    expect(page.get_by_label("Instrument", exact=True)).to_have_value("gauge-1")
    page.get_by_label("Run", exact=True).select_option("high")
    value = page.get_by_label("Value", exact=True)
    value.fill("9.9")
    expect(page.locator("#preview")).to_contain_text("Would not conform: too high.")
    before = page.locator(".counts").inner_text()
    page.get_by_role("button", name="Keep this reading").click()
    expect(page.locator("#told")).to_contain_text("Does not conform: too high.")
    expect(page.locator("h1")).to_contain_text("Not to be left running")
    assert page.locator(".counts").inner_text() != before
    expect(value).to_have_value("")
    expect(value).to_be_focused()
    page.wait_for_timeout(400)  # longer than any try of the value just kept could take
    expect(page.locator("#preview")).to_have_text("")


def test_a_wrong_value_is_answered_in_a_sentence_and_stays(opened: Open, add: Add) -> None:
    page = opened(f"/units/{add('one-furnace-propane')}/visits/1", size=PHONE)
    value = page.get_by_label("Value", exact=True)
    value.fill("about 3")
    expect(page.locator("#preview")).to_contain_text("does not begin with a number")
    page.get_by_role("button", name="Keep this reading").click()
    expect(page.locator("#value-about")).to_contain_text("does not begin with a number")
    expect(value).to_have_value("about 3")
    expect(value).to_have_attribute("aria-invalid", "true")


def test_a_point_is_opened_typed_on_the_pad_and_put_right_with_a_reason(
    opened: Open, add: Add
) -> None:
    page = opened(f"/units/{add('two-furnaces-with-findings')}/visits/1", size=PHONE)
    page.get_by_role("link", name=re.compile("Valve outlet")).first.click()
    for key in ("4", ".", "6", "7"):
        page.get_by_role("button", name=key, exact=True).click()
    expect(page.locator("#value")).to_have_value("4.67")
    page.get_by_role("radio", name="mbar").check()
    expect(page.locator("#unit")).to_have_text("mbar")
    page.get_by_role("radio", name="in. w.c.").check()
    page.get_by_role("button", name="Delete the last figure").click()
    expect(page.locator("#preview")).to_contain_text("Would conform.")
    page.get_by_role("button", name="Keep this reading").click()
    expect(page.locator("#told")).to_contain_text("Conforms.")
    page.get_by_text("Correct", exact=True).first.click()
    fields = page.locator("details[open]").filter(has_text="Correct")
    fields.get_by_label("Value").fill("4.80 inwc")
    fields.get_by_role("button", name="Correct it").click()
    expect(page.locator("details[open]")).to_contain_text("no reason is given")
    fields = page.locator("details[open]").filter(has_text="Correct")
    expect(fields.get_by_label("Value")).to_have_value("4.80 inwc")
    fields.get_by_label("Reason").fill("misread the gauge")
    fields.get_by_role("button", name="Correct it").click()
    expect(page.locator(".past")).to_contain_text(re.compile("was 4.88.*: misread the gauge"))


def test_a_trip_is_proven_under_its_row(opened: Open, add: Add) -> None:
    page = opened(f"/units/{add('two-furnaces-with-findings')}/visits/1")
    row = page.locator("details.prove", has_text="High limit, furnace 2")
    row.locator("summary").click()
    row.get_by_role("group", name="Restarted as intended").get_by_label("yes").check()
    row.get_by_role("button", name="Keep").click()
    expect(page.locator("#told")).to_contain_text("Trip kept.")
    expect(row).to_contain_text("acted, and restarted only as intended")


def test_what_was_turned_marks_what_it_moved(opened: Open, add: Add) -> None:
    page = opened(f"/units/{add('two-furnaces-vfd')}/visits/1")
    page.get_by_text("Something was turned").click()
    form = page.locator("#adjustment")
    form.get_by_label("What was turned").select_option("train.1.1.manifold")
    form.get_by_label("To", exact=True).fill("3.25")
    form.get_by_role("button").click()
    expect(page.locator("#told")).to_contain_text("marked stale")
    expect(page.locator(".counts")).to_contain_text("stale")


def test_left_running_is_refused_with_its_sentence(opened: Open, add: Add) -> None:
    page = opened(f"/units/{add('two-furnaces-with-findings')}/visits/1")
    closing = page.locator("#closing")
    closing.get_by_label("running").check()
    closing.get_by_role("button").click()
    expect(closing).to_contain_text('the verdict is "not to be left running"')
    closing.get_by_label("off").check()
    closing.get_by_role("button").click()
    expect(page.get_by_text("This visit is closed")).to_be_visible()


def test_a_new_unit_from_a_file_and_every_fault_of_a_bad_one(opened: Open, tmp_path: Path) -> None:
    page = opened("/")
    bad = tmp_path / "bad.toml"
    good = EXAMPLES / "direct-drive-indoor.toml"
    bad.write_text(good.read_text(encoding="utf-8").replace('"direct"', '"chain"'))
    page.locator("input[type=file]").set_input_files(bad)
    page.get_by_role("button", name="Read the file").click()
    expect(page.locator(".file-faults")).to_contain_text("unit.drive.kind")
    page.locator("textarea").fill(good.read_text(encoding="utf-8"))
    page.get_by_role("button", name="Read the file").click()
    expect(page.locator("#rows")).to_be_visible()


def test_a_new_unit_typed_in_with_two_furnaces(opened: Open) -> None:
    page = opened("/new")
    page.get_by_label("Tag, as on the drawings").fill("MAU-77")
    page.get_by_label("Arrangement").select_option("blow-through")
    page.get_by_role("button", name="Add a furnace").click()
    expect(page.get_by_label("Tag, as on the drawings")).to_have_value("MAU-77")
    for label, value in (
        ("Supply volts", "460 V"), ("Motor output", "5 hp"), ("Full-load amps", "7 A"),
        ("Airflow", "4000 cfm"), ("Discharge set point", "70 degF"), ("Altitude", "300 ft"),
    ):  # fmt: skip
        page.get_by_label(label).fill(value)
    page.get_by_label("Phases").select_option("3")
    page.get_by_label("Drive *").select_option("belt")
    for furnace in (page.get_by_role("group", name=f"Furnace {n}") for n in (1, 2)):
        furnace.get_by_label("Gas").select_option("natural gas")
        furnace.get_by_label("Control").select_option("modulating")
        furnace.get_by_label("Input").fill("200 kBtu/h")
    page.get_by_label("Tag, as on the drawings").press("Enter")  # as the button at the end does
    expect(page.locator("[aria-invalid=true]")).to_have_count(1)
    page.get_by_label("Coldest design day").fill("-5 degF")
    page.get_by_role("button", name="Make the unit").click()
    expect(page.locator("h1")).to_have_text("Open the first visit")
    page.get_by_label("By").fill("A. Person")
    page.get_by_role("button", name="Open the visit").click()
    expect(page.locator("h1")).to_contain_text("things still to measure")


def test_the_theme_is_kept_from_page_to_page_without_a_flash(opened: Open, findings: str) -> None:
    page = opened("/")
    page.get_by_label("Theme").select_option("sun")
    assert page.evaluate("getComputedStyle(document.body).fontSize") == "18px"
    page.goto(findings, wait_until="commit")
    assert page.evaluate("document.documentElement.dataset.theme") == "sun"
    expect(page.get_by_label("Theme")).to_have_value("sun")
    page.get_by_label("Theme").select_option("")
    assert page.evaluate("document.documentElement.dataset.theme ?? 'none'") == "none"


def test_without_script_everything_is_read_and_a_reading_is_posted(opened: Open, add: Add) -> None:
    page = opened(f"/units/{add('two-furnaces-vfd')}/visits/1", script=False)
    expect(page.get_by_text("Theme")).to_be_hidden()
    page.get_by_label("Point", exact=True).select_option("gas.meter.seconds")
    page.get_by_label("Run", exact=True).select_option("high.1")
    page.get_by_label("Value", exact=True).fill("81 s")
    page.get_by_label("Turns in all").fill("3")
    page.get_by_role("button", name="Keep this reading").click()
    expect(page.locator("#told")).to_contain_text("Input, furnace 1")
    page.get_by_role("link", name="every row").click()
    page.get_by_role("link", name=re.compile("Fan speed")).first.click()
    expect(page.get_by_role("button", name="7", exact=True)).to_have_count(0)
    page.locator("#value").fill("nonsense")
    page.get_by_role("button", name="Keep this reading").click()
    expect(page.locator("#value-about")).to_contain_text("does not begin with a number")
    expect(page.locator("svg.chart").first).to_be_visible()


def test_a_reading_is_kept_by_keyboard_alone(opened: Open, add: Add) -> None:
    page = opened(f"/units/{add('two-furnaces-vfd')}/visits/1")
    page.keyboard.press("Tab")
    expect(page.get_by_text("Skip to the content")).to_be_focused()
    page.keyboard.press("Enter")
    for _ in range(12):
        if page.evaluate("document.activeElement.id") == "value":
            break
        page.keyboard.press("Tab")
    expect(page.locator("#value")).to_be_focused()
    page.keyboard.type("1")
    page.keyboard.press("Enter")
    expect(page.locator("#told")).to_be_visible()


def test_the_description_of_the_api_is_drawn_by_our_own_files(opened: Open) -> None:
    page = opened("/api/docs")
    expect(page.locator(".opblock")).to_have_count(13)
