"""The gate every request passes: who may ask, how much may be sent, what an answer may do.

A page on another site must not be able to read or write here through the person's own browser:
the Host must name this machine (a rebound name does not), a request that changes something must
come from our own page, and no answer may be framed or run anything that is not ours.
"""

from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from typing import Literal

from starlette.datastructures import Headers, MutableHeaders
from starlette.exceptions import HTTPException
from starlette.types import ASGIApp, Message, Receive, Scope, Send

LOOPBACK = ("127.0.0.1", "localhost", "[::1]")
MOST_BYTES = 5_000_000 + 100_000  # a job file, and what a form wraps around it
SAFE = ("GET", "HEAD", "OPTIONS")

POLICY = (
    "default-src 'self'; img-src 'self' data:; font-src 'self' data:; object-src 'none'; "
    "base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
)
HEADERS = {
    "Content-Security-Policy": POLICY,
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=()",
    "Referrer-Policy": "same-origin",
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
}

Refusal = Literal["host", "origin", "large"]
Refused = Callable[[Scope, Refusal], Awaitable[ASGIApp]]


class TooLarge(HTTPException):
    """More was sent than is read here."""

    def __init__(self) -> None:
        super().__init__(413)


@dataclass(frozen=True)
class Guard:
    """Wraps the app; `refused` makes the page or the JSON that says why not."""

    app: ASGIApp
    refused: Refused

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        reason = refusal(scope)
        if reason is None:
            await self.app(scope, _counted(receive), _sealed(send))
        else:
            answer = await self.refused(scope, reason)
            await answer(scope, receive, _sealed(send))


def refusal(scope: Scope) -> Refusal | None:
    """Why a request is turned away before anything reads it."""
    headers = Headers(scope=scope)
    if not is_loopback(headers.get("host", ""), scope.get("server")):
        return "host"
    if scope["method"] not in SAFE and not is_own(headers, scope["scheme"]):
        return "origin"
    length = headers.get("content-length", "0")
    return "large" if length.isdecimal() and int(length) > MOST_BYTES else None


def is_loopback(host: str, server: tuple[str, int | None] | None) -> bool:
    """Whether `host` names this machine, with the port that is served.

    >>> is_loopback("127.0.0.1:8765", ("127.0.0.1", 8765)), is_loopback("rebound.example", None)
    (True, False)
    """
    name, port = _split(host.lower())
    served = server[1] if server else None
    return name in LOOPBACK and (served is None or port == str(served))


def _split(host: str) -> tuple[str, str]:
    name, colon, port = host.rpartition(":")
    if not colon or name.endswith(":") or host.endswith("]"):
        return host, "80"
    return name, port


def is_own(headers: Headers, scheme: str) -> bool:
    """Whether a request that changes something comes from one of our own pages.

    A browser names the page it comes from; what names none is no browser (a program, `curl`).
    """
    origin = headers.get("origin")
    if origin is not None:
        return origin.lower() == f"{scheme}://{headers.get('host', '').lower()}"
    return headers.get("sec-fetch-site", "none") in ("same-origin", "none")


def _counted(receive: Receive) -> Receive:
    """The same stream, cut off where it grows larger than it said."""
    read = 0

    async def counted() -> Message:
        nonlocal read
        message = await receive()
        read += len(message.get("body", b""))
        if read > MOST_BYTES:
            raise TooLarge
        return message

    return counted


def _sealed(send: Send) -> Send:
    """Every answer leaves with the headers that bind the browser."""

    async def sealed(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in HEADERS.items():
                headers.setdefault(name, value)
        await send(message)

    return sealed
