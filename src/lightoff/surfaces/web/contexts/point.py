"""The page of one point in one run: take it again, see it large, know why, put it right."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from lightoff.judgement import Row, worked
from lightoff.machine import WINTER, fan_runs, kind_of, points, readable, runs
from lightoff.machine.model.points import shows_at_rest
from lightoff.surfaces.calculating import steps_shown
from lightoff.surfaces.drawing import worst
from lightoff.surfaces.drawing.marks import Mark
from lightoff.surfaces.web.contexts.answer import weight
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.budget import Bar, budget
from lightoff.surfaces.web.contexts.checked import Check, check_of
from lightoff.surfaces.web.contexts.fields import Typed
from lightoff.surfaces.web.contexts.large import Large, large
from lightoff.surfaces.web.contexts.model import Number, has_model, model_url
from lightoff.surfaces.web.contexts.past import Past, past_of, readings_of
from lightoff.surfaces.web.contexts.rows import RowView, row_view
from lightoff.surfaces.web.contexts.shell import Link, Shell, around_unit
from lightoff.surfaces.web.contexts.taking import Taking, next_point, taking
from lightoff.surfaces.web.contexts.told import Told
from lightoff.surfaces.web.contexts.withdrawing import Forms
from lightoff.surfaces.web.contexts.worked import StepPart, step_part
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.bound import bound
from lightoff.surfaces.words.groups import group_of

_MANY = 100  # chances are told in so many


@dataclass(frozen=True)
class Way:
    """A link with the mark of what stands there."""

    mark: Mark
    text: str
    href: str
    here: bool


@dataclass(frozen=True)
class Limits:
    """What is allowed, on whose word, and why the row was decided as it was."""

    limit_from: str
    rule: str
    chance: str
    why: str
    severity: str


@dataclass(frozen=True)
class PointPage:
    """Everything on the page."""

    shell: Shell
    back: Link
    group: str
    name: str
    run: str
    runs: tuple[Way, ...]
    caution: str
    told: Told | None
    notice: str
    taking: Taking | None
    next: Link | None
    large: Large | None
    rows: tuple[RowView, ...]
    limits: tuple[Limits, ...]
    steps: tuple[StepPart, ...]
    check: Check | None
    budget: tuple[Bar, ...]
    model: str
    needs: tuple[Way, ...]
    counts_for: tuple[RowView, ...]
    past: tuple[Past, ...]


@dataclass(frozen=True)
class Here:
    """Which point, in which run."""

    point: str
    run: str


def point_page(
    bench: Bench, here: Here, new_id: Callable[[], str],
    *, typed: Typed | None = None, told: Told | None = None, notice: str = "",
) -> PointPage:  # fmt: skip
    """The page of a point, read or worked out, in a run."""
    speech, point, run = bench.speech, here.point, here.run
    own = own_rows(bench, point, run)
    first = own[0] if own else None
    name, typed = speech.point(point), typed or Typed()
    title = speech.word("answer:name", name=name, run=speech.run(run))
    caution = next((speech.word(row.caution) for row in own if row.caution), "")
    return PointPage(
        shell=around_unit(speech, bench.machine, bench.stream, bench.visit.number, "", title),
        back=Link(speech.word("visit:number", n=bench.visit.number), bench.base),
        group=group_of(own[0]).title(speech) if own else "",
        name=name,
        run=speech.run(run),
        runs=tuple(_ways(bench, point, run)),
        caution=caution,
        told=told,
        notice=notice,
        taking=_taking(bench, here, typed, new_id),
        next=_next(bench, here),
        large=large(bench, first, point, run, readings_of(bench, point, run)),
        rows=tuple(row_view(row, speech) for row in own),
        limits=tuple(_limits(row, speech) for row in own),
        steps=_steps(bench, first) if first else (),
        check=check_of(bench, point, run),
        budget=budget(bench, first) if first else (),
        model=_model(bench, here),
        needs=tuple(_needs(bench, here, own)),
        counts_for=tuple(_counts_for(bench, here, own)),
        past=past_of(bench, point, run, Forms(typed, new_id)),
    )


def _steps(bench: Bench, row: Row) -> tuple[StepPart, ...]:
    """How the row's own readings come to its number."""
    steps = worked(bench.machine, bench.visit, row)
    return tuple(step_part(step, bench.speech) for step in steps_shown(steps, bench.speech))


def _model(bench: Bench, here: Here) -> str:
    """The address of what the model makes of a point in a run, where it can be asked for that."""
    if not has_model(here.point) or here.run == WINTER or not bench.visit.readings:
        return ""
    if not fan_runs(here.run) and not shows_at_rest(here.point):
        return ""
    number = Number(here.point, here.run, by_readings=True)
    return model_url(bench.stream, bench.visit.number, number)


