"""One visit: what was read, turned, proven, seen and left."""

from typing import Annotated, Literal

from pydantic import Field

from lightoff.job.moments import Day, Moment
from lightoff.job.names import (
    CheckId,
    FurnaceNumber,
    PointId,
    Run,
    SettingId,
    StepFurnace,
    StepId,
    TripFurnace,
    TripId,
)
from lightoff.job.quantities import Minutes, Seconds, Temperature, TestPressure, Volume
from lightoff.job.reading import Reading
from lightoff.job.table import Name, Note, Table, Text
from lightoff.job.target import Target
from lightoff.job.values import Medium, SetPointValue, SettingValue, TestStart, TripValue
from lightoff.machine.visit import Outcome, Purpose, Severity

Left = Literal["running", "off", "gas shut and tagged"]


class Symptom(Table):
    """What the caller complained of."""

    what: Annotated[Name, Field(examples=["won't light", "short-cycles"])]
    furnace: FurnaceNumber | None = None


class Adjustment(Table):
    """Something turned, with its value before and after."""

    at: Moment
    what: SettingId
    run: Annotated[Run | None, Note("in which it was turned")] = None
    before: Annotated[SettingValue, Field(alias="from")] = None
    after: Annotated[SettingValue, Field(alias="to")] = None


class Trip(Table):
    """A trip made to act."""

    id: TripId
    furnace: Annotated[TripFurnace, Field(validate_default=True)] = None
    acted: Annotated[bool | None, Note("whether it stopped the unit")] = None
    value: Annotated[TripValue, Note("at which it acted")] = None
    seconds: Annotated[Seconds | None, Note("until it acted")] = None
    restarted: Annotated[bool | None, Note("as intended")] = None


class Check(Table):
    """A check seen."""

    id: CheckId
    outcome: Annotated[Outcome, Note("what was found")]


class Step(Table):
    """A step of the sequence under the stopwatch."""

    id: StepId
    furnace: Annotated[StepFurnace, Field(validate_default=True)] = None
    seconds: Annotated[Seconds | None, Note("it took")] = None


class Joint(Table):
    """A joint tested for leaks."""

    id: Annotated[Name, Field(examples=["union below the valve", "meter outlet"])]
    furnace: FurnaceNumber | None = None
    outcome: Annotated[Literal["tight", "leaks"], Note("what was found")]
    how: Annotated[Text | None, Note("with what, and in which state of the unit")] = None


class Decay(Table):
    """A pressure decay test of a section of pipe."""

    section: Annotated[Name, Field(examples=["upstream of the unit's valve", "train 1"])]
    medium: Annotated[Medium | None, Note("air or an inert gas, never oxygen")] = None
    isolated: Annotated[bool, Note("the unit was disconnected and the pipe capped")] = False
    start: TestStart
    end: TestPressure
    start_temperature: Temperature | None = None
    end_temperature: Temperature | None = None
    minutes: Annotated[Minutes, Field(examples=[15, 30])]
    volume: Annotated[Volume | None, Note("of the section")] = None


class SetPoint(Table):
    """A set point of the controls."""

    id: Annotated[Name, Field(examples=["discharge", "room override"])]
    found: Annotated[SetPointValue, Note("as found")] = None
    left: Annotated[SetPointValue, Note("as left")] = None


class Deficiency(Table):
    """Something left open."""

    what: Annotated[Name, Field(examples=["hood seam open", "trap not primed"])]
    severity: Annotated[Severity, Note("stop: not to be left running")]
    waits_on: Annotated[Text | None, Note("who has to act")] = None


class Deferred(Table):
    """A target put off, with the reason."""

    target: Target
    furnace: FurnaceNumber | None = None
    point: PointId | None = None
    run: Run | None = None
    why: Annotated[Text, Field(examples=["too warm to hold high fire", "duct unfinished"])]


class Visit(Table):
    """One visit to the unit."""

    purpose: Annotated[Purpose | None, Note("a start-up when not declared")] = None
    by: Text | None = None
    licence: Text | None = None
    date: Day | None = None
    told: Annotated[Text | None, Note("who was told how it was left")] = None
    left: Annotated[Left | None, Note("how the unit was left")] = None
    symptoms: Annotated[list[Symptom], Field(alias="symptom"), Note("the complaints")] = []
    readings: Annotated[list[Reading], Field(alias="reading"), Note("in order of time")] = []
    adjustments: Annotated[list[Adjustment], Field(alias="adjustment"), Note("all turned")] = []
    trips: Annotated[list[Trip], Field(alias="trip"), Note("the trips proven")] = []
    checks: Annotated[list[Check], Field(alias="check"), Note("the checks seen")] = []
    steps: Annotated[list[Step], Field(alias="step"), Note("the steps timed")] = []
    joints: Annotated[list[Joint], Field(alias="joint"), Note("the joints tested")] = []
    decays: Annotated[list[Decay], Field(alias="decay"), Note("the decay tests")] = []
    setpoints: Annotated[list[SetPoint], Field(alias="setpoint"), Note("the set points")] = []
    deficiencies: Annotated[
        list[Deficiency], Field(alias="deficiency"), Note("what is left open")
    ] = []
    deferred: Annotated[list[Deferred], Note("the targets put off")] = []
