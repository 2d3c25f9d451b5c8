"""What each point should read in each run of the plan, and where its limits come from."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from lightoff.inference.estimate import Estimate
from lightoff.judgement.limits import allowed
from lightoff.judgement.message import Message, message
from lightoff.judgement.named import model_name
from lightoff.judgement.plan.expectation import Expectation
from lightoff.judgement.plan.rehearsal import Rehearsal, Rehearsed
from lightoff.judgement.rows import reckoned
from lightoff.judgement.target import Bounds, Case, LimitFrom, Target
from lightoff.judgement.targets import TARGETS
from lightoff.machine import kind_of
from lightoff.machine.visit import Severity


@dataclass(frozen=True)
class Limits:
    """What a target allows there, and who says so [SI]."""

    target: str
    severity: Severity
    lower: float | None
    upper: float | None
    limit_from: LimitFrom
    source: str


@dataclass(frozen=True)
class Window:
    """One reading, or one quantity worked out from readings, in one run.

    `target` is the first target whose quantity it is, None for a reading without one; `expected`
    and its standard uncertainty `spread` are the model's [SI], None where it has nothing to say;
    `turns` how many turns of the meter's dial the expected seconds are for.
    """

    point: str
    run: str
    target: str | None
    furnace: int | None
    kind: str
    expected: float | None
    spread: float | None
    limits: tuple[Limits, ...]
    why: Message
    turns: float | None = None


Key = tuple[str, str, bool]  # point, run, whether it is the reading itself


def windows(told: Rehearsal, expected: Expectation) -> tuple[Window, ...]:
    """Those of targets first; what several targets say of one quantity is one window."""
    found: dict[Key, Window] = {}
    for target, case in _cases(told):
        is_read = _is_reading(told, target, case)
        key = (case.instance.point, case.run, is_read)
        window = _of_target(told, expected, target, case, is_read)
        found[key] = _joined(found[key], window) if key in found else window
    for read in told.readings:
        key = (read.reading.point, read.reading.run, True)
        if read.known and key not in found:
            found[key] = _plain(read, expected)
    return tuple(found.values())


def _cases(told: Rehearsal) -> Iterator[tuple[Target, Case]]:
    """Every target in every run in which its points are to be read."""
    machine = told.evidence.machine
    for target in TARGETS:
        for instance in target.instances(machine):
            for run in instance.runs:
                if told.asks_for(instance, run):
                    yield target, Case(machine, instance, run, told.evidence)


def _is_reading(told: Rehearsal, target: Target, case: Case) -> bool:
    """Whether a target is about what its point shows, and not about something worked out."""
    found, read = reckoned(target.estimate, case), told.evidence.get(case.instance.point, case.run)
    return isinstance(found, Estimate) and read is not None and found.value == read.value


def _of_target(
    told: Rehearsal, expected: Expectation, target: Target, case: Case, is_read: bool
) -> Window:
    value, spread = _expected(told, expected, target, case, is_read)
    bounds = allowed(target, case).bounds
    return Window(
        point=case.instance.point,
        run=case.run,
        target=target.id,
        furnace=case.instance.furnace,
        kind=target.kind,
        expected=value,
        spread=spread,
        limits=() if bounds is None else (_limits(target, bounds),),
        why=_why(bounds),
    )


def _expected(
    told: Rehearsal, expected: Expectation, target: Target, case: Case, is_read: bool
) -> tuple[float | None, float | None]:
    """By the model; a difference of its points from them, without a spread of its own."""
    point = case.instance.point
    if is_read or kind_of(point) is None:
        model = expected.get(model_name(point), case.run)
        if model is not None:
            return model.value, model.u
    found = reckoned(target.estimate, case)
    if is_read or not isinstance(found, Estimate) or not _are_known(told, case):
        return None, None
    return found.value, None


def _are_known(told: Rehearsal, case: Case) -> bool:
    return all(
        read.known
        for read in told.readings
        if read.reading.run == case.run and read.reading.point in case.instance.needs
    )


def _plain(read: Rehearsed, expected: Expectation) -> Window:
    """A reading that no target is about by itself."""
    point, run = read.reading.point, read.reading.run
    model, turns = expected.values[run, point], read.reading.revolutions
    times = turns or 1.0
    return Window(
        point=point,
        run=run,
        target=None,
        furnace=None,
        kind=kind_of(point) or "number",
        expected=times * model.value,
        spread=times * model.u,
        limits=(),
        why=message("window-model"),
        turns=turns,
    )


def _joined(first: Window, second: Window) -> Window:
    """Two targets of one quantity: the first names it, both limit it."""
    return replace(
        first,
        limits=(*first.limits, *second.limits),
        why=first.why if first.limits else second.why,
    )


def _limits(target: Target, bounds: Bounds) -> Limits:
    return Limits(
        target.id, target.severity, bounds.lower, bounds.upper, bounds.limit_from, bounds.source
    )


_FROM: dict[LimitFrom, str] = {
    "plate": "window-plate",
    "design": "window-design",
    "site": "window-site",
    "specification": "window-specification",
    "code": "window-code",
    "standard": "window-standard",
    "common practice": "window-practice",
    "physics": "window-physics",
}


def _why(bounds: Bounds | None) -> Message:
    if bounds is None:
        return message("window-unknown")
    return message(_FROM[bounds.limit_from], source=bounds.source)
