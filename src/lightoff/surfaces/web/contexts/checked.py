"""What the other readings say of one: what they foretell, which of them, and what would show."""

from dataclasses import dataclass

from lightoff.inference.estimate import COVERAGE
from lightoff.judgement import Remark
from lightoff.judgement.answer import PointRow
from lightoff.machine import kind_of
from lightoff.surfaces.drawing.marks import Mark
from lightoff.surfaces.web.contexts.bench import Bench


@dataclass(frozen=True)
class Check:
    """A reading held against all others, in sentences."""

    mark: Mark
    lines: tuple[str, ...]


def check_of(bench: Bench, point: str, run: str) -> Check | None:
    """How the last reading of a point in a run stands beside all others; None where none looked."""
    row = next((p for p in bench.answer.points if (p.id, p.run) == (point, run)), None)
    kind = kind_of(point)
    if row is None or row.redundancy is None or kind is None:
        return None
    if row.foretold is None:
        return Check("nm", (bench.speech.word("check:none"),))
    return Check("un" if row.suspect else "ok", tuple(_lines(bench, row, row.foretold, kind)))


def _lines(bench: Bench, row: PointRow, foretold: float, kind: str) -> list[str]:
    word, expanded = bench.speech.word, COVERAGE * (row.foretold_uncertainty or 0.0)
    says = bench.speech.quantity(foretold, kind, expanded=expanded)
    spread = bench.speech.spread(expanded, kind)
    lines = [word("check:off" if row.suspect else "check:fits", value=says, spread=spread)]
    lines += [bench.speech.say(each) for each in _slips(bench, row)]
    if row.checked_by:
        names = bench.speech.together([bench.speech.reading(each) for each in row.checked_by])
        lines.append(word("check:by", names=names))
    if row.detectable_bias is not None:
        bias = abs(row.detectable_bias)
        lines.append(word("check:bias", size=bench.speech.difference(bias, kind, expanded=bias)))
    return lines


def _slips(bench: Bench, row: PointRow) -> list[Remark]:
    """The remark on a reading that does not fit, which names the slip that would explain it."""
    return [
        remark
        for remark in bench.answer.remarks
        if remark.message in ("misfit", "misfits", "misfit-group")
        and (remark.values["point"], remark.values["run"]) == (row.id, row.run)
        and remark.values["slip"]
    ]
