"""A template shows all of its page's context, and asks for nothing that is not in it."""

import dataclasses
import typing
from collections.abc import Iterator

import pytest

from lightoff.surfaces.calculating import example
from lightoff.surfaces.web.assets import load_assets
from lightoff.surfaces.web.calm import CalmPage
from lightoff.surfaces.web.contexts.calculation import CalculationPage
from lightoff.surfaces.web.contexts.calculations import CalculationsPage
from lightoff.surfaces.web.contexts.docs import DocsPage
from lightoff.surfaces.web.contexts.new import NewPage
from lightoff.surfaces.web.contexts.opening import OpeningPage
from lightoff.surfaces.web.contexts.plan import PlanPage
from lightoff.surfaces.web.contexts.point import PointPage
from lightoff.surfaces.web.contexts.taking import Taking
from lightoff.surfaces.web.contexts.trying import Trying
from lightoff.surfaces.web.contexts.units import UnitsPage
from lightoff.surfaces.web.contexts.visit import VisitPage
from lightoff.surfaces.web.pages import Pages, environment

from .conftest import EXAMPLES

PAGES = (
    UnitsPage, VisitPage, PointPage, NewPage, OpeningPage, CalmPage, DocsPage, Taking, Trying,
    CalculationsPage, CalculationPage, PlanPage,
)  # fmt: skip
FINDINGS = "two-furnaces-with-findings"
Seen = dict[type, set[str]]


def contexts(kind: object, known: set[type]) -> Iterator[type]:
    """Every dataclass a page's context is made of."""
    if isinstance(kind, type) and dataclasses.is_dataclass(kind):
        if kind not in known:
            known.add(kind)
            yield kind
            for each in typing.get_type_hints(kind).values():
                yield from contexts(each, known)
        return
    for part in typing.get_args(kind):
        yield from contexts(part, known)


@pytest.fixture
def seen(bench) -> Seen:
    """The fields that templates asked for while every kind of page was shown."""
    asked: Seen = {}
    watched = environment(load_assets())
    plain = watched.getattr

    def getattr_(obj: object, attribute: str) -> object:
        asked.setdefault(type(obj), set()).add(attribute)
        return plain(obj, attribute)

    watched.getattr = getattr_
    desk = bench.browser.app.state.desk
    bench.browser.app.state.desk = dataclasses.replace(desk, pages=Pages(watched))
    visit_everything(bench)
    bench.browser.app.state.desk = desk
    asked.setdefault(CalmPage, {"shell", "sentence", "hint"})  # shown by the app, not the desk
    return asked


def visit_everything(bench) -> None:
    browser = bench.browser
    for path in ("/", "/new", "/calc", "/api/docs", f"/units/{bench.streams['plate-only']}"):
        assert browser.get(path).status_code == 200
    for name in ("fan-law", "co-air-free", "traverse"):
        browser.get(f"/calc/{name}", params=example(name))
    browser.get("/calc/clocking?dial=2+psi")
    browser.post("/new", {"furnaces": "2", "unit.drive.vfd": "yes"})
    many = "\n".join(f"x{n} = 1" for n in range(300))
    browser.post("/new/file", {"text": EXAMPLES[0].read_text(encoding="utf-8") + many})
    for path in EXAMPLES:
        browser.get(f"/units/{bench.streams[path.stem]}")
    base = bench.reopened(FINDINGS)
    reading = {"point": "train.1.1.manifold", "run": "high", "value": "3.1"}
    browser.post(f"{base}/readings", reading)
    browser.post(f"{base}/readings", {**reading, "here": reading["point"], "value": "3.15"})
    browser.post(f"{base}/readings", {**reading, "value": "x"})
    browser.post(f"{base}/readings", {**reading, "value": "75 inwc"})
    browser.get(f"{base}/taking?point=flue.1.o2")
    browser.get(f"{base}/preview", params=reading)
    browser.get(f"{base}/preview", params={**reading, "value": "x"})
    state = bench.register.state(bench.streams[FINDINGS])
    entry = next(e for e in state.standing if e.tree.get("value") == "3.1 inwc")
    browser.post(f"{base}/entry/{entry.id}/correct", {"value": "3.2", "reason": ""})
    browser.post(f"{base}/entry/{entry.id}/correct", {"value": "3.2", "reason": "slip"})
    browser.get(f"{base}/points/input.1?run=high.1")
    browser.post(f"{base}/entries/check", {"thing": "covers.on", "outcome": "right"})
    finished = bench.visit("one-furnace-propane")
    for path in (f"{base}/plan", f"{finished}/plan", f"/units/{bench.streams['plate-only']}/plan"):
        assert browser.get(path).status_code == 200


def test_templates_and_contexts_agree(seen: Seen) -> None:
    unused = {}
    for page in PAGES:
        for kind in contexts(page, set()):
            fields = {field.name for field in dataclasses.fields(kind)}
            if left := fields - seen.get(kind, set()):
                unused[kind.__name__] = sorted(left)
    assert unused == {}


def test_a_template_that_asks_for_what_is_not_there_fails(bench) -> None:
    from jinja2 import UndefinedError

    pages = Pages(environment(load_assets()))
    desk = bench.browser.app.state.desk
    with pytest.raises(UndefinedError):
        pages.text("units", object(), desk.speech)