def own_rows(bench: Bench, point: str, run: str) -> list[Row]:
    """The rows of a point in a run, the heaviest first."""
    rows = [row for row in bench.answer.targets if (row.point, row.run) == (point, run)]
    return sorted(rows, key=weight)


def runs_of(bench: Bench, point: str) -> list[str]:
    """The runs in which a point may be read, or in which something is worked out."""
    there = next((p for p in points(bench.machine) if p.id == point), None)
    if there is not None:
        may = [run for run in runs(bench.machine) if readable(bench.machine, there, run)]
        return [*may, *({WINTER} & _judged_in(bench, point))]
    judged = _judged_in(bench, point)
    return [run for run in (*runs(bench.machine), WINTER) if run in judged]


def _judged_in(bench: Bench, point: str) -> set[str]:
    """The runs in which a point is judged, or was read."""
    judged = {row.run for row in bench.answer.targets if row.point == point and row.run}
    return judged | {p.run for p in bench.answer.points if p.id == point}


def first_run(bench: Bench, point: str) -> str:
    """The run a point is looked at in when none is named: the one in which most is wrong."""
    may = runs_of(bench, point)
    rows = sorted((r for r in bench.answer.targets if r.point == point), key=weight)
    read = [p.run for p in bench.answer.points if p.id == point]
    return next((run for run in [*(r.run for r in rows), *read] if run in may), may[0])


def _ways(bench: Bench, point: str, run: str) -> Iterator[Way]:
    """The other runs, each with the worst mark it bears."""
    for each in runs_of(bench, point):
        if each not in {*_judged_in(bench, point), run}:
            continue
        rows = [r for r in bench.answer.targets if (r.point, r.run) == (point, each)]
        read = any((p.id, p.run) == (point, each) for p in bench.answer.points)
        mark: Mark = worst(rows) if rows else ("ok" if read else "nm")
        yield Way(mark, bench.speech.run(each), bench.point_url(point, each), each == run)


def _taking(bench: Bench, here: Here, typed: Typed, new_id: Callable[[], str]) -> Taking | None:
    if kind_of(here.point) is None or bench.closed or here.run == WINTER:
        return None
    mine = typed.of("reading")
    values = {**mine.values, "point": here.point, "run": mine.value("run", here.run)}
    return taking(bench, Typed(values, mine.faults, "reading"), new_id())


def _next(bench: Bench, here: Here) -> Link | None:
    """The point to go to next in the same run."""
    point = next_point(bench, here.point, here.run)
    if point == here.point or bench.closed:
        return None
    return Link(bench.speech.point(point), bench.point_url(point, here.run))


def _limits(row: Row, speech: Speech) -> Limits:
    return Limits(
        limit_from=_limit_from(row, speech),
        rule=_rule(row, speech),
        chance=_chance(row, speech),
        why="" if row.estimate is None or row.decision != "conforms" else speech.say(row.why, row),
        severity=speech.word(f"severity:{row.severity}"),
    )


def _rule(row: Row, speech: Speech) -> str:
    """How it was decided."""
    if row.id == "input" and row.decision == "conforms" and row.rule == "guarded":
        return speech.word("rule:provable")
    return speech.word(f"rule:{row.rule}") if row.rule else ""


def _limit_from(row: Row, speech: Speech) -> str:
    """Whose word the limit is, and where it stands written."""
    if row.limit_from is None:
        return ""
    word, source = speech.word(f"limit:{row.limit_from}"), row.source or ""
    # a source that begins with its kind says it already
    return bound(source if source.startswith(word) else ": ".join(filter(None, (word, source))))


def _chance(row: Row, speech: Speech) -> str:
    """How likely it lies within its limits."""
    if row.probability is None or row.rule is None:
        return ""
    share = round(row.probability * _MANY)
    if share in (0, _MANY):
        return speech.word("chance:hardly" if share == 0 else "chance:surely")
    return speech.word("chance", share=share)


def _counts_for(bench: Bench, here: Here, own: list[Row]) -> Iterator[RowView]:
    """The other rows for which a reading here counts."""
    for row in bench.resting_on(here.point, here.run):
        if row not in own and row.point:
            yield row_view(row, bench.speech, href=bench.point_url(row.point, here.run))


def _needs(bench: Bench, here: Here, own: list[Row]) -> Iterator[Way]:
    """The readings that what is judged here rests on, where it is not simply the reading here."""
    needs = dict.fromkeys(need for row in own for need in bench.needed(row))
    read = {p.id for p in bench.answer.points if p.run == here.run}
    for need in needs:
        if need != here.point:
            mark: Mark = "ok" if need in read else "nm"
            href = bench.point_url(need, here.run)
            yield Way(mark, bench.speech.point(need), href, here=False)
