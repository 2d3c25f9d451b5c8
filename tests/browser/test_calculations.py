"""A calculation as a person uses it: it answers while one types, and without script as well."""

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

from lightoff.calculations import CALCULATIONS
from lightoff.surfaces.calculating import example
from lightoff.surfaces.web.contexts.calculations import calculation_url
from lightoff.surfaces.words import Speech

from .conftest import DESK, PHONE
from .test_looks import BROKEN, COLOURED, FAULTS, SMALL, SPILLED, THEMES

Open = Callable[..., Page]
LOOKED_AT = [name for name, each in CALCULATIONS.items() if each.picture]
PATHS = {
    "list": "/calc",
    "faults": "/calc/clocking?dial=2+psi&turns=4",
    "out of range": "/calc/clocking?dial=2+ft3&turns=4&seconds=72+s&altitude=60000+ft",
    **{name: calculation_url(name, example(name), Speech()) for name in LOOKED_AT},
}
MET = """() => [...document.querySelectorAll(".picture svg")].flatMap((svg) => {
  // the labels that meet, by the boxes of the real font
  if (!svg.checkVisibility()) return [];
  const meet = (a, b) => a.x < b.x + b.width && b.x < a.x + a.width
    && a.y + 3 < b.y + b.height && b.y + 3 < a.y + a.height;
  const there = [...svg.querySelectorAll("text")].map((each) => [each.textContent, each.getBBox()]);
  return there.flatMap(([one, box], i) => there.slice(i + 1)
    .filter(([, other]) => meet(box, other)).map(([other]) => `${one} | ${other}`));
})"""


def test_it_answers_while_one_types_and_the_address_follows(opened: Open) -> None:
    page = opened("/calc/clocking")
    expect(page.locator("#answer")).to_contain_text("Still to fill in")
    page.evaluate("window.same = true")
    page.locator("#dial").fill("2")
    page.locator("#turns").fill("4")
    seconds = page.locator("#seconds")
    seconds.fill("72")
    expect(page.locator("#answer")).to_contain_text("MBH")
    before = page.locator("#answer .read").inner_text()
    seconds.press_sequentially("0")
    expect(page.locator("#answer .read")).not_to_have_text(before)
    expect(seconds).to_be_focused()
    expect(seconds).to_have_value("720")
    expect(page).to_have_url(re.compile(r"/calc/clocking\?dial=2\+ft3&turns=4&seconds=720\+s$"))
    assert page.evaluate("window.same")  # never loaded again
    page.reload()
    expect(seconds).to_have_value("720")


def test_a_unit_is_chosen_beside_the_number(opened: Open) -> None:
    page = opened("/calc/clocking?dial=2+ft3&turns=4&seconds=72+s", size=PHONE)
    before = page.locator("#answer .read").inner_text()
    page.locator("#seconds").fill("1.2")
    expect(page.locator("#answer .read")).not_to_have_text(before)
    page.get_by_label("Unit: Time for those turns").select_option("min")
    expect(page.locator("#answer .read")).to_have_text(before)
    page.get_by_role("radio", name="SI").check()
    expect(page.locator("#answer .read")).to_contain_text("kW")


def test_a_fault_is_told_at_its_field_while_one_types(opened: Open) -> None:
    page = opened("/calc/clocking?dial=2+ft3&turns=4&seconds=72+s")
    seconds = page.locator("#seconds")
    seconds.fill("seventy")
    expect(page.locator("#seconds-about")).to_contain_text("does not begin with a number")
    expect(seconds).to_have_value("seventy")
    expect(seconds).to_have_attribute("aria-invalid", "true")
    seconds.fill("70")
    expect(page.locator("#seconds-about")).to_have_count(0)
    expect(page.locator("#answer")).to_contain_text("MBH")


def test_it_works_without_script(opened: Open) -> None:
    page = opened("/calc", script=False)
    page.get_by_role("link", name=re.compile("^Input by clocking")).click()
    page.locator("#dial").fill("2")
    page.locator("#turns").fill("4")
    page.get_by_role("button", name="Work it out").click()
    expect(page.locator("#seconds-about")).to_contain_text("not given")
    page.locator("#seconds").fill("72")
    page.get_by_role("button", name="Work it out").click()
    expect(page.locator("#answer")).to_contain_text("MBH")
    expect(page.locator("math").first).to_be_visible()


def test_the_answer_stays_in_sight_on_a_phone_while_one_fills_the_form(opened: Open) -> None:
    page = opened("/calc/clocking?dial=2+ft3&turns=4&seconds=72+s", size=PHONE)
    page.locator("#altitude").scroll_into_view_if_needed()
    page.mouse.wheel(0, 300)
    expect(page.locator("#answer .read")).to_be_in_viewport()


@pytest.mark.parametrize("size", [DESK, PHONE], ids=["1280", "390"])
def test_axe_finds_nothing_and_nothing_spills_over(opened: Open, size: tuple[int, int]) -> None:
    page = opened("/", size=size)
    found = {}
    for name, path in PATHS.items():
        page.goto(path)
        for theme in THEMES:
            page.evaluate("(theme) => (document.documentElement.dataset.theme = theme)", theme)
            faults = page.evaluate(FAULTS, None if theme == "light" else COLOURED)
            faults += page.evaluate(MET)
            if page.evaluate(SPILLED):
                faults.append("spills over the side")
            if faults:
                found[f"{name}, {theme}"] = faults
    assert found == {}


def test_what_a_gloved_finger_taps_is_48_px_and_no_number_is_torn(opened: Open) -> None:
    page = opened("/", size=PHONE)
    found = {}
    for name, path in PATHS.items():
        page.goto(path)
        if wrong := page.evaluate(SMALL) + page.evaluate(BROKEN):
            found[name] = wrong[:5]
    assert found == {}
