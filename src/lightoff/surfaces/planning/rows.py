"""Parts of a plan as rows of an answer that nobody has measured yet: named and drawn the same."""

from lightoff.judgement import Row
from lightoff.judgement.message import message
from lightoff.judgement.plan import GaugeUse, Window


def use_row(use: GaugeUse) -> Row:
    """The row that a gauge is used for."""
    return Row(
        id=use.target,
        point=use.point,
        run=use.run,
        decision="not measured",
        severity=use.severity,
        why=use.why,
        furnace=use.furnace,
        kind=use.kind,
    )


def window_row(window: Window) -> Row:
    """A window with the value to expect; of several limits the first."""
    first = window.limits[0] if window.limits else None
    return Row(
        id=window.target or window.point,
        point=window.point,
        run=window.run,
        decision="not measured",
        estimate=window.expected,
        standard_uncertainty=window.spread,
        lower=first.lower if first else None,
        upper=first.upper if first else None,
        severity=first.severity if first else "note",
        limit_from=first.limit_from if first else None,
        source=first.source if first else None,
        why=message("not-measured"),
        furnace=window.furnace,
        kind=window.kind,
    )
