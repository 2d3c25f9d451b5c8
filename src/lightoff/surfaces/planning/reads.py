"""What each point should read, in words: the value to expect, its window, and who says so."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from markupsafe import Markup

from lightoff.inference.conformity import SMALL_SHARE
from lightoff.inference.estimate import COVERAGE
from lightoff.judgement.plan import Limits, Plan, Window
from lightoff.machine import Machine, Point, of_any_lead, points
from lightoff.surfaces.drawing import strip
from lightoff.surfaces.planning.rows import window_row
from lightoff.surfaces.planning.ways import Ways
from lightoff.surfaces.words import Speech
from lightoff.surfaces.words.groups import Group, group_of, group_of_point

SHOWS = 0.2  # of a standard uncertainty: what is less than that outside is at the limit
Alike = tuple[object, ...]


@dataclass(frozen=True)
class ReadShown:
    """One reading as it should be: number, spread and unit apart, empty where nobody can say.

    `model` leads to how the number comes about, `also` are further limits of the same quantity,
    `why` where its window comes from.
    """

    point: str
    run_id: str
    href: str
    model: str
    name: str
    run: str
    number: str
    spread: str
    unit: str
    strip: Markup
    window: str
    also: tuple[str, ...]
    why: str


@dataclass(frozen=True)
class GroupShown:
    """The readings of one group."""

    title: str
    reads: tuple[ReadShown, ...]


def reads_shown(plan: Plan, machine: Machine, speech: Speech, ways: Ways) -> tuple[GroupShown, ...]:
    """Every window by group; the leads of one supply or motor that should read the same are one."""
    here = {point.id: point for point in points(machine)}
    groups: dict[Group, dict[Alike, list[Window]]] = {}
    for window in plan.windows:
        alike = groups.setdefault(_group(window, here), {})
        alike.setdefault(_of_any_lead(window), []).append(window)
    return tuple(
        GroupShown(
            group.title(speech),
            tuple(_shown(leads, group, speech, ways) for leads in alike.values()),
        )
        for group, alike in sorted(groups.items())
    )


def _group(window: Window, here: Mapping[str, Point]) -> Group:
    if window.target is not None:
        return group_of(window_row(window))
    return group_of_point(here[window.point])


def _of_any_lead(window: Window) -> Alike:
    """What the windows of several leads have in common, where all should read the same."""
    return (
        of_any_lead(window.point),
        window.run,
        window.target,
        window.kind,
        window.expected,
        window.limits,
    )


def _shown(leads: list[Window], group: Group, speech: Speech, ways: Ways) -> ReadShown:
    window, row = leads[0], window_row(leads[0])
    number, spread, unit = _value(window, speech)
    value = f"{number} ± {spread} {unit}" if spread else f"{number} {unit}"
    text = speech.window(row)
    label = speech.word("plan:strip", window=text, value=value.strip() or "—")
    return ReadShown(
        point=window.point,
        run_id=window.run,
        href=ways.point(window.point, window.run),
        model=ways.model(window.point, window.run) if window.spread else "",
        name=_name(leads, group, speech),
        run=speech.run(window.run),
        number=number,
        spread=spread,
        unit=unit,
        strip=strip(row, label),
        window=text,
        also=(*_outside(window, speech), *(_also(window, x, speech) for x in window.limits[1:])),
        why=speech.say(window.why) if window.target else "",
    )


def _name(leads: list[Window], group: Group, speech: Speech) -> str:
    window = leads[0]
    if window.target is None:
        name = speech.point(window.point)
        if window.turns is not None:
            return speech.word("plan:turns", name=name, turns=f"{window.turns:.0f}")
    else:
        name = speech.row(window_row(window), furnace=not group.furnace)
    # the name of a lead ends in it: the others are told after it
    others = ("–".join(lead.point.rsplit(".", 1)[1]) for lead in leads[1:])
    return ", ".join((name, *others))


def _outside(window: Window, speech: Speech) -> tuple[str, ...]:
    """That what is expected lies outside its own limits, where that shows beside its spread."""
    if window.expected is None or not window.limits:
        return ()
    first, shows = window.limits[0], SHOWS * (window.spread or 0.0)
    above = first.upper is not None and window.expected > first.upper + shows
    below = first.lower is not None and window.expected < first.lower - shows
    return (speech.word("plan:outside"),) if above or below else ()


def _value(window: Window, speech: Speech) -> tuple[str, str, str]:
    """Number, expanded uncertainty and unit of what to expect."""
    if window.expected is None:
        return "", "", ""
    expanded = COVERAGE * (window.spread or 0.0)
    shown = speech.parts(window.expected, window.kind, expanded=expanded or _fineness(window))
    spread = speech.spread(expanded, window.kind) if expanded else ""
    return shown.number, spread, shown.unit


def _fineness(window: Window) -> float | None:
    """How finely to show a value without a spread of its own: as its window asks for."""
    ends = [(each.lower, each.upper) for each in window.limits]
    low, high = ends[0] if ends else (None, None)
    return None if low is None or high is None else (high - low) / SMALL_SHARE


def _also(window: Window, limits: Limits, speech: Speech) -> str:
    """A further limit, by what it means to pass it."""
    row = replace(window_row(window), lower=limits.lower, upper=limits.upper)
    return speech.word(f"plan:also:{limits.severity}", window=speech.window(row))
