"""Unknowns of fan, drive, motor and supply volts."""

from collections.abc import Iterator

from lightoff.machine.machine import Machine
from lightoff.machine.model.drive import FREE_LEGS, FREE_LINES
from lightoff.machine.model.rated import Rated, design_frequency
from lightoff.machine.model.unknown import Unknown
from lightoff.machine.model.unknowns.row import JUDGED, balance, show


def turning(rated: Rated) -> Iterator[Unknown]:
    """What turns the fan."""
    machine = rated.machine
    if machine.drive.vfd:
        yield balance(
            "vfd.hz",
            design_frequency(rated),
            4.0,
            JUDGED,
            "about that of the design speed",
            wander=0.1,
            inspected=r"vfd\.hz",
            unit="Hz",
        )
    if machine.drive.kind == "belt":
        yield balance(
            "drive.ratio", 1.0, 0.02, JUDGED, "pitch of an adjustable sheave", inspected=r"fan\.rpm"
        )
        yield balance("belt.slip", 0.01, 0.005, "common practice", "V-belts", wander=0.002)
        yield balance("belt.loss", 0.035, 0.009, "published spread", "V-belt drive efficiency")
    yield balance(
        "motor.slip",
        1.0,
        0.115,
        "manufacturing tolerance",
        "slip at rated load within 20 %, NEMA MG 1",
        wander=0.01,
    )
    yield balance(
        "motor.losses",
        1.0,
        0.10,
        "manufacturing tolerance",
        "losses against nominal, NEMA MG 1 (from memory)",
    )
    if machine.three_phase:
        yield show(
            "motor.current",
            1.0,
            0.058,
            "manufacturing tolerance",
            "current at rated output within 10 %, NEMA MG 1",
            wander=0.01,
        )
    else:
        yield show(
            "motor.current",
            1.0,
            0.08,
            JUDGED,
            "capacitor motors at part load",
            wander=0.025,
        )


def electrical(machine: Machine) -> Iterator[Unknown]:
    """The supply volts, and how uneven volts and amps are."""
    volts = machine.electrical.volts
    yield balance(
        "power.volts",
        volts,
        0.029 * volts,
        "published spread",
        "supply voltage, ANSI C84.1 (from memory)",
        wander=0.01 * volts,
        inspected=r"power\.volts.*",
        unit="V",
    )
    yield show("power.sag", 0.008, 0.008, JUDGED, "volts with the unit off over those in use")
    if machine.three_phase:
        for leg in FREE_LEGS:
            yield show(
                f"power.volts.{leg}",
                0.0,
                0.009,
                "published spread",
                "unbalance (from memory)",
                wander=0.006,
                inspected=rf"power\.volts\.{leg}",
                beside=r"power\.volts\.ca",
            )
        for line in FREE_LINES:
            yield show(
                f"motor.amps.{line}",
                0.0,
                0.05,
                JUDGED,
                "current unbalance, six to ten times that of the volts",
                wander=0.01,
                inspected=rf"motor\.amps\.{line}",
                beside=r"motor\.amps\.c",
            )
