"""Instruments in words: what each is for, and for what it is too coarse."""

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass

from lightoff.judgement.plan import AtHand, Carry, GaugeUse, Plan
from lightoff.surfaces.drawing.marks import Mark
from lightoff.surfaces.planning.rows import use_row
from lightoff.surfaces.words import Speech

TWO_DIGITS = 0.3  # [1] an uncertainty of this share leaves a number two digits


@dataclass(frozen=True)
class CoarseShown:
    """Something a gauge is too coarse for: what it claims, what would do, what to take instead."""

    name: str
    run: str
    claims: str
    enough: str
    instead: str


@dataclass(frozen=True)
class TooCoarse:
    """All that one gauge is too coarse for."""

    title: str
    uses: tuple[CoarseShown, ...]


@dataclass(frozen=True)
class GearShown:
    """One instrument, or a kind of which none is at hand."""

    mark: Mark
    name: str
    kind: str
    purpose: str
    note: str
    coarse: TooCoarse | None


def gear_shown(plan: Plan, speech: Speech) -> tuple[GearShown, ...]:
    """The instruments at hand, each once, then the kinds of which something is lacking."""
    at_hand: dict[str, tuple[AtHand, list[Carry]]] = {}
    for row in plan.carry:
        for instrument in row.at_hand:
            at_hand.setdefault(instrument.id, (instrument, []))[1].append(row)
    own = (_instrument(plan, its, rows, speech) for its, rows in at_hand.values())
    return (*own, *(_lacking(plan, row, speech) for row in lacking(plan)))


def lacking(plan: Plan) -> tuple[Carry, ...]:
    """What has to be carried, or a part of it, and is not among the job's instruments."""
    return tuple(row for row in plan.carry if row.lacking or not row.at_hand)


def method_shown(plan: Plan, speech: Speech) -> tuple[str, ...]:
    """What no gauge decides simply, and the part of the method that stands in the way."""
    uses = (use for use in plan.gauges if use.finest and use.fitness == "method too coarse")
    return tuple(
        speech.word(
            "plan:method",
            name=speech.row(use_row(use)),
            run=speech.run(use.run),
            cause=speech.word(f"budget:{use.why.values['cause']}"),
        )
        for use in uses
    )


def too_coarse(plan: Plan, instrument: str | None) -> list[GaugeUse]:
    """What an instrument, or one nobody declared, is too coarse for."""
    return [
        use for use in plan.gauges if use.instrument == instrument and use.fitness == "too coarse"
    ]


def _instrument(plan: Plan, its: AtHand, rows: Iterable[Carry], speech: Speech) -> GearShown:
    coarse = too_coarse(plan, its.id)
    held = speech.word(f"plan:{its.calibration}", due=_day(its))
    return GearShown(
        mark="un" if coarse or its.calibration == "out of date" else "ok",
        name=its.id,
        kind=speech.word(f"instrument-kind:{its.kind}"),
        purpose=_purpose(plan, rows, speech),
        note=held,
        coarse=_coarse(plan, coarse, speech),
    )


def _lacking(plan: Plan, row: Carry, speech: Speech) -> GearShown:
    """A kind that is not at hand; an ordinary one is assumed of it."""
    points = row.lacking or row.points
    assumed = [use for use in too_coarse(plan, None) if use.reads in points]
    return GearShown(
        mark="nm",
        name=speech.word(f"instrument-kind:{row.kind}"),
        kind="",
        purpose=_purpose(plan, (row,), speech),
        note=speech.word("plan:not-at-hand" if row.points else "plan:not-declared"),
        coarse=_coarse(plan, assumed, speech),
    )


def _purpose(plan: Plan, rows: Iterable[Carry], speech: Speech) -> str:
    """The tasks it is for, those of several furnaces once."""
    tasks = {each.task.id: each.task for each in plan.tasks}
    names = (tasks[id_].name for row in rows for id_ in row.tasks)
    return "; ".join(speech.word(f"task:{name}") for name in dict.fromkeys(names))


def _coarse(plan: Plan, uses: list[GaugeUse], speech: Speech) -> TooCoarse | None:
    if not uses:
        return None
    title = speech.word(f"plan:coarse:{'one' if len(uses) == 1 else 'many'}", count=len(uses))
    return TooCoarse(title, tuple(_coarse_shown(plan, use, speech) for use in uses))


def _coarse_shown(plan: Plan, use: GaugeUse, speech: Speech) -> CoarseShown:
    instead = next((other.instrument for other in plan.gauges if _is_finer(other, use)), None)
    return CoarseShown(
        name=speech.row(use_row(use)),
        run=speech.run(use.run),
        claims=_plus_minus(use.claim, use, speech),
        enough=_plus_minus(use.coarsest or 0.0, use, speech),
        instead=instead or "",
    )


def _is_finer(other: GaugeUse, use: GaugeUse) -> bool:
    """Whether another instrument carried decides the same."""
    same = (other.target, other.point, other.run) == (use.target, use.point, use.run)
    return same and other.reads == use.reads and other.fitness == "fine enough" and other.finest


def _plus_minus(size: float, use: GaugeUse, speech: Speech) -> str:
    """To two digits, so that two that are close can be told apart."""
    amount = speech.difference(size, use.reads_kind, expanded=TWO_DIGITS * size)
    return speech.word("plan:plus-minus", amount=amount)


def _day(its: AtHand) -> str:
    if its.due is None:
        return ""
    day = dt.date.fromisoformat(its.due)
    return f"{day.day} {day:%b %Y}"
