"""One furnace module and its gas trains, as the plate declares them."""

from typing import Annotated

from pydantic import Field, ValidationInfo, field_validator

from lightoff.job.quantities import (
    Efficiency,
    FlameSignal,
    GasPressure,
    Heat,
    HeatingValue,
    Number,
    OxygenRange,
    Pressure,
    PressureRange,
    RiseRange,
    Share,
    Temperature,
    Time,
)
from lightoff.job.table import Note, Table
from lightoff.machine.plate import Control, Derate, Gas, Reference

SHARES_SUM_WITHIN = 0.001


class Train(Table):
    """One gas train: the plate's pressures and its share of the furnace's input."""

    valve_outlet: Pressure | None = None
    manifold_high: Annotated[Pressure | None, Note("at high fire")] = None
    manifold_low: Annotated[Pressure | None, Note("at low fire; absent on single-stage")] = None
    reference: Annotated[
        Reference | None,
        Note("against what the manifold is stated; the atmosphere when not declared"),
    ] = None
    share: Annotated[Share | None, Note("of the furnace's input; equal when not declared")] = None

    @field_validator("manifold_low")
    @classmethod
    def _below_high_fire(cls, low: float | None, info: ValidationInfo) -> float | None:
        high = info.data.get("manifold_high")
        if low is not None and high is not None and low >= high:
            raise ValueError("manifold_low is not below manifold_high: low fire has less pressure")
        return low


class Furnace(Table):
    """One furnace module; they stand in the order the air meets them."""

    gas: Annotated[Gas, Note("the gas it is built for")]
    control: Annotated[Control, Note("how its fire is controlled")]
    leading: Annotated[bool, Note("exactly one furnace in the unit leads")] = False
    input: Annotated[Heat, Note("gross, at high fire, as on the plate")]
    derate: Annotated[Derate | None, Note("how the input is taken back at altitude")] = None
    rated_heating_value: Annotated[
        HeatingValue | None, Note("of the gas the plate's input was stated for")
    ] = None
    rated_relative_density: Annotated[Number | None, Note("of the same gas, air is 1")] = None
    efficiency: Annotated[Efficiency | None, Note("gross")] = None
    rise: Annotated[RiseRange | None, Note("at high fire")] = None
    max_outlet: Annotated[Temperature | None, Note("the hottest air it may make")] = None
    supply_min: Annotated[GasPressure | None, Note("the least at its inlet")] = None
    supply_max: Annotated[GasPressure | None, Note("the most at its inlet")] = None
    flue_o2: Annotated[OxygenRange | None, Note("oxygen in the dry flue gas at high fire")] = None
    flue_max: Annotated[Temperature | None, Note("the vent's rating")] = None
    flue_draft: Annotated[PressureRange | None, Note("gauge, suction negative")] = None
    condensing: Annotated[bool, Note("built to condense")] = False
    flame_signal: Annotated[FlameSignal | None, Note("the least for a sound flame")] = None
    proving_pressure: Annotated[PressureRange | None, Note("of the combustion air")] = None
    purge: Annotated[Time | None, Note("before the trial")] = None
    ignition_trial: Annotated[Time | None, Note("with the valve open and no flame")] = None
    flame_failure: Annotated[Time | None, Note("from the flame lost to the gas off")] = None
    post_purge: Annotated[Time | None, Note("after the burner is off")] = None
    stage_delay: Annotated[Time | None, Note("before the next stage")] = None
    high_limit: Annotated[Temperature | None, Note("at the limit's own sensor")] = None
    trains: Annotated[
        list[Train], Field(alias="train", max_length=2), Note("one, or two for a wide turndown")
    ] = [Train()]

    @field_validator("supply_max")
    @classmethod
    def _above_the_least(cls, most: float, info: ValidationInfo) -> float:
        least = info.data.get("supply_min")
        if least is not None and most < least:
            raise ValueError("supply_max is below supply_min: no supply could ever be right")
        return most

    @field_validator("trains")
    @classmethod
    def _shares_make_one(cls, trains: list[Train]) -> list[Train]:
        if not trains:
            return [Train()]
        parts = shares(trains)
        if abs(sum(parts) - 1.0) > SHARES_SUM_WITHIN or min(parts) <= 0:
            given = " and ".join(f"{part:g}" for part in parts)
            raise ValueError(
                f"the trains' shares are {given}: each is above 0, together they are 1"
            )
        return trains


def shares(trains: list[Train]) -> tuple[float, ...]:
    """Each train's share; those that declare none take equal parts of what the others leave."""
    declared = [train.share for train in trains if train.share is not None]
    silent = len(trains) - len(declared)
    rest = max(0.0, 1.0 - sum(declared)) / silent if silent else 0.0
    return tuple(rest if train.share is None else train.share for train in trains)
