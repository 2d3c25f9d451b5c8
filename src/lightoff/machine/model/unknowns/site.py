"""Unknowns of the site: its weather and its gas."""

from collections.abc import Iterator

from lightoff.machine.gas import heating_value, relative_density
from lightoff.machine.machine import Machine
from lightoff.machine.model.unknown import Unknown
from lightoff.machine.model.unknowns.row import JUDGED, fire, show
from lightoff.physics.atmosphere import barometric_pressure
from lightoff.quantity import si

INCH = si(1, "inwc")  # [Pa]
MILD = 283.15  # [K] outdoors, before anybody looked


def weather(machine: Machine) -> Iterator[Unknown]:
    """Barometer, outdoor air, and return air where there is any."""
    pressure = float(barometric_pressure(machine.site.altitude))
    yield fire(
        "air.barometer",
        pressure,
        0.0074 * pressure,
        "published spread",
        "hours at five stations about the altitude's pressure",
        unit="Pa",
    )
    yield fire(
        "air.outdoor.db",
        MILD,
        15.0,
        JUDGED,
        "any season",
        wander=1.5,
        inspected=r"air\.(outdoor|entering)\.db",
        unit="K",
    )
    yield fire("air.outdoor.rh", 0.5, 0.2, JUDGED, "any weather", wander=0.03)
    if machine.airside.recirculation > 0:
        yield fire("air.return.db", 294.0, 5.0, JUDGED, "occupied rooms", wander=0.5, unit="K")
        yield fire(
            "air.recirculation",
            machine.airside.recirculation,
            0.10,
            JUDGED,
            "damper position against flow",
        )


def gas(machine: Machine) -> Iterator[Unknown]:
    """The gas itself, its supply, and the meter."""
    kind = machine.furnaces[0].gas
    heat, density = heating_value(machine, kind), relative_density(machine, kind)
    promised = machine.site.supply_pressure or si(7.0, "inwc")
    yield fire(
        "gas.heating_value",
        heat.value,
        heat.spread,
        "published spread",
        "US EIA state means; month to month where declared",
        unit="J/m3",
    )
    yield fire(
        "gas.relative_density",
        density.value,
        density.spread,
        "published spread",
        "GRI-92/0123 (from memory); month to month where declared",
    )
    rooftop = machine.unit.mounting == "rooftop"
    yield fire(
        "gas.orifice_warmer",
        4.0 if rooftop else 8.0,
        6.0,
        JUDGED,
        "gas at the orifice over half way between soil and air: pipe, cabinet",
        wander=1.0,
        unit="K",
    )
    yield fire(
        "gas.orifices",
        1.0,
        0.015,
        JUDGED,
        "what their maker aims at, the same for every orifice",
        inspected=r"gas\.meter\.seconds",
    )
    yield show(
        "gas.set",
        promised,
        0.08 * promised,
        JUDGED,
        "static supply against what was promised",
        wander=0.01 * promised,
        inspected=r"gas\.supply",
        unit="Pa",
    )
    yield show(
        "gas.lost",
        0.08 * promised,
        0.06 * promised,
        JUDGED,
        "droop and pipe at the unit's input",
        inspected=r"gas\.supply",
        unit="Pa",
    )
    yield show(
        "gas.lock_up",
        0.15 * promised,
        0.08 * promised,
        JUDGED,
        "regulator at no flow over its setting",
        inspected=r"gas\.supply",
        unit="Pa",
    )
    yield show(
        "gas.others",
        0.65,
        0.35,
        JUDGED,
        "root of all other appliances over the unit's input",
    )
    yield show(
        "gas.meter_higher",
        0.0,
        0.8 * INCH,
        JUDGED,
        "pressure at the meter against that at the unit",
        inspected=r"gas\.meter\.pressure",
        unit="Pa",
    )
    yield show("gas.lost_behind_meter", 0.5, 0.3, JUDGED, "pipe's part of what is lost")
    yield show(
        "gas.meter_warmer",
        0.0,
        4.0,
        JUDGED,
        "gas in the meter over half way between soil and air",
        wander=0.5,
        unit="K",
    )
    yield show(
        "gas.meter.other_flow",
        0.0,
        1e-6,
        "declared",
        "nothing else on the meter",
        inspected=r"gas\.meter\.other_flow",
        unit="m3/s",
    )
    yield show(
        "meter.factor",
        1.0,
        0.0115,
        "published spread",
        "meters in service, within 2 %; state and city rules",
    )
