"""Every target with a number, in every run in which its points were read."""

from collections.abc import Callable, Iterator
from dataclasses import replace

from lightoff.inference.conformity import probability_within, within
from lightoff.inference.estimate import Estimate, NoSuchStateError
from lightoff.inference.told import Told
from lightoff.judgement.answer import Judged, Row, with_estimate
from lightoff.judgement.evidence import Evidence, Missing
from lightoff.judgement.limits import allowed
from lightoff.judgement.message import Remark, message
from lightoff.judgement.rulings import rule
from lightoff.judgement.target import Bounds, Case, Instance, Target
from lightoff.judgement.targets import TARGETS
from lightoff.judgement.together import Together


def judged_rows(
    evidence: Evidence, together: Together | None, *, budgets: bool = True
) -> list[Judged]:
    """Rows for everything read, and one for each thing that was not."""
    return [
        judge_case(target, case, budgets=budgets)
        for target in TARGETS
        for instance in target.instances(evidence.machine)
        for case in _cases(target, instance, evidence, together)
    ]


def _cases(
    target: Target, instance: Instance, evidence: Evidence, together: Together | None
) -> Iterator[Case]:
    """A case in each run in which something was read; one where nothing was."""
    if instance.foretold:
        yield Case(evidence.machine, instance, instance.runs[0], evidence, together)
        return
    read = [run for run in instance.runs if any(evidence.has(need, run) for need in instance.needs)]
    missed = instance.runs[:1] if target.wanted(evidence.machine, instance) else ()
    for run in read or missed:
        yield Case(evidence.machine, instance, run, evidence, together)


def judge_case(target: Target, case: Case, *, budgets: bool = True) -> Judged:
    """One target in one run."""
    evidence = case.evidence
    limit = allowed(target, case)
    stale = any(evidence.stale(need, case.run) for need in case.instance.needs)
    found = series(target, case)
    if isinstance(found, Missing) and stale:
        case = replace(case, evidence=evidence.with_stale(), together=None)
        found = series(target, case)
    if limit.bounds is None:
        return Judged(_find_it(target, case, found, stale), limit.remark)
    told = target.told(case)
    if isinstance(found, Missing):
        if told is None or not _by_model(target, case):
            return Judged(_not_measured(target, case, limit.bounds, found, stale), limit.remark)
        found = []
    row = _decided(target, case, limit.bounds, found, told, budgets, stale=stale)
    return Judged(row, limit.remark or _once_past(target, case, row))


def _once_past(target: Target, case: Case, row: Row) -> Remark | None:
    """That a limit that must stop was read past before it was read within, nothing being turned."""
    if target.severity != "stop" or row.decision != "conforms":
        return None
    for reading in case.evidence.moments(case.instance.needs, case.run)[:-1]:
        then = reckoned(target.estimate, replace(case, evidence=case.evidence.when(reading)))
        if isinstance(then, Estimate) and not within(then.value, row.lower, row.upper):
            values = {"target": target.id, "run": case.run, "value": then.value,
                      "kind": target.kind, "now": row.measured}  # fmt: skip
            return Remark(f"{reading.place}.value", "once-past", values)
    return None


def series(target: Target, case: Case) -> list[Estimate] | Missing:
    """The target's estimate at each reading of its points since the last adjustment, in time."""
    last = reckoned(target.estimate, case)
    if isinstance(last, Missing):
        return last
    if target.severity != "stop" and target.judge is None:
        return [last]
    earlier = []
    for reading in case.evidence.moments(case.instance.needs, case.run)[:-1]:
        then = replace(case, evidence=case.evidence.when(reading))
        estimate = reckoned(target.estimate, then)
        if isinstance(estimate, Estimate):
            earlier.append(estimate)
    return [*_distinct(earlier, last), last]


def reckoned(estimate: Callable[[Case], Estimate | Missing], case: Case) -> Estimate | Missing:
    """The estimate, or that its readings cannot all be true of one machine."""
    try:
        return estimate(case)
    except NoSuchStateError:
        return Missing(case.instance.needs, "impossible")


def _distinct(earlier: list[Estimate], last: Estimate) -> list[Estimate]:
    """Without the moments at which only a companion reading was taken and nothing changed."""
    kept: list[Estimate] = []
    for estimate in earlier:
        if estimate.parts != last.parts and (not kept or estimate.parts != kept[-1].parts):
            kept.append(estimate)
    return kept


def _by_model(target: Target, case: Case) -> bool:
    """Whether the model may speak alone: a reading of the day stands behind it."""
    evidence, instance = case.evidence, case.instance
    return target.by_model and any(
        evidence.readings(point, run)
        for run, point in evidence.history.state(evidence.state)
        if point in instance.needs and (instance.foretold or run == case.run)
    )


def _decided(
    target: Target,
    case: Case,
    bounds: Bounds,
    found: list[Estimate],
    told: Told | None,
    budgets: bool,
    *,
    stale: bool,
) -> Row:
    ruling, last = rule(target, case, bounds, found, told)
    return replace(
        with_estimate(_blank(target, case, bounds, stale), last, budgets=budgets),
        decision=ruling.decision,
        measured=found[-1].value if found else None,
        probability=probability_within(last.value, last.u, bounds.lower, bounds.upper),
        rule=ruling.rule,
        why=ruling.why,
        unchecked=ruling.unchecked,
    )


def _not_measured(target: Target, case: Case, bounds: Bounds, missing: Missing, stale: bool) -> Row:
    row = _blank(target, case, bounds, stale)
    read = any(case.evidence.has(need, case.run) for need in case.instance.needs)
    if read or missing.message != "missing":
        return replace(row, why=message(missing.message, points=missing.points))
    return row


def _find_it(target: Target, case: Case, found: list[Estimate] | Missing, stale: bool) -> Row:
    """Nothing declared, nothing demanded: it counts as `correct`, and never as `stop`."""
    row = _blank(target, case, None, stale)
    return replace(
        with_estimate(row, None if isinstance(found, Missing) else found[-1]),
        why=message("find-it"),
        severity="correct" if target.severity == "stop" else target.severity,
    )


def _blank(target: Target, case: Case, bounds: Bounds | None, stale: bool) -> Row:
    """The row before anything was found."""
    row = Row(
        id=target.id,
        point=case.instance.point,
        run=case.run,
        decision="not measured",
        severity=target.severity,
        why=message("not-measured"),
        stale=stale,
        furnace=case.instance.furnace,
        kind=target.kind,
        caution=target.caution,
    )
    if bounds is None:
        return row
    return replace(
        row,
        lower=bounds.lower,
        upper=bounds.upper,
        limit_from=bounds.limit_from,
        source=bounds.source,
    )
