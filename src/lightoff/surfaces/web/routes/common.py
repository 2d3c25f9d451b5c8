"""What several routes need: the desk, where to go next, and what a refusal says at which field."""

from collections.abc import Iterable, Sequence
from typing import Annotated

from fastapi import Depends, Request
from starlette.responses import RedirectResponse

from lightoff.job import Fault, JobError
from lightoff.record import Refused
from lightoff.surfaces.web.desk import Desk


async def _desk(request: Request) -> Desk:
    desk: Desk = request.app.state.desk
    return desk


AtDesk = Annotated[Desk, Depends(_desk)]


def then(address: str) -> RedirectResponse:
    """Go and look: what was posted is kept, and a reload posts nothing again."""
    return RedirectResponse(address, status_code=303)


def reasons(error: Refused | JobError) -> Sequence[Fault]:
    """Every reason of a refusal."""
    return error.reasons if isinstance(error, Refused) else error.faults


def by_field(faults: Iterable[Fault], within: str = "") -> dict[str, str]:
    """Sentences by the field they belong to: the first key of their place.

    Several faults of one field are one text.
    """
    told: dict[str, str] = {}
    for fault in faults:
        place = fault.place.removeprefix(f"{within}.") if within else fault.place
        name = place.split(".")[0]
        if name == "traverse" and "." in place:
            name = place.split(".")[1]
        told[name] = f"{told[name]}; {fault.message}" if name in told else fault.message
    return told
