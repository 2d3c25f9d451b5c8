"""Only this machine, only our own pages, nothing too large, and answers that bind the browser."""

import pytest

from lightoff.surfaces.web.guard import MOST_BYTES

from .conftest import BASE

ELSEWHERE = [
    "rebound.example:8765", "127.0.0.1:1", "127.0.0.1", "127.0.0.1.example:8765", "",
    "localhost.:8765", "[::2]:8765", "127.0.0.1:8765@evil.example",
]  # fmt: skip
FORM = {"purpose": "service", "by": "X"}


@pytest.mark.parametrize("host", ELSEWHERE)
def test_a_host_that_is_not_this_machine_is_refused(bench, host) -> None:
    answer = bench.browser.get("/", headers={"host": host})
    assert answer.status_code == 421
    assert "This workbench answers only on this machine." in answer.text
    assert "MAU-" not in answer.text


@pytest.mark.parametrize(
    "host", ["127.0.0.1:8765", "localhost:8765", "[::1]:8765", "LOCALHOST:8765"]
)
def test_this_machine_is_answered_by_any_of_its_names(bench, host) -> None:
    assert bench.browser.get("/", headers={"host": host}).status_code == 200


@pytest.mark.parametrize(
    "headers",
    [
        {"origin": "http://evil.example"},
        {"origin": "null"},
        {"origin": "https://127.0.0.1:8765"},
        {"origin": "http://127.0.0.1:9999"},
        {"sec-fetch-site": "cross-site"},
        {"sec-fetch-site": "same-site"},
    ],
)
def test_a_form_of_another_page_is_refused_and_writes_nothing(bench, headers) -> None:
    stream = bench.streams["plate-only"]
    for method in ("POST", "PUT", "DELETE"):
        answer = bench.browser.send(method, f"/units/{stream}/visits", data=FORM, headers=headers)
        assert answer.status_code == 403
        assert "sent from another page" in answer.text
    assert bench.register.state(stream).visits == 0


@pytest.mark.parametrize("headers", [{"origin": BASE}, {"sec-fetch-site": "same-origin"}, {}])
def test_our_own_pages_and_programs_may_write(bench, headers) -> None:
    stream = bench.streams["plate-only"]
    answer = bench.browser.post(f"/units/{stream}/visits", FORM, headers=headers)
    assert answer.status_code == 200
    assert bench.register.state(stream).visits == 1


def test_what_is_larger_than_any_job_is_refused_before_it_is_read(bench) -> None:
    body = b"x" * (MOST_BYTES + 1)
    told = bench.browser.post("/new/file", content=body)
    assert told.status_code == 413
    assert "at most 5 MB" in told.text


def test_a_body_that_grows_beyond_what_it_said_is_cut_off(bench) -> None:
    async def endless():
        for _ in range(60):
            yield b"x" * 100_000

    for path, kind in (
        ("/new/file", "multipart/form-data; boundary=x"),
        ("/api/judge", "text/json"),
    ):
        headers = {"origin": BASE, "content-type": kind}
        answer = bench.browser.post(path, content=endless(), headers=headers)
        assert answer.status_code in (400, 413), path


def test_a_file_as_large_as_a_job_may_be_is_read(bench) -> None:
    data = b"# " + b"x" * 4_900_000
    answer = bench.browser.post("/new/file", {}, files={"file": ("job.toml", data)})
    assert answer.status_code == 422
    assert "Nothing was kept" in answer.text


@pytest.mark.parametrize("path", ["/", "/new", "/nowhere", "/api/units", "/assets/tokens.css"])
def test_every_answer_binds_the_browser(bench, path) -> None:
    headers = bench.browser.get(path).headers
    policy = headers["content-security-policy"]
    assert "default-src 'self'" in policy
    assert "unsafe" not in policy
    assert "frame-ancestors 'none'" in policy
    assert headers["x-content-type-options"] == "nosniff"
    assert headers["referrer-policy"] == "same-origin"


def test_a_broken_form_is_a_sentence(bench) -> None:
    for body in (b"--nope", b"", b"\r\n--x\r\n"):
        kind = {"origin": BASE, "content-type": "multipart/form-data; boundary=x"}
        answer = bench.browser.post("/new/file", content=body, headers=kind)
        assert answer.status_code in (400, 422)
        assert "<h1>" in answer.text
