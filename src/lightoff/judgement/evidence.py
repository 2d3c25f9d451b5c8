"""What the readings of one state say: estimates with their uncertainty."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from lightoff.inference.estimate import Estimate, Part, combine
from lightoff.inference.instruments import UNKNOWN, channel_for, instrument_parts, quantity_read
from lightoff.inference.methods import method_parts
from lightoff.judgement.history import Held, History, State
from lightoff.judgement.written import read_by_eye, rounding
from lightoff.machine import Machine, Visit, kind_of, of_any_lead
from lightoff.machine.visit import Channel, Instrument, Reading
from lightoff.physics.atmosphere import barometric_pressure

BAROMETER_SPREAD = 0.0074  # [1] weather about the altitude's pressure; five stations' own hours
DIAL_MARK = 0.007  # [1] a dial seen passing its mark, of one turn; engineering judgement


@dataclass(frozen=True)
class Missing:
    """An estimate that cannot be made: the points that would have to be read."""

    points: tuple[str, ...]
    message: str = "missing"


@dataclass(frozen=True)
class Evidence:
    """The readings of one state of a visit.

    `read` holds each reading's estimate by its place; `stale_too` lets stale readings speak where
    nothing newer does; `until` looks at the machine as it was known when that reading was taken.
    """

    machine: Machine
    visit: Visit
    history: History
    read: Mapping[str, Estimate]
    state: State = "as left"
    stale_too: bool = False
    until: Reading | None = None

    def held(self, point: str, run: str) -> Held | None:
        """What is held at a point in a run, stale or not."""
        return self.history.state(self.state).get((run, point))

    def readings(self, point: str, run: str) -> tuple[Reading, ...]:
        """The readings that may speak, in time."""
        held = self.held(point, run)
        if held is None or (held.stale and not self.stale_too):
            return ()
        if self.until is None:
            return held.readings
        order = self.history.order
        now = order[self.until.place]
        return tuple(r for r in held.readings if order[r.place] <= now) or held.readings[:1]

    def moments(self, points: tuple[str, ...], run: str) -> list[Reading]:
        """Every reading at any of these points in a run that may speak, in time."""
        readings = [reading for point in points for reading in self.readings(point, run)]
        return sorted(readings, key=lambda reading: self.history.order[reading.place])

    def stale(self, point: str, run: str) -> bool:
        """Whether this point was read in this run, and an adjustment has moved it since."""
        held = self.held(point, run)
        return held is not None and held.stale

    def has(self, point: str, run: str) -> bool:
        """Whether this point was read in this run at all."""
        return self.held(point, run) is not None

    def get(self, point: str, run: str) -> Estimate | None:
        """The latest reading, or the mean of the latest at each position."""
        latest = self.latest(point, run)
        if not latest:
            return None
        return mean([self.read[reading.place] for reading in latest], point)

    def latest(self, point: str, run: str) -> tuple[Reading, ...]:
        """The latest reading at each position of the probe."""
        by_position = {reading.position: reading for reading in self.readings(point, run)}
        return tuple(by_position.values())

    def anywhere(self, point: str) -> Estimate | None:
        """The latest reading at a point in any run: for what no run changes, as the barometer."""
        runs = [run for run, there in self.history.state(self.state) if there == point]
        last = [readings[-1] for run in runs if (readings := self.readings(point, run))]
        if not last:
            return None
        return self.of(max(last, key=lambda reading: self.history.order[reading.place]))

    def of(self, reading: Reading) -> Estimate:
        """One reading with its uncertainty."""
        return self.read[reading.place]

    def barometer(self) -> Estimate:
        """Absolute air pressure: read, or from the altitude with the weather's spread [Pa]."""
        return self._barometer

    @cached_property
    def _barometer(self) -> Estimate:
        read = self.anywhere("air.barometer")
        if read is not None:
            return read
        pressure = barometric_pressure(self.machine.site.altitude)
        return Estimate(
            pressure, {Part("weather", "barometer from altitude"): BAROMETER_SPREAD * pressure}
        )

    def with_stale(self) -> "Evidence":
        """The same, letting stale readings speak where nothing newer does."""
        return replace(self, stale_too=True)

    def when(self, reading: Reading) -> "Evidence":
        """The same, as it was known when `reading` was taken."""
        return replace(self, until=reading)


def evidence(machine: Machine, visit: Visit, history: History) -> Evidence:
    """The evidence of a visit, each reading's uncertainty worked out once."""
    steps = rounding(visit.readings)
    read = {
        reading.place: _estimate(machine, visit, reading, steps.get(reading.place, 0.0))
        for reading in visit.readings
    }
    return Evidence(machine, visit, history, read)


def _estimate(machine: Machine, visit: Visit, reading: Reading, step: float) -> Estimate:
    """One reading with what its instrument, its method and the eye add, written in such steps."""
    value = reading.value or 0.0
    gauge = channel_of(visit, reading)
    owner = f"{owner_of(reading)} {gauge.quantity}"
    parts = instrument_parts(value, gauge, name=owner, reading=reading.place)
    own = _instrument(visit, reading)
    on_drive = machine.drive.vfd and (own is None or own.kind == "clamp")
    parts |= method_parts(reading.point, value, reading=reading.place, on_drive=on_drive)
    if reading.point == "gas.meter.seconds":
        turns = reading.revolutions or 1.0
        parts[Part("dial mark", reading.place)] = DIAL_MARK * value / turns
    by_eye = read_by_eye(reading, value, step)
    if by_eye:
        parts[Part("read by eye", reading.place)] = by_eye
    return Estimate(value, parts)


def channel_of(visit: Visit, reading: Reading, quantity: str | None = None) -> Channel:
    """What the reading's instrument claims, or what is assumed of an unknown one."""
    quantity = quantity or quantity_read(reading.point, kind_of(reading.point) or "number")
    return channel_for(_instrument(visit, reading), quantity) or UNKNOWN[quantity]


def owner_of(reading: Reading) -> str:
    """Whose gain and zero a reading shares; nobody knows that two unknown ones are the same.

    The leads of one supply or one motor are taken with one meter.
    """
    return reading.instrument or f"unknown instrument at {of_any_lead(reading.point)}"


def _instrument(visit: Visit, reading: Reading) -> Instrument | None:
    return next((i for i in visit.instruments if i.id == reading.instrument), None)


def mean(estimates: list[Estimate], point: str) -> Estimate:
    """The mean of several positions, with their scatter as a part of its own (JCGM 100, 4.2.3)."""
    if len(estimates) == 1:
        return estimates[0]
    n = len(estimates)
    centre = combine(lambda *values: sum(values) / n, *estimates)
    scatter = sum((each.value - centre.value) ** 2 for each in estimates) / (n - 1) / n
    return Estimate(
        centre.value, {**centre.parts, Part("scatter of positions", point): scatter**0.5}
    )
