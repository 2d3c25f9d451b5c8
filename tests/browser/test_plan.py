"""The plan in a real browser: read without script, followed to where a reading is taken."""

from collections.abc import Callable

from playwright.sync_api import Page, expect

from .conftest import PHONE

Open = Callable[..., Page]


def test_without_script_a_coarse_gauge_and_what_waits_unfold(opened: Open, findings: str) -> None:
    page = opened(f"{findings}/plan", script=False)
    dial = page.locator(".gear > li", has_text="dial-1")
    expect(dial.get_by_text("Manifold, low, furnace 1")).to_be_hidden()
    dial.locator("summary").click()
    expect(dial.get_by_text("Manifold, low, furnace 1")).to_be_visible()
    step = page.locator("#waiting details", has_text="Before leaving")
    step.locator("summary").click()
    expect(step.get_by_text("Handover")).to_be_visible()


def test_from_a_task_to_the_reading_it_asks_for(opened: Open, findings: str) -> None:
    page = opened(f"{findings}/plan", size=PHONE)
    page.get_by_role("link", name="Ready now").click()
    task = page.locator(".task", has_text="Train pressures, furnace 1")
    expect(task.get_by_text("Small turns")).to_be_visible()  # the caution beside it
    task.get_by_role("link", name="Manifold, furnace 1").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Manifold")
    expect(page.locator("#value")).to_be_visible()


def test_a_cautions_text_is_beside_its_task_on_a_wide_screen(opened: Open, findings: str) -> None:
    page = opened(f"{findings}/plan")
    task = page.locator(".task").first
    words, care = (task.locator("> div").nth(n).bounding_box() for n in (0, 1))
    assert words is not None
    assert care is not None
    assert care["x"] > words["x"] + words["width"] - 1
    assert abs(care["y"] - words["y"]) < 2


def test_the_weather_of_the_day_is_asked_for_and_moves_the_discharge(
    opened: Open, add: Callable[..., str]
) -> None:
    page = opened(f"/units/{add('plate-only')}/plan", script=False)
    row = page.locator(".read", has_text="Discharge temperature")
    before = row.locator(".rd").inner_text()
    page.get_by_label("Outdoors on the day").fill("0")
    page.get_by_role("button", name="Show").click()
    expect(page.get_by_text("outdoors 0.0 °F")).to_be_visible()
    assert row.locator(".rd").inner_text() != before
