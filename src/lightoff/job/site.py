"""The engineer's schedule, the site with its gas, and the parties to the job."""

from typing import Annotated

from pydantic import Field, field_validator

from lightoff.job.quantities import (
    Airflow,
    Altitude,
    EnergyPrice,
    Exhaust,
    GasPressure,
    HeatingValue,
    Length,
    Number,
    OtherHeat,
    Pressure,
    Share,
    Size,
    Temperature,
    Volume,
    Weather,
    WeatherRow,
)
from lightoff.job.table import Note, OneOf, Table, Text
from lightoff.machine.site import HeatingValueBasis
from lightoff.physics.gas_components import COMPONENTS

Component = Annotated[str, OneOf("a component of fuel gas", COMPONENTS)]
COMPOSITION_SUMS_WITHIN = 0.02  # an analysis is rounded; much more is a part left out


class Design(Table):
    """What the engineer scheduled."""

    airflow: Annotated[Airflow, Note("at standard density, 1.204 kg/m3")]
    external_static: Pressure | None = None
    discharge: Annotated[Temperature, Field(examples=["70 degF", "21 degC"]), Note("set point")]
    winter_outdoor: Annotated[Weather, Note("on the coldest design day")]
    summer_outdoor: Annotated[Weather | None, Note("on the hottest design day")] = None
    exhaust: Annotated[Exhaust | None, Note("of all fans this unit makes up for")] = None


class Pipe(Table):
    """One length of gas pipe between the regulator and the unit."""

    size: Annotated[Size, Note("nominal")]
    length: Annotated[Length, Note("with its fittings")]
    other_load: Annotated[OtherHeat | None, Note("of other appliances it feeds")] = None


class Site(Table):
    """Where the unit stands, and the gas it gets there."""

    altitude: Annotated[Altitude, Field(examples=["980 ft", "300 m"]), Note("above sea level")]
    heating_value: Annotated[
        HeatingValue | None, Note("gross, at 60 degF and 30 inHg dry unless the basis says else")
    ] = None
    heating_value_basis: Annotated[HeatingValueBasis | None, Note("standard when not declared")] = (
        None
    )
    relative_density: Annotated[Number | None, Note("of the gas, air is 1")] = None
    gas_composition: Annotated[
        dict[Component, Share] | None, Note("by volume, instead of heating value and density")
    ] = None
    supply_pressure: Annotated[
        GasPressure | None, Note("at the regulator's outlet, as promised")
    ] = None
    meter_dial: Annotated[Volume | None, Note("one turn of the dial that is clocked")] = None
    meter_compensated: Annotated[bool, Note("the meter corrects for temperature")] = False
    gas_cost: EnergyPrice | None = None
    weather: Annotated[
        list[WeatherRow] | None, Note("hours of the year by outdoor temperature")
    ] = None
    pipes: Annotated[list[Pipe], Field(alias="pipe"), Note("from the regulator to the unit")] = []

    @field_validator("gas_composition")
    @classmethod
    def _is_whole(cls, parts: dict[str, float]) -> dict[str, float]:
        if abs(sum(parts.values()) - 1.0) > COMPOSITION_SUMS_WITHIN:
            raise ValueError(f"the parts sum to {sum(parts.values()):g}: they must sum to 1")
        return parts


class Parties(Table):
    """Whom the job concerns."""

    owner: Text | None = None
    installer: Text | None = None
    engineer: Text | None = None
    authority: Annotated[Text | None, Note("having jurisdiction")] = None
    permit: Text | None = None
    utility: Text | None = None
