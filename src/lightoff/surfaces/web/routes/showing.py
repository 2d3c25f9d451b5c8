"""The two pages that are shown again after something was written, or refused."""

from dataclasses import replace

from starlette.exceptions import HTTPException
from starlette.responses import Response

from lightoff.record.fold import Entry
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.fields import Typed
from lightoff.surfaces.web.contexts.point import Here, first_run, point_page, runs_of
from lightoff.surfaces.web.contexts.taking import next_point
from lightoff.surfaces.web.contexts.told import Told, told
from lightoff.surfaces.web.contexts.visit import VIEWS, Asked, visit_page
from lightoff.surfaces.web.desk import Desk
from lightoff.surfaces.web.moments import local_moment


def show_visit(
    desk: Desk, stream: str, number: int, *, typed: Typed | None = None,
    kept: str = "", show: str = "", status: int = 200,
) -> Response:  # fmt: skip
    """The page of a visit; what was just kept is told, and the form goes on to the next point."""
    bench = desk.bench(stream, number)
    answer, notice, entry = noticed(bench, kept)
    asked = Asked(
        typed=_going_on(bench, typed or Typed(), entry),
        told=answer,
        notice=notice,
        view=next((view for view in VIEWS if view == show), VIEWS[0]),
        at=local_moment(bench, desk.now()),
    )
    page = visit_page(bench, asked, desk.new_id)
    return desk.pages.show("visit", page, bench.speech, status=status)


def show_point(
    desk: Desk, stream: str, number: int, here: Here, *, typed: Typed | None = None,
    kept: str = "", status: int = 200,
) -> Response:  # fmt: skip
    """The page of a point; a 404 where this unit has none such."""
    bench = desk.bench(stream, number)
    may = runs_of(bench, here.point)
    if not may:
        raise HTTPException(404)
    if here.run not in may:
        here = replace(here, run=first_run(bench, here.point))
    answer, notice, _ = noticed(bench, kept)
    page = point_page(bench, here, desk.new_id, typed=typed, told=answer, notice=notice)
    return desk.pages.show("point", page, bench.speech, status=status)


def noticed(bench: Bench, kept: str) -> tuple[Told | None, str, Entry | None]:
    """What to say of the entry that was just written: what it decides, or that it is kept."""
    for place, entry in bench.entries.items():
        if kept and entry.id == kept:
            if entry.kind == "reading":
                return told(bench, place), "", entry
            return None, bench.speech.word(f"kept:{entry.kind}"), entry
    return None, "", None


def _going_on(bench: Bench, typed: Typed, kept: Entry | None) -> Typed:
    """After a reading the form stays in its run and offers the next point."""
    if kept is None or kept.kind != "reading" or typed.values:
        return typed
    point, run = str(kept.tree["point"]), bench.canonical(str(kept.tree["run"]))
    values = {"point": next_point(bench, point, run), "run": run}
    return Typed(values, form="reading")
