"""A workbench over a record in memory with every example in it, and a browser without eyes."""

import asyncio
import itertools
import re
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta, timezone
from html import unescape
from pathlib import Path
from typing import Any
from uuid import UUID

import httpx
import pytest
from fastapi import FastAPI

from lightoff.judgement import quick_fits
from lightoff.record import MemoryStore, Register, Withdraw
from lightoff.surfaces.web import create_app
from lightoff.surfaces.web.desk import Desk

EXAMPLES = sorted((Path(__file__).parents[3] / "examples").glob("*.toml"))
BASE = "http://127.0.0.1:8765"
FITS = quick_fits()  # of every workbench here: they hold the same examples
AFTER = datetime(2026, 12, 1, 10, 0, tzinfo=timezone(timedelta(hours=-6)))  # of every example


@dataclass
class Browser:
    """Sends requests to the app as a browser on this machine would."""

    app: FastAPI
    headers: Mapping[str, str] = field(default_factory=dict)

    def send(self, method: str, path: str, *, follow: bool = True, **more: Any) -> httpx.Response:
        async def once() -> httpx.Response:
            transport = httpx.ASGITransport(app=self.app)
            async with httpx.AsyncClient(
                transport=transport, base_url=BASE, follow_redirects=follow, headers=self.headers
            ) as client:
                return await client.request(method, path, **more)

        return asyncio.run(once())

    def get(self, path: str, **more: Any) -> httpx.Response:
        return self.send("GET", path, **more)

    def post(self, path: str, data: Mapping[str, str] | None = None, **more: Any) -> httpx.Response:
        more.setdefault("headers", {"origin": BASE})
        return self.send("POST", path, data=data, **more)


@dataclass
class Bench:
    """One workbench: its app, its record, and where each example stands in it."""

    browser: Browser
    register: Register
    streams: dict[str, str]

    def visit(self, example: str, number: int = 1) -> str:
        """The address of a visit."""
        return f"/units/{self.streams[example]}/visits/{number}"

    def reopened(self, example: str) -> str:
        """The same, after the visit was opened again."""
        stream = self.streams[example]
        closing = self.register.state(stream).closing(1)
        if closing is not None:
            self.register.do(stream, Withdraw(closing.id, "not done yet"), by="test")
        return self.visit(example)

    def entries(self, example: str, kind: str) -> list[dict[str, Any]]:
        """What stands in the record of a visit's table."""
        return list(self.register.state(self.streams[example]).tree["visit"][-1].get(kind, []))


def ids() -> Callable[[], str]:
    """Ids that are the same in every run."""
    count = itertools.count(1)
    return lambda: str(UUID(int=next(count), version=4))


@pytest.fixture(scope="session")
def shelf() -> tuple[MemoryStore, dict[str, str], FastAPI]:
    """Every example in a store, where each stands, and an app: made once, for it takes a while."""
    store = MemoryStore()
    register = Register(store, clock=lambda: AFTER)
    streams = {
        path.stem: register.add_job(tomllib.loads(path.read_text(encoding="utf-8")), by="test")
        for path in EXAMPLES
    }
    return store, streams, create_app(register)


@pytest.fixture
def make(shelf) -> Callable[..., Bench]:
    """Makes a workbench at a time of day; its record is a copy, so no test sees another's."""
    store, streams, app = shelf

    def make(now: Callable[[], datetime] = lambda: AFTER) -> Bench:
        register = Register(copied(store), clock=now)
        pages = app.state.desk.pages
        app.state.desk = Desk(register, pages, now, ids(), "the technician", fits=FITS)
        return Bench(Browser(app), register, dict(streams))

    return make


def copied(store: MemoryStore) -> MemoryStore:
    """Another store with the same events; events never change, so only the lists are copied."""
    other = MemoryStore()
    vars(other).update({name: dict(kept) for name, kept in vars(store).items()})
    return other


@pytest.fixture
def bench(make) -> Bench:
    bench: Bench = make()
    return bench


@pytest.fixture
def text_of() -> Callable[[httpx.Response], str]:
    """What a person would read of a page: no tags, each space one space."""

    def text_of(response: httpx.Response) -> str:
        body = response.text[response.text.index("<main") :]
        bare = unescape(re.sub(r"<[^>]+>", " ", body)).replace("\u00a0", " ")
        return " ".join(bare.split())

    return text_of
