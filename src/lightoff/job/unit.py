"""The unit as its maker declares it: motor, drive, fan, airside, furnaces."""

from typing import Annotated, Literal

from pydantic import BeforeValidator, Field, field_validator

from lightoff.job.furnace import Furnace
from lightoff.job.quantities import (
    Amps,
    ApparentPower,
    CurveRow,
    Drop,
    Efficiency,
    ForceRange,
    Hertz,
    Number,
    ShaftPower,
    Share,
    Size,
    Speed,
    Volts,
)
from lightoff.job.table import Count, Name, Note, OneOf, Table, Text
from lightoff.machine.plate import Arrangement, Mounting
from lightoff.machine.trips import OPTIONS


class Electrical(Table):
    """The electrical supply, as declared."""

    volts: Annotated[Volts, Note("of the supply")]
    phases: Annotated[Literal[1, 3], Note("of the supply")]
    frequency: Annotated[Hertz | None, Note("60 Hz when not declared")] = None
    control_volts: Annotated[Volts | None, Note("24 V when not declared")] = None
    control_power: Annotated[ApparentPower | None, Note("of the control transformer")] = None


class Motor(Table):
    """The fan motor's plate."""

    power: Annotated[ShaftPower, Note("output")]
    volts: Annotated[Volts | None, Note("the supply's when not declared")] = None
    full_load_amps: Amps
    service_factor: Number | None = None
    speed: Annotated[Speed | None, Note("at full load")] = None
    efficiency: Annotated[Efficiency | None, Note("at full load")] = None
    power_factor: Annotated[Efficiency | None, Note("at full load")] = None


class Drive(Table):
    """What turns the fan: belt and sheaves or a shaft, with or without a drive for speed."""

    kind: Annotated[Literal["belt", "direct"], Note("how the motor turns the fan")]
    motor_sheave: Annotated[Size | None, Note("pitch diameter")] = None
    fan_sheave: Annotated[Size | None, Note("pitch diameter")] = None
    belts: Annotated[Count | None, Note("how many belts")] = None
    belt_force: Annotated[ForceRange | None, Note("the maker's window at the deflection")] = None
    span: Size | None = None
    adjustable: Annotated[bool, Note("the motor sheave can be opened and closed")] = False
    vfd: Annotated[bool, Note("the motor runs on a variable frequency drive")] = False
    full_speed_frequency: Annotated[Hertz | None, Note("60 Hz when not declared")] = None


class Fan(Table):
    """The supply fan."""

    wheel: Annotated[Size | None, Note("diameter")] = None
    speed: Annotated[Speed | None, Note("by design")] = None
    max_speed: Annotated[Speed | None, Note("the wheel's limit")] = None
    curve_speed: Annotated[Speed | None, Note("the speed of the curve")] = None
    curve: Annotated[
        list[CurveRow] | None,
        Note("airflow, fan static pressure and shaft power at curve_speed and 1.204 kg/m3"),
    ] = None

    @field_validator("curve")
    @classmethod
    def _is_a_curve(cls, curve: list[CurveRow]) -> list[CurveRow]:
        if len({row[0] for row in curve}) < 2:
            raise ValueError(
                "a curve needs two airflows at least: copy more points, or leave curve out"
            )
        return curve


class Airside(Table):
    """Pressure drops at design airflow, in standard air."""

    hood: Drop | None = None
    damper: Drop | None = None
    filters_clean: Drop | None = None
    filters_change: Annotated[Drop | None, Note("when filters are due")] = None
    furnace: Annotated[Drop | None, Note("of each furnace")] = None
    coil: Annotated[Drop | None, Note("of the cooling coil")] = None
    recirculation: Annotated[Share | None, Note("of the airflow; none when not declared")] = None


def _indirect(firing: object) -> object:
    if firing == "direct":
        raise ValueError(
            "a direct-fired unit has other rules: this tool serves indirect-fired ones only"
        )
    return firing


class Unit(Table):
    """One make-up air unit: what it is called, what was ordered with it, what it is made of."""

    tag: Annotated[Name, Field(examples=["MAU-1", "AHU-3"]), Note("how the drawings call the unit")]
    serial: Text | None = None
    serves: Annotated[Text | None, Note("the room it makes up air for")] = None
    arrangement: Annotated[Arrangement, Note("fan before or after the furnaces")]
    mounting: Annotated[Mounting | None, Note("rooftop when not declared")] = None
    firing: Annotated[
        Literal["indirect"], BeforeValidator(_indirect), Note("this tool serves no other")
    ] = "indirect"
    options: Annotated[
        list[Annotated[str, OneOf("an option", OPTIONS)]],
        Note("what was ordered with it; optional trips exist only where declared"),
    ] = []
    components: Annotated[dict[str, Text], Note("serial numbers by component")] = {}
    electrical: Electrical
    motor: Motor
    drive: Drive
    fan: Fan = Fan()
    airside: Airside = Airside()
    furnaces: Annotated[
        list[Furnace],
        Field(alias="furnace", min_length=1, max_length=3),
        Note("in the order the air meets them"),
    ]
