"""What a browser sends: form fields, and at most one file, read without threads."""

from dataclasses import dataclass

from starlette.datastructures import FormData, UploadFile
from starlette.exceptions import HTTPException
from starlette.formparsers import MultiPartException, MultiPartParser
from starlette.requests import Request

from lightoff.surfaces.web.guard import MOST_BYTES

MOST_FIELDS = 400
MOST_IN_A_FIELD = 100_000


@dataclass(frozen=True)
class Sent:
    """The fields of a form, spaces around them removed, and the file sent with it."""

    fields: dict[str, str]
    file_name: str = ""
    file: bytes = b""

    def get(self, name: str) -> str:
        return self.fields.get(name, "")


class _InMemory(MultiPartParser):
    """A larger file would be written to a disk by a thread; a browser's Python has none."""

    spool_max_size = MOST_BYTES


async def sent(request: Request) -> Sent:
    """The form of a request."""
    if request.headers.get("content-type", "").startswith("multipart/form-data"):
        return await _split(await _parts(request))
    return await _split(await request.form(max_fields=MOST_FIELDS))


async def _parts(request: Request) -> FormData:
    parser = _InMemory(
        request.headers,
        request.stream(),
        max_files=1,
        max_fields=MOST_FIELDS,
        max_part_size=MOST_IN_A_FIELD,
    )
    try:
        return await parser.parse()
    except MultiPartException as error:
        raise HTTPException(400, detail=error.message) from None


async def _split(form: FormData) -> Sent:
    """Fields and file apart; of a field sent twice the last counts."""
    fields, name, data = {}, "", b""
    for key, value in form.multi_items():
        if isinstance(value, UploadFile):
            name, data = value.filename or "", await value.read()
        else:
            fields[key] = value.strip()
    await form.close()
    return Sent(fields, name, data)
