"""Unknowns of the airstream: fan curve, drops, probes, the building."""

import math
from collections.abc import Iterator

from lightoff.machine.machine import Machine
from lightoff.machine.model.exchanger import CASING_LOSS
from lightoff.machine.model.rated import Rated
from lightoff.machine.model.unknown import Unknown
from lightoff.machine.model.unknowns.row import JUDGED, balance, show


def airside(rated: Rated) -> Iterator[Unknown]:
    """Fan curve and what each part takes of its pressure."""
    plate, known = rated.machine.airside, rated.fan.declared
    yield balance(
        "duct.resistance",
        1.1,
        0.3,
        JUDGED,
        "as built over design",
        wander=0.01,
        inspected=r"airflow.*|static\.duct|air\.(discharge|after\.\d)\.db",
    )
    yield balance(
        "fan.pressure",
        1.0,
        0.06 if known else 0.12,
        JUDGED,
        "the plate's curve, the place's part",
        wander=0.01,
    )
    yield balance(
        "fan.shape",
        0.0,
        0.05 if known else 0.25,
        JUDGED,
        "how steep the curve is away from the design point",
    )
    yield balance(
        "fan.power",
        1.03,
        0.06 if known else 0.20,
        JUDGED,
        "fan efficiency against the plate's curve",
        wander=0.01,
        inspected=r"motor\.(kw|amps.*)|vfd\.(kw|amps)",
    )
    yield balance(
        "filters.resistance",
        1.0,
        0.3,
        JUDGED,
        "clean filters",
        wander=0.01,
        inspected=r"static\.filters",
    )
    yield balance(
        "outlet.resistance",
        0.3,
        1.0,
        JUDGED,
        "way from the unit into its duct: a loss, or velocity turned into pressure",
    )
    told = {
        "intake": plate.hood is not None and plate.damper is not None,
        "furnace": plate.furnace is not None,
        "coil": True,
    }
    for part, declared in told.items():
        yield balance(
            f"{part}.resistance",
            1.0,
            0.12 if declared else 0.4,
            JUDGED,
            "drop against the plate",
            wander=0.01,
        )


def probes(rated: Rated) -> Iterator[Unknown]:
    """The casing, and how far off each probe stands."""
    yield balance("casing.loss", CASING_LOSS, 0.005, JUDGED, "outdoor unit")
    for number, _ in rated.machine.numbered():
        yield show(
            f"probe.after.{number}",
            0.0,
            0.10,
            JUDGED,
            "one probe close behind a furnace, share of the rise",
        )
    mixed = 0.04 if rated.blow_through else 0.02  # a fan behind the furnaces mixes
    yield show(
        "probe.discharge", 0.0, mixed, JUDGED, "probe where the duct begins, share of the rise"
    )
    yield show("sensor.place", 0.0, mixed, JUDGED, "the unit's own sensor, share of the rise")
    yield show(
        "sensor.offset",
        0.0,
        1.5,
        JUDGED,
        "element and place",
        wander=0.3,
        inspected=r"air\.discharge\.sensor",
        unit="K",
    )


def building(machine: Machine) -> Iterator[Unknown]:
    """Exhaust, and how tight the building is."""
    exhaust, airflow = machine.design.exhaust, machine.design.airflow
    yield balance(
        "building.wind", 0.0, 1.0, JUDGED, "wind, doors, other fans", wander=2.0, unit="Pa"
    )
    if exhaust is None:
        yield balance(
            "building.pressure",
            0.0,
            12.0,
            JUDGED,
            "any building",
            wander=2.0,
            inspected=r"building\.pressure",
            unit="Pa",
        )
        yield show(
            "exhaust.airflow",
            airflow,
            0.5 * airflow,
            JUDGED,
            "none scheduled",
            inspected=r"exhaust\.airflow",
            unit="m3/s",
        )
        return
    yield balance(
        "exhaust.airflow",
        exhaust,
        0.15 * exhaust,
        JUDGED,
        "as built",
        wander=0.01 * exhaust,
        inspected=r"exhaust\.airflow",
        unit="m3/s",
    )
    yield balance(
        "envelope.leakage",
        math.log(0.15 * airflow),
        0.8,
        JUDGED,
        "logarithm of the airflow at 10 Pa, any building",
    )
