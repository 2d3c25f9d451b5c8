"""Stylesheets, scripts and fonts: read into memory once, named by their content.

Starlette's StaticFiles reads in threads, which a browser's Python does not have. The files are
few, so they are kept. The name of a file is looked up, never joined to a path.
"""

import hashlib
import mimetypes
from collections.abc import Iterator
from dataclasses import dataclass
from importlib import resources
from importlib.resources.abc import Traversable

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response

FOREVER = "public, max-age=31536000, immutable"
ASK_AGAIN = "no-cache"
A_WEEK = "public, max-age=604800"  # fonts: a stylesheet names them without their digest
DIGEST = 10  # characters of the content's SHA-256 in its address
_TYPES = {".woff2": "font/woff2", ".js": "text/javascript", ".svg": "image/svg+xml"}


@dataclass(frozen=True)
class Asset:
    """One file: its bytes, its type, and the digest that tells one version from another."""

    body: bytes
    kind: str
    digest: str


@dataclass(frozen=True)
class Assets:
    """Every file under static/, by its name there."""

    files: dict[str, Asset]

    def url(self, name: str) -> str:
        """The address of a file; it changes with the content, so it may be kept for ever."""
        asset = self.files.get(name)
        return f"/assets/{name}" + (f"?v={asset.digest}" if asset else "")

    async def answer(self, request: Request) -> Response:
        """One file, or nothing but its digest where the browser has it already."""
        asset = self.files.get(request.path_params["name"])
        if asset is None:
            raise HTTPException(404)
        tag = f'"{asset.digest}"'
        caching = A_WEEK if asset.kind == "font/woff2" else ASK_AGAIN
        if request.query_params.get("v") == asset.digest:
            caching = FOREVER
        headers = {"Cache-Control": caching, "ETag": tag}
        if request.headers.get("if-none-match") == tag:
            return Response(status_code=304, headers=headers)
        return Response(asset.body, media_type=asset.kind, headers=headers)


def load_assets() -> Assets:
    """Read everything under static/."""
    return Assets(dict(_read(resources.files(__package__) / "static", "")))


def _read(folder: Traversable, path: str) -> Iterator[tuple[str, Asset]]:
    for entry in folder.iterdir():
        name = f"{path}{entry.name}"
        if entry.is_dir():
            yield from _read(entry, f"{name}/")
        else:
            body = entry.read_bytes()
            yield name, Asset(body, _kind(name), hashlib.sha256(body).hexdigest()[:DIGEST])


def _kind(name: str) -> str:
    suffix = name[name.rfind(".") :]
    return _TYPES.get(suffix) or mimetypes.guess_type(name)[0] or "application/octet-stream"
