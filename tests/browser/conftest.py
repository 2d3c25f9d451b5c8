"""One real server over a store on disk, and one real browser, for all of these tests."""

import copy
import json
import shutil
import subprocess
import sys
import tomllib
import urllib.request
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

ROOT = Path(__file__).parents[2]
EXAMPLES = ROOT / "examples"
AXE = ROOT / "web-assets/node_modules/axe-core/axe.min.js"
ARGS = [
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
]  # fmt: skip
DESK, PHONE = (1280, 800), (390, 844)
PATIENCE = 10_000  # ms


@pytest.fixture(scope="session")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The workbench as a person starts it, with the examples in its store."""
    store = tmp_path_factory.mktemp("store") / "record.sqlite"
    code = "from lightoff.surfaces.cli.main import main; main()"
    words = ["serve", "--examples", "--port", "0", "--store", str(store)]
    command = [sys.executable, "-c", code, *words]
    process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True, cwd=store.parent)
    try:
        assert process.stdout is not None
        yield process.stdout.readline().strip().rstrip("/")
    finally:
        process.terminate()
        process.communicate(timeout=10)


@pytest.fixture(scope="package")
def chromium() -> Iterator[Browser]:
    """Closed with this folder: Playwright's event loop would stand in the way of other tests."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=ARGS)
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def add(address: str) -> Callable[..., str]:
    """Puts a copy of an example into the record, its visit open; the answer is its stream."""

    def add(example: str, **changes: Any) -> str:
        text = (EXAMPLES / f"{example}.toml").read_text(encoding="utf-8")
        tree = copy.deepcopy(tomllib.loads(text)) | changes
        for visit in tree.get("visit", ()):
            visit.pop("left", None)
            visit.pop("told", None)
        request = urllib.request.Request(
            f"{address}/api/units",
            data=json.dumps(tree, default=str).encode(),
            headers={"Content-Type": "application/json"},
        )
        with urllib.request.urlopen(request, timeout=10) as answer:
            return str(json.load(answer)["stream"])

    return add


@pytest.fixture(scope="session")
def findings(add: Callable[..., str]) -> str:
    """The address of an open visit with much wrong, for those who only look."""
    return f"/units/{add('two-furnaces-with-findings')}/visits/1"


@pytest.fixture
def opened(chromium: Browser, address: str) -> Iterator[Callable[..., Page]]:
    """Opens pages; whatever a page says on its console fails the test that opened it."""
    contexts: list[BrowserContext] = []
    said: list[str] = []

    def opened(path: str, *, size: tuple[int, int] = DESK, script: bool = True) -> Page:
        context = chromium.new_context(
            viewport={"width": size[0], "height": size[1]},
            java_script_enabled=script,
            base_url=address,
            reduced_motion="reduce",
        )
        context.set_default_timeout(PATIENCE)
        if script:
            context.add_init_script(path=AXE)
        contexts.append(context)
        page = context.new_page()
        page.on("console", lambda line: said.append(line.text) if line.type == "error" else None)
        page.on("pageerror", lambda error: said.append(str(error)))
        page.goto(path)
        return page

    yield opened
    for context in contexts:
        context.close()
    # a refused form is answered with a status that the browser writes on its console
    assert [text for text in said if "status of 4" not in text] == []
