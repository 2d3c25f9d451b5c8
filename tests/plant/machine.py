"""The plant: a unit as it truly stands at its site, with at most one fault."""

from dataclasses import dataclass, field, replace
from typing import Any

from plant.airside import Airside
from plant.belt import Drive
from plant.building import Building
from plant.control import Sensor, Transformer
from plant.fan import Fan
from plant.fuel import Fuel
from plant.furnace import Furnace
from plant.gas_line import Line, Meter
from plant.motor import Motor, Volts

Level = str | None


@dataclass(frozen=True)
class Condition:
    """What is done to the plant from outside."""

    outdoor: float  # [K]
    humidity: float  # relative
    barometer: float  # [Pa]
    room: float  # [K] of the return air and the boiler room
    wind: float = 0.0  # [Pa] on the vents
    supply: float = 1.0  # gas pressure by what the regulator is set to
    monoxide: float = 0.0  # carbon monoxide outdoors


@dataclass(frozen=True)
class Fault:
    """What is wrong, where, and how badly (the severity's meaning stands with its cause)."""

    id: str
    furnace: int | None = None
    severity: float = 0.0


@dataclass(frozen=True)
class Method:
    """What the ways of measuring add, shared by all readings of a visit."""

    discharge: float = 0.0  # of the rise, where the discharge probe hangs
    between: tuple[float, float, float] = (0.0, 0.0, 0.0)  # the same behind each furnace
    radiation: float = 0.0  # [K] on a bare probe with all fires on
    entering: float = 0.0  # [K] of the probe before the first furnace
    shade: float = 0.0  # [K] sun on the outdoor probe
    traverse: float = 0.0  # relative, of the plane
    area: float = 0.0  # relative, of the duct's measured area
    taps: tuple[float, float, float, float, float, float] = (0.0,) * 6  # in velocity pressures
    dilution: tuple[float, float, float] = (0.0, 0.0, 0.0)  # air in each flue sample
    flue: tuple[float, float, float] = (0.0, 0.0, 0.0)  # [K] of each flue probe's place
    clamp: float = 0.0  # relative, conductors and a drive's wave
    hood: float = -0.02  # relative, of a flow hood
    reference: tuple[bool, bool, bool] = (False, False, False)  # the other port taken
    dial: float = 1.0  # dial written down by the true one
    zero: float = 0.0  # [Pa] a gauge never zeroed
    unzeroed: str = "gauge-2"  # which
    harmonic: float = 1.0  # shown by true speed


@dataclass(frozen=True)
class Extras:
    """What only some faults touch."""

    intake_flue: float = 0.0  # share of the flue gas that the intake takes in
    air_in_line: float = 0.0  # share of air in the gas of the first firing
    dead_leg: float = 0.0  # how far one phase is lost: 1 wholly
    fan_held: bool = False  # the fan never starts
    heat_held: bool = False  # no furnace may fire
    damper_seconds: float = 45.0  # until the end switch makes
    drive_volts: float = 1.0  # of what the drive should give at a frequency


@dataclass(frozen=True)
class Machine:
    """Everything true of a unit."""

    seed: int
    arrangement: str
    indoor: bool
    fan: Fan
    airside: Airside
    motor: Motor
    drive: Drive
    vfd: bool
    hz: float
    volts: Volts
    sag: float  # of the line volts with the motor on, relative
    transformer: Transformer
    furnaces: tuple[Furnace, ...]
    controls: tuple[str, ...]
    leading: int  # index of the leading furnace
    fuel: Fuel
    line: Line
    meter: Meter
    gas_temperature: float
    building: Building
    sensor: Sensor
    belt: tuple[float, float, float]  # force [N], angle [deg], span [m]
    orifice: tuple[float, ...]  # [m] drilled, by furnace
    intake_warmth: float  # [K] of a roof over the outdoor air
    weather: Condition
    method: Method = Method()
    extras: Extras = Extras()
    fault: Fault = Fault("none")
    solved: dict[Any, Any] = field(default_factory=dict, compare=False, repr=False)

    def runs(self) -> tuple[str, ...]:
        """Every run there is for this unit."""
        names = ["off", "fan", "high"]
        numbers = range(1, len(self.furnaces) + 1)
        names += ["low"] if self.controls[self.leading] != "single-stage" else []
        if len(self.furnaces) > 1:
            names += [f"high.{n}" for n in numbers]
            names += [f"low.{n}" for n in numbers if self.controls[n - 1] != "single-stage"]
        return (*names, "all")

    def levels(self, run: str) -> tuple[Level, ...]:
        """What each furnace is told in a run."""
        count = len(self.furnaces)
        if run in ("off", "fan"):
            return (None,) * count
        if run in ("high", "all"):
            return ("high",) * count
        level, _, number = run.partition(".")
        called = int(number) - 1 if number else self.leading
        return tuple(level if i == called else None for i in range(count))

    def but(self, **changes: Any) -> "Machine":
        """The same plant with something else in it, nothing solved yet."""
        return replace(self, **changes, solved={})

    def but_furnace(self, index: int, **changes: Any) -> "Machine":
        furnaces = list(self.furnaces)
        furnaces[index] = replace(furnaces[index], **changes)
        return self.but(furnaces=tuple(furnaces))
