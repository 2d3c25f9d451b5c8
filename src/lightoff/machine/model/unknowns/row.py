"""How a row of the table of unknowns is written down."""

from collections.abc import Callable

from lightoff.machine.model.unknown import Origin, Stage, Unknown


def at(stage: Stage) -> Callable[..., Unknown]:
    """How the unknowns that first matter at one stage are written down."""

    def row(
        name: str,
        mean: float,
        spread: float,
        origin: Origin,
        source: str,
        *,
        wander: float = 0.0,
        inspected: str = "",
        beside: str = "",
        unit: str = "1",
    ) -> Unknown:
        return Unknown(name, mean, spread, unit, stage, origin, source, wander, inspected, beside)

    return row


fire, balance, show = at("fire"), at("balance"), at("show")

JUDGED: Origin = "judgement"
