"""What can be wrong with fan, drive, filters, dampers and duct. Sizes are engineering judgement."""

from collections.abc import Iterator

from lightoff.inference.causes.effect import Cause, Effect, shares
from lightoff.inference.pushes import Size, between, either_way
from lightoff.machine.model.rated import Rated


def air(rated: Rated) -> Iterator[Cause]:
    """Of the airstream and what turns it."""
    machine = rated.machine
    if machine.three_phase:
        # a wheel that turns backwards gives a fifth to a half of its pressure, for about the power
        backwards = {"fan.pressure": -0.7, "fan.power": 0.1}
        yield Cause("reversed rotation", (Effect((Size(1.0, 1.0, 0.15),), backwards, far=True),))
    if machine.drive.kind == "belt":
        yield _one("belt slip", between(0.03, 0.25, 4), {"belt.slip": 1.0})
        yield _one("wrong sheave", either_way(0.08, 0.40, 3), {"drive.ratio": 1.0})
    yield _one("blocked filter", between(0.5, 4.0, 4), {"filters.resistance": 1.0})
    yield _one("missing filter", between(-0.95, -0.4, 2), {"filters.resistance": 1.0})
    yield Cause(
        "closed damper",
        (
            Effect(shares(0.7, between(1.0, 15.0, 4)), {"intake.resistance": 1.0}),
            Effect(shares(0.3, between(0.7, 6.0, 3)), {"duct.resistance": 1.0}),  # a fire damper
        ),
    )
    yield _one("open duct", between(-0.85, -0.33, 2), {"duct.resistance": 1.1})
    yield from _electric(rated)
    if machine.design.exhaust is not None:
        airflow = machine.design.exhaust
        yield _one("exhaust off", between(-1.0, -0.4, 2), {"exhaust.airflow": airflow})


def _electric(rated: Rated) -> Iterator[Cause]:
    machine = rated.machine
    if machine.three_phase:
        yield Cause("supply unbalance", tuple(_unbalance()))
        yield Cause("single phasing", tuple(_lost_phase(machine.electrical.volts)))
    if machine.drive.vfd:
        # other volts for each hertz: they show on the drive, and the motor takes fewer amps or more
        ratio = either_way(0.06, 0.40)
        shown = Effect(ratio, {"motor.current": -0.5}, read=r"vfd\.volts", scale=1.0)
        yield Cause("drive parameters", (shown,))
    volts = machine.electrical.control_volts or 24.0
    sags = between(-0.4 * volts, -0.08 * volts)
    yield Cause("control volts sag", aside={"power.control_volts": sags})
    tap = either_way(0.11 * volts, 0.18 * volts, 1)  # 240 over 208 volts
    yield Cause("wrong voltage tap", aside={"power.control_volts.unloaded": tap})


def _unbalance() -> Iterator[Effect]:
    """One leg off, the others making up for it: each leg in turn."""
    sizes = shares(1 / 3, either_way(0.012, 0.06))
    yield Effect(sizes, {"power.volts.ab": 1.0, "power.volts.bc": -0.5})
    yield Effect(sizes, {"power.volts.ab": -0.5, "power.volts.bc": 1.0})
    yield Effect(sizes, {"power.volts.ab": -0.5, "power.volts.bc": -0.5})


def _lost_phase(volts: float) -> Iterator[Effect]:
    """A line without current; the other two carry what it did, and more as the motor slips.

    At rest the lost line floats half way between the others; a motor that turns holds it up.
    """
    sizes = shares(1 / 3, between(0.6, 1.1))
    lines = ("a", {"ab", "ca"}), ("b", {"ab", "bc"}), ("c", {"bc", "ca"})
    for line, legs in lines:
        amps = {f"motor.amps.{each}": -1.0 if each == line else 0.5 for each in "ab"}
        uneven = {f"power.volts.{leg}": -0.04 if leg in legs else 0.08 for leg in ("ab", "bc")}
        at_rest = {f"power.volts.{leg}": -0.25 if leg in legs else 0.5 for leg in ("ab", "bc")}
        turning = {"motor.current": 0.4, "motor.slip": 1.0, "power.volts": -0.08 * volts}
        yield Effect(sizes, amps | uneven | turning, at_rest | {"power.volts": -volts / 3})


def _one(name: str, sizes: tuple[Size, ...], off: dict[str, float]) -> Cause:
    return Cause(name, (Effect(sizes, off),))
