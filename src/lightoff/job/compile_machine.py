"""The declared tables as the frozen machine the engine works on."""

from dataclasses import fields
from typing import Any, TypeVar

from lightoff.job.furnace import Furnace, shares
from lightoff.job.site import Design, Parties, Site
from lightoff.job.table import Table
from lightoff.job.unit import Fan, Unit
from lightoff.machine import Machine, plate, site

T = TypeVar("T")


def machine(unit: Unit, design: Design, place: Site, parties: Parties) -> Machine:
    """Everything declared about one unit at one site."""
    named = tuple((role, name) for role, name in parties if name is not None)
    return _machine(unit, filled(site.Design, design), _site(place), named)


def machine_alone(unit: Unit) -> Machine:
    """The unit at no particular site: its runs, points and trips hang on nothing else."""
    nowhere = site.Design(airflow=1.0, discharge=293.15, winter_outdoor=273.15)
    return _machine(unit, nowhere, site.Site(altitude=0.0))


def _machine(
    unit: Unit, design: site.Design, place: site.Site, parties: tuple[tuple[str, str], ...] = ()
) -> Machine:
    return Machine(
        unit=filled(plate.Unit, unit, options=frozenset(unit.options)),
        electrical=filled(plate.Electrical, unit.electrical),
        motor=filled(plate.Motor, unit.motor, volts=unit.motor.volts or unit.electrical.volts),
        drive=filled(plate.Drive, unit.drive),
        fan=_fan(unit.fan),
        airside=filled(plate.Airside, unit.airside),
        furnaces=tuple(_furnace(furnace) for furnace in unit.furnaces),
        design=design,
        site=place,
        parties=parties,
    )


def filled(kind: type[T], table: Table, **own: Any) -> T:
    """A `kind` with what the table declares and `own`; its own defaults fill the rest."""
    names = {field.name for field in fields(kind)}  # type: ignore[arg-type]  # mypy cannot say that T is a dataclass
    declared = {name: value for name, value in table if value is not None and name in names}
    return kind(**{**declared, **own})


def _fan(fan: Fan) -> plate.Fan:
    return filled(plate.Fan, fan, curve=tuple(plate.CurvePoint(*row) for row in fan.curve or ()))


def _furnace(furnace: Furnace) -> plate.Furnace:
    trains = tuple(
        filled(plate.Train, train, share=share)
        for train, share in zip(furnace.trains, shares(furnace.trains), strict=True)
    )
    signal = furnace.flame_signal
    return filled(
        plate.Furnace, furnace, trains=trains, flame_signal=None if signal is None else signal.value
    )


def _site(place: Site) -> site.Site:
    return filled(
        site.Site,
        place,
        gas_composition=tuple((place.gas_composition or {}).items()),
        weather=tuple(place.weather or ()),
        pipes=tuple(filled(site.Pipe, pipe) for pipe in place.pipes),
    )
