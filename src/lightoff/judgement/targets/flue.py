"""Combustion: O2, carbon monoxide, flue temperature, draft, flame."""

from collections.abc import Iterator, Sequence

from lightoff.inference.conformity import acceptance, retaken, steady
from lightoff.inference.estimate import COVERAGE, Estimate, combine, with_part
from lightoff.inference.told import Uncertain
from lightoff.judgement.evidence import Missing
from lightoff.judgement.flue import air_free_co
from lightoff.judgement.message import message
from lightoff.judgement.target import (
    COMMON_PRACTICE,
    UNIT_PLATE,
    Bounds,
    Case,
    Instance,
    Ruling,
    Target,
    at_least,
    at_most,
    plate_range,
    reading,
)
from lightoff.judgement.targets.where import any_firing, at_low, each_furnace, while_firing
from lightoff.machine import Machine, firing
from lightoff.physics.combustion import CO_CLASS_LIMIT, CO_LOOK, air_free_from_o2

CLIMB = 10e-6  # [1] air-free; a smaller step is a flame's own wavering; [cp]
CO_INTAKE = 4e-6  # [1] of an intake nobody read; engineering judgement
CO_AIR_EXPANDED = 5e-6  # [1] expanded uncertainty at which clean air is believed


def _co_instances(machine: Machine) -> Iterator[Instance]:
    """High and low fire of each furnace, each to be read."""
    for number, furnace in machine.numbered():
        point, needs = f"co_air_free.{number}", (f"flue.{number}.co",)
        low = at_low(machine, number) if furnace.has_low_fire else ()
        high = tuple(
            run for run in while_firing(machine, number) if firing(machine, run)[number] == "high"
        )
        yield Instance(point, high, needs, furnace=number)
        if low:
            yield Instance(point, low, needs, furnace=number)


def _air_free(case: Case) -> Estimate | Missing:
    return air_free_co(case.evidence, case.furnace, case.run)


def _judge_co(_case: Case, bounds: Bounds, found: Sequence[Uncertain]) -> Ruling | None:
    """Above the mark, or climbing from one reading to the next."""
    last_two = [each for each in found[-2:] if isinstance(each, Estimate)]
    if len(last_two) < 2:
        return None
    before, now = last_two
    climb = combine(lambda a, b: b - a, before, now)
    if climb.value > COVERAGE * climb.u and climb.value > CLIMB:
        how = acceptance(now.expanded, bounds.lower, bounds.upper)
        return Ruling("does not conform", how, message("climbing", by=climb.value))
    return None


def _judge_co_limit(case: Case, bounds: Bounds, found: Sequence[Uncertain]) -> Ruling | None:
    """Within it only by an O2 that the plate does not allow: nothing to rely on.

    A typed O2 that is far too low makes any CO look harmless.
    """
    plate, point = case.machine.furnace(case.furnace).flue_o2, f"flue.{case.furnace}.o2"
    o2 = case.evidence.get(point, case.run)
    if plate is None or o2 is None or o2.value >= plate[0] or bounds.upper is None:
        return None
    co = case.evidence.get(f"flue.{case.furnace}.co", case.run)
    if co is None or found[-1].value > bounds.upper:
        return None
    if air_free_from_o2(co.value, plate[1]) <= bounds.upper:
        return None
    return Ruling("undecided", "guarded", message("o2-in-doubt", point=point, run=case.run))


def _excess(case: Case) -> Estimate | Missing:
    """CO in the discharge over that in the intake [1].

    Where nobody read the intake, more than an intake could well have counts as an excess all the
    same; less than that decides nothing.
    """
    points = ("air.discharge.co", "air.intake.co")
    discharge, intake = (case.evidence.get(point, case.run) for point in points)
    intake = intake or case.evidence.anywhere("air.intake.co")
    if discharge is None:
        return Missing(points if intake is None else points[:1])
    if intake is not None:
        return combine(lambda a, b: a - b, discharge, intake)
    unread = with_part(discharge, "intake not read", "air.intake.co", CO_INTAKE)
    return unread if unread.value > unread.expanded else Missing(points[1:])


