"""A point seen large: its readings and its estimate on one axis, against the window."""

from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup

from lightoff.inference.estimate import COVERAGE
from lightoff.judgement import Row
from lightoff.judgement.evidence import evidence
from lightoff.judgement.history import history
from lightoff.machine import kind_of
from lightoff.machine.visit import Reading
from lightoff.quantity import BY_NAME, KINDS, in_unit, printed_unit
from lightoff.surfaces.drawing import Measured, Ruler, ruler, state_of
from lightoff.surfaces.drawing.marks import State
from lightoff.surfaces.web.contexts.bench import Bench
from lightoff.surfaces.web.contexts.rows import strip_label, value_of

WIDE, NARROW = 800.0, 326.0
MOST = 6  # readings drawn, the latest


@dataclass(frozen=True)
class Large:
    """The picture, for a wide and for a narrow screen."""

    wide: Markup
    narrow: Markup
    judged: bool  # against limits


def large(
    bench: Bench, row: Row | None, point: str, run: str, past: Sequence[Reading]
) -> Large | None:
    """A row's window with its estimate; of a point that is simply read, its readings as well."""
    kind = (row.kind if row else None) or kind_of(point)
    if kind is None:
        return None
    lines = _readings(bench, row, kind, past) if _simply_read(bench, row, point) else []
    if row is not None and row.estimate is not None:
        lines.append(_best(bench, row, kind))
    if not lines and (row is None or (row.lower is None and row.upper is None)):
        return None
    what = _ruler(bench, row, kind, lines)
    label = _label(bench, row, point, run)
    judged = what.lower is not None or what.upper is not None
    return Large(ruler(what, label, width=WIDE), ruler(what, label, width=NARROW), judged)


def _simply_read(bench: Bench, row: Row | None, point: str) -> bool:
    """Whether what is judged is the reading itself, and not a difference it is part of."""
    return row is None or bench.needed(row) == (point,)


def _readings(bench: Bench, row: Row | None, kind: str, past: Sequence[Reading]) -> list[Measured]:
    known = evidence(bench.machine, bench.visit, history(bench.machine, bench.visit))
    lines = []
    for reading in past[-MOST:]:
        if reading.value is None or reading.standard:
            continue
        estimate = known.of(reading)
        state = _state(estimate.value, row)
        name = f"{reading.at:%H:%M}" if reading.at else bench.speech.word("reading:untimed")
        lines.append(_measured(bench, kind, name, estimate.value, estimate.expanded, state))
    return lines


def _state(value: float, row: Row | None) -> State:
    """The bare reading against the limits: the decision is the estimate's alone."""
    if row is None or (row.lower is None and row.upper is None):
        return "nm"
    if row.upper is not None and value > row.upper:
        return "hi"
    return "lo" if row.lower is not None and value < row.lower else "ok"


def _best(bench: Bench, row: Row, kind: str) -> Measured:
    expanded = COVERAGE * (row.standard_uncertainty or 0.0)
    name = bench.speech.word("estimate")
    return _measured(bench, kind, name, row.estimate or 0.0, expanded, state_of(row), best=True)


def _measured(
    bench: Bench, kind: str, name: str, value: float, expanded: float, state: State,
    *, best: bool = False,
) -> Measured:  # fmt: skip
    unit = KINDS[kind].unit(bench.speech.system)
    number = bench.speech.parts(value, kind, expanded=expanded).number
    spread = bench.speech.spread(expanded, kind) if expanded else "0"
    text = f"{number} ± {spread} {printed_unit(unit)}".strip()
    return Measured(
        name, text, in_unit(value, kind, unit), expanded / BY_NAME[unit].factor, state, best
    )


def _ruler(bench: Bench, row: Row | None, kind: str, lines: list[Measured]) -> Ruler:
    system = bench.speech.system
    unit = KINDS[kind].unit(system)
    limits = (None, None) if row is None else (row.lower, row.upper)
    lower, upper = (None if x is None else in_unit(x, kind, unit) for x in limits)
    texts = _limit_texts(bench, row)
    return Ruler(lines, lower, upper, *texts, printed_unit(unit))


def _limit_texts(bench: Bench, row: Row | None) -> tuple[str, str]:
    """Both limits as the window's words write them."""
    if row is None or row.kind is None:
        return "", ""
    low, high = (
        "" if limit is None else bench.speech.limit(limit, row) for limit in (row.lower, row.upper)
    )
    return low, high


def _label(bench: Bench, row: Row | None, point: str, run: str) -> str:
    if row is not None:
        return strip_label(row, value_of(row, bench.speech), bench.speech)
    name = bench.speech.point(point)
    return bench.speech.word("answer:name", name=name, run=bench.speech.run(run))
