"""Stylesheets, scripts and fonts: from memory, named by their content."""

import re

from lightoff.surfaces.web.assets import load_assets


def test_every_asset_a_page_names_is_there_and_may_be_kept(bench) -> None:
    page = bench.browser.get("/").text
    urls = re.findall(r'(?:href|src)="(/assets/[^"]+)"', page)
    assert len(urls) == 7
    for url in urls:
        answer = bench.browser.get(url)
        assert answer.status_code == 200, url
        assert "immutable" in answer.headers["cache-control"]


def test_what_the_browser_has_is_not_sent_again(bench) -> None:
    first = bench.browser.get("/assets/tokens.css")
    assert first.headers["cache-control"] == "no-cache"
    tag = first.headers["etag"]
    again = bench.browser.get("/assets/tokens.css", headers={"if-none-match": tag})
    assert (again.status_code, again.content) == (304, b"")


def test_another_content_has_another_address() -> None:
    assets = load_assets()
    digests = {asset.digest for asset in assets.files.values()}
    assert len(digests) == len(assets.files)
    assert re.fullmatch(r"/assets/tokens\.css\?v=[0-9a-f]{10}", assets.url("tokens.css"))


def test_types_are_told(bench) -> None:
    for name, kind in (
        ("tokens.css", "text/css"),
        ("lightoff.js", "text/javascript"),
        ("icon.svg", "image/svg+xml"),
        ("vendor/fonts/lightoff-sans-400.woff2", "font/woff2"),
    ):
        assert bench.browser.get(f"/assets/{name}").headers["content-type"].startswith(kind)