def _judge_excess(_case: Case, _bounds: Bounds, found: Sequence[Uncertain]) -> Ruling:
    """Past its own uncertainty: leaking. Not past it, and finely measured: clean."""
    past = [each.value > each.expanded for each in found]
    clean = [
        not gone and each.expanded <= CO_AIR_EXPANDED
        for gone, each in zip(past, found, strict=True)
    ]
    latest = found[-1]
    agree = steady([(each.value, each.u) for each in found[-2:]])
    decision, stood = retaken(past, clean, agree)
    if past[-1]:
        return Ruling("does not conform", "guarded", message("co-in-air"))
    if stood and decision == "undecided":
        return Ruling("undecided", "guarded", message("retaken"))
    if clean[-1]:
        return Ruling("conforms", "guarded", message("within"))
    return Ruling("undecided", "guarded", message("co-too-coarse", expanded=latest.expanded))


def _discharge(machine: Machine) -> Iterator[Instance]:
    yield Instance("air.discharge.co", any_firing(machine), ("air.discharge.co",))


def _dry_flues(machine: Machine) -> Iterator[Instance]:
    """Of the furnaces that are not built to condense."""
    for instance in each_furnace(machine, "flue.{n}.db", "firing"):
        if not machine.furnace(instance.furnace or 1).condensing:
            yield instance


def _dew_point(case: Case) -> Bounds | None:
    """Flue gas is to leave above its dew point; walls that face cold air condense all the same."""
    dew = case.told(f"flue_dew_point.{case.furnace}")
    return None if dew is None else Bounds(dew.value, None, "physics", "dew point of the flue gas")


def _proving(machine: Machine) -> Iterator[Instance]:
    return each_furnace(machine, "furnace.{n}.proving_pressure", "firing")


TARGETS = (
    Target(
        id="O2",
        severity="correct",
        kind="fraction",
        instances=lambda machine: each_furnace(machine, "flue.{n}.o2", "high"),
        estimate=reading,
        bounds=lambda case: plate_range(case.machine.furnace(case.furnace).flue_o2),
        caution="caution-co",
    ),
    Target(
        id="CO air-free",
        severity="correct",
        kind="concentration",
        instances=_co_instances,
        estimate=_air_free,
        bounds=lambda _: at_most(CO_LOOK, "common practice", COMMON_PRACTICE),
        caution="caution-co",
        judge=_judge_co,
    ),
    Target(
        id="CO air-free limit",
        severity="stop",
        kind="concentration",
        instances=_co_instances,
        estimate=_air_free,
        bounds=lambda _: at_most(
            CO_CLASS_LIMIT, "standard", "ANSI Z83 appliance class limit (from memory)"
        ),
        caution="caution-co",
        judge=_judge_co_limit,
    ),
    Target(
        id="CO in the discharge",
        severity="stop",
        kind="concentration",
        instances=_discharge,
        estimate=_excess,
        bounds=lambda _: at_most(0.0, "physics", "no flue gas may enter the airstream"),
        caution="caution-co",
        judge=_judge_excess,
    ),
    Target(
        id="flue temperature maximum",
        severity="stop",
        kind="temperature",
        instances=lambda machine: each_furnace(machine, "flue.{n}.db", "firing"),
        estimate=reading,
        bounds=lambda case: at_most(
            case.machine.furnace(case.furnace).flue_max, "plate", "vent rating"
        ),
        caution="caution-hot",
    ),
    Target(
        id="flue temperature",
        severity="note",
        kind="temperature",
        instances=_dry_flues,
        estimate=reading,
        bounds=_dew_point,
        caution="caution-hot",
    ),
    Target(
        id="draft",
        severity="correct",
        kind="pressure",
        instances=lambda machine: each_furnace(machine, "flue.{n}.draft", "firing"),
        estimate=reading,
        bounds=lambda case: plate_range(case.machine.furnace(case.furnace).flue_draft),
        wanted=lambda machine, it: machine.furnace(it.furnace or 1).flue_draft is not None,
    ),
    Target(
        id="flame signal",
        severity="correct",
        kind="flame signal",
        instances=lambda machine: each_furnace(machine, "furnace.{n}.flame", "firing"),
        estimate=reading,
        bounds=lambda case: at_least(
            case.machine.furnace(case.furnace).flame_signal, "plate", UNIT_PLATE
        ),
        wanted=lambda machine, it: machine.furnace(it.furnace or 1).flame_signal is not None,
    ),
    Target(
        id="proving pressure",
        severity="correct",
        kind="pressure",
        instances=_proving,
        estimate=reading,
        bounds=lambda case: plate_range(case.machine.furnace(case.furnace).proving_pressure),
        wanted=lambda machine, it: machine.furnace(it.furnace or 1).proving_pressure is not None,
    ),
)
