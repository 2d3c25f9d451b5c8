"""Readable by everyone, in every theme, at both sizes: axe finds nothing, nothing spills over."""

import json
import urllib.request
from collections.abc import Callable

import pytest
from playwright.sync_api import Page

from .conftest import DESK, PHONE

Open = Callable[..., Page]
THEMES = ("light", "dark", "sun")
COLOURED = ["color-contrast", "target-size", "link-in-text-block"]  # rules that a theme can break

FAULTS = """async (rules) => {
  const only = rules ? { runOnly: { type: "rule", values: rules } } : {};
  const found = await axe.run({ exclude: ["#swagger"] }, only);
  return found.violations.map((each) =>
    `${each.id}: ${each.nodes.slice(0, 3).map((node) => node.html.slice(0, 160)).join(" | ")}`);
}"""
SPILLED = "document.documentElement.scrollWidth > innerWidth"
SMALL = """() => [...document.querySelectorAll("a, button, input, select, summary")]
  .filter((each) => each.checkVisibility({ visibilityProperty: true }))
  .filter((each) => !each.closest(".sr, .skip, p, .crumb, .told, .seg, .tick, .foot"))
  .map((each) => [each.getBoundingClientRect().height, each.outerHTML.slice(0, 90)])
  .filter(([height]) => height > 0 && height < 47.5)"""
BROKEN = """() => {
  // a number and its unit on two lines: the range over both has two boxes at different heights
  const unit = /[\\d] (in\\. w\\.c\\.|MBH|rpm|cfm|°F|ppm|V|A|Hz|%)(?!\\w)/;
  const walk = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT);
  const torn = [];
  for (let text; (text = walk.nextNode()); )
    if (unit.test(text.data) && !text.parentElement.closest("svg")) torn.push(text.data.trim());
  return torn;
}"""


@pytest.fixture
def pages(address: str, findings: str, add: Callable[..., str]) -> dict[str, str]:
    """Every kind of page, once."""
    with urllib.request.urlopen(f"{address}/api/units", timeout=10) as answer:
        closed = next(f"/units/{unit['stream']}" for unit in json.load(answer) if unit["visits"])
    return {
        "units": "/",
        "visit": findings,
        "plan": f"{findings}/plan",
        "first plan": f"/units/{add('plate-only')}/plan",
        "closed": closed,
        "point": f"{findings}/points/train.1.1.manifold?run=high",
        "worked out": f"{findings}/points/input.1?run=high.1",
        "the model's": f"{findings}/model/air.discharge.db?run=high",
        "traverse": f"{findings}/points/duct.traverse?run=fan",
        "new": "/new",
        "first visit": f"/units/{add('plate-only')}",
        "nowhere": "/nowhere",
        "docs": "/api/docs",
    }


@pytest.mark.parametrize("size", [DESK, PHONE], ids=["1280", "390"])
def test_axe_finds_nothing_and_nothing_spills_over(
    opened: Open, pages: dict[str, str], size: tuple[int, int]
) -> None:
    page = opened("/", size=size)
    found = {}
    for name, path in pages.items():
        page.goto(path)
        if name == "docs":
            page.wait_for_selector(".opblock")
        for theme in THEMES:
            page.evaluate("(theme) => (document.documentElement.dataset.theme = theme)", theme)
            faults = page.evaluate(FAULTS, None if theme == "light" else COLOURED)
            if page.evaluate(SPILLED):
                faults.append("spills over the side")
            if faults:
                found[f"{name}, {theme}"] = faults
    assert found == {}


def test_what_a_gloved_finger_taps_is_48_px(opened: Open, pages: dict[str, str]) -> None:
    page = opened("/", size=PHONE)
    small = {}
    for name, path in pages.items():
        if name == "docs":
            continue
        page.goto(path)
        if found := page.evaluate(SMALL):
            small[name] = found[:5]
    assert small == {}


def test_no_number_is_torn_from_its_unit(opened: Open, pages: dict[str, str]) -> None:
    page = opened("/", size=PHONE)
    torn = {}
    for name, path in pages.items():
        page.goto(path)
        if found := page.evaluate(BROKEN):
            torn[name] = found[:5]
    assert torn == {}
