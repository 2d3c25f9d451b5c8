"""What was done and seen on one visit. SI; frozen; nothing here is computed from anything else."""

import datetime as dt
from dataclasses import dataclass
from typing import Literal

State = Literal["as found", "as left"]
Outcome = Literal["right", "wrong", "not applicable"]
Severity = Literal["stop", "correct", "note"]
Rule = Literal["default", "guarded", "simple"]
Purpose = Literal["start-up", "seasonal", "service"]


@dataclass(frozen=True)
class Channel:
    """What an instrument claims for one quantity.

    `of_reading` and `of_range` are fractions; `plus_minus` and `resolution` [SI] are differences.
    """

    quantity: str
    range: tuple[float, float] | None = None
    of_reading: float = 0.0
    of_range: float = 0.0
    plus_minus: float = 0.0
    resolution: float = 0.0


@dataclass(frozen=True)
class Instrument:
    """One instrument carried, with its calibration dates."""

    id: str
    kind: str
    channels: tuple[Channel, ...] = ()
    calibrated: dt.date | None = None
    due: dt.date | None = None


@dataclass(frozen=True)
class Traverse:
    """A duct traverse: the plane [m] and the velocity pressures [Pa] or velocities [m/s] in it."""

    shape: Literal["rectangular", "round"]
    area: float
    pressures: tuple[float, ...] = ()
    velocities: tuple[float, ...] = ()


@dataclass(frozen=True)
class Reading:
    """One reading: `value` [SI]; for a traverse None, and `traverse` holds it.

    `standard` marks an airflow given at 1.204 kg/m3 instead of as it flows. `line` is its place
    in the visit, which orders readings without a time; `step` the size of the last digit written.
    """

    run: str
    point: str
    value: float | None
    line: int
    place: str
    instrument: str | None = None
    at: dt.datetime | None = None
    state: State | None = None
    position: str | None = None
    dial: float | None = None
    revolutions: float | None = None
    main_fan: bool = True
    traverse: Traverse | None = None
    standard: bool = False
    step: float = 0.0
    note: str | None = None


@dataclass(frozen=True)
class Adjustment:
    """Something turned: a setting, before and after [SI or words]."""

    at: dt.datetime
    what: str
    line: int
    place: str
    run: str | None = None
    before: float | str | None = None
    after: float | str | None = None


@dataclass(frozen=True)
class TripProof:
    """A trip made to act: what it did, at what value, in how many seconds."""

    id: str
    place: str
    furnace: int | None = None
    acted: bool | None = None
    value: float | None = None
    seconds: float | None = None
    restarted: bool | None = None


@dataclass(frozen=True)
class CheckMade:
    """A check seen."""

    id: str
    place: str
    outcome: Outcome


@dataclass(frozen=True)
class StepTimed:
    """A step of the sequence under the stopwatch [s]."""

    id: str
    place: str
    furnace: int | None = None
    seconds: float | None = None


@dataclass(frozen=True)
class Joint:
    """A joint tested for leaks."""

    id: str
    place: str
    outcome: Literal["tight", "leaks"]
    furnace: int | None = None
    how: str | None = None


@dataclass(frozen=True)
class Decay:
    """A pressure decay test: gauge pressures [Pa], temperatures [K], duration [s], volume [m3].

    `resolution` [Pa] is the place of the last digit written down.
    """

    section: str
    place: str
    start: float
    end: float
    duration: float
    medium: str = "air"
    start_temperature: float | None = None
    end_temperature: float | None = None
    volume: float | None = None
    isolated: bool = False
    resolution: float | None = None


@dataclass(frozen=True)
class SetPoint:
    """A set point of the controls, as found and as left (SI, or words)."""

    id: str
    place: str
    found: float | str | None = None
    left: float | str | None = None


@dataclass(frozen=True)
class Deficiency:
    """Something left open."""

    what: str
    place: str
    severity: Severity
    waits_on: str | None = None


@dataclass(frozen=True)
class Deferred:
    """A target put off, with the reason."""

    target: str
    place: str
    why: str
    furnace: int | None = None
    point: str | None = None
    run: str | None = None


@dataclass(frozen=True)
class Symptom:
    """What the caller complained of."""

    what: str
    place: str
    furnace: int | None = None


@dataclass(frozen=True)
class Limit:
    """A limit the job sets in place of the usual one [SI of the target's kind]."""

    target: str
    place: str
    source: str
    point: str | None = None
    run: str | None = None
    lower: float | None = None
    upper: float | None = None


@dataclass(frozen=True)
class Visit:
    """One visit, with the instruments, limits and decision rule that hold for it."""

    number: int
    purpose: Purpose = "start-up"
    by: str | None = None
    licence: str | None = None
    date: dt.date | None = None
    told: str | None = None
    left: str | None = None
    rule: Rule = "default"
    symptoms: tuple[Symptom, ...] = ()
    readings: tuple[Reading, ...] = ()
    adjustments: tuple[Adjustment, ...] = ()
    trips: tuple[TripProof, ...] = ()
    checks: tuple[CheckMade, ...] = ()
    steps: tuple[StepTimed, ...] = ()
    joints: tuple[Joint, ...] = ()
    decays: tuple[Decay, ...] = ()
    setpoints: tuple[SetPoint, ...] = ()
    deficiencies: tuple[Deficiency, ...] = ()
    deferred: tuple[Deferred, ...] = ()
    instruments: tuple[Instrument, ...] = ()
    limits: tuple[Limit, ...] = ()
