"""What is said when a page cannot be: one calm sentence, and never a traceback."""

import logging
from dataclasses import dataclass

from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import JSONResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from lightoff.surfaces.web.contexts.shell import Shell, outside
from lightoff.surfaces.web.pages import Pages
from lightoff.surfaces.words.bound import PageSpeech

_KNOWN = (400, 403, 404, 405, 413, 421, 500)
log = logging.getLogger("lightoff.web")


@dataclass(frozen=True)
class CalmPage:
    """One sentence about what happened, and one about what to do."""

    shell: Shell
    sentence: str
    hint: str


@dataclass(frozen=True)
class Calm:
    """Makes the answer to whatever went wrong; programs get JSON, people a page."""

    pages: Pages

    async def http(self, request: Request, error: Exception) -> Response:
        """The answer to an error with a status."""
        status = error.status_code if isinstance(error, HTTPException) else 500
        headers = error.headers if isinstance(error, HTTPException) else None
        answer = self.answer(request.url.path, status)
        answer.headers.update(headers or {})
        return answer

    def answer(self, path: str, status: int, reason: str = "", *, said: str = "") -> Response:
        """A page, or for the API a fault, of a status; `reason` names the sentence if not it.

        `said` is a sentence that is there already.
        """
        speech = PageSpeech()
        name = reason or str(status if status in _KNOWN else 500 if status >= 500 else 400)
        sentence = said or speech.word(f"calm:{name}")
        if path.startswith("/api/") and path != "/api/docs":
            fault = {"place": "request", "line": None, "message": sentence}
            return JSONResponse({"faults": [fault]}, status)
        shell = outside(speech, sentence, "")
        page = CalmPage(shell, sentence, speech.word(f"calm:{name}:hint"))
        return self.pages.show("calm", page, speech, status=status)


@dataclass(frozen=True)
class Caught:
    """The innermost wrapper: an unexpected error is logged, and answered calmly."""

    app: ASGIApp
    calm: Calm

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        started = False

        async def noted(message: Message) -> None:
            nonlocal started
            started = started or message["type"] == "http.response.start"
            await send(message)

        try:
            await self.app(scope, receive, noted)
        except Exception:
            log.exception("%s %s failed", scope.get("method"), scope.get("path"))
            if started or scope["type"] != "http":
                raise
            await self.calm.answer(scope["path"], 500)(scope, receive, send)
