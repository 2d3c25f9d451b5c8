"""Volts, amps and shaft power."""

from collections.abc import Iterator

from lightoff.inference.estimate import Estimate
from lightoff.judgement import power
from lightoff.judgement.evidence import Missing
from lightoff.judgement.target import (
    COMMON_PRACTICE,
    Bounds,
    Case,
    Instance,
    Target,
    about,
    at_most,
    reading,
)
from lightoff.judgement.targets.where import motor_on
from lightoff.machine import Machine
from lightoff.physics.electricity import unbalance_derating

NEMA = "NEMA MG 1"
CONTROL_SAG = 0.10  # [1] of the unloaded volts
ON_A_DRIVE = 1.10  # [1] of full-load amps, on a drive or where no service factor is declared


def _volts(machine: Machine) -> Iterator[Instance]:
    legs = power.volt_points(machine.three_phase)
    return (Instance(point, motor_on(machine), (point,)) for point in legs)


def _amps(machine: Machine) -> Iterator[Instance]:
    legs = power.amp_points(machine.three_phase)
    return (Instance(point, motor_on(machine), (point,)) for point in legs)


def _volt_unbalance(machine: Machine) -> Iterator[Instance]:
    if machine.three_phase:
        yield Instance("voltage_unbalance", motor_on(machine), power.volt_points(True))


def _amp_unbalance(machine: Machine) -> Iterator[Instance]:
    if machine.three_phase:
        yield Instance("current_unbalance", motor_on(machine), power.amp_points(True))


def _control(machine: Machine) -> Iterator[Instance]:
    yield Instance("power.control_volts", motor_on(machine), ("power.control_volts",))


def _shaft(machine: Machine) -> Iterator[Instance]:
    drive = ("vfd.kw",) if machine.drive.vfd else ()
    needs = ("motor.kw", *drive, *power.amp_points(machine.three_phase))
    yield Instance("shaft_power", motor_on(machine), needs)


def _control_bounds(case: Case) -> Bounds:
    """21 to 28 V of a 24 V circuit, and not more than a tenth under the unloaded volts."""
    scale = case.machine.electrical.control_volts / 24
    unloaded = case.evidence.get("power.control_volts.unloaded", case.run)
    unloaded = unloaded or case.evidence.anywhere("power.control_volts.unloaded")
    floor = 0.0 if unloaded is None else (1 - CONTROL_SAG) * unloaded.value
    sagging = floor > 21 * scale
    source = f"a tenth under the unloaded volts; {COMMON_PRACTICE}" if sagging else COMMON_PRACTICE
    return Bounds(max(21 * scale, floor), 28 * scale, "common practice", source)


def amps_limit(case: Case) -> Bounds:
    """What a motor may draw for good: its service factor, on a drive ten percent more."""
    motor = case.machine.motor
    factor = motor.service_factor
    if factor is None or case.machine.drive.vfd:
        return Bounds(None, motor.full_load_amps * ON_A_DRIVE, "common practice", COMMON_PRACTICE)
    return Bounds(None, motor.full_load_amps * factor, "plate", "motor plate, service factor")


def _shaft_bounds(case: Case) -> Bounds:
    read = power.voltage_unbalance(case.evidence, case.run) if case.machine.three_phase else None
    derating = unbalance_derating(min(read.value, 0.05)) if isinstance(read, Estimate) else 1.0
    return Bounds(None, case.machine.motor.power * derating, "plate", f"motor plate; {NEMA}")


def _motor_share(case: Case) -> Estimate | Missing:
    return power.motor_output(case.evidence, case.run)


TARGETS = (
    Target(
        id="line voltage",
        severity="correct",
        kind="voltage",
        instances=_volts,
        estimate=reading,
        bounds=lambda case: about(case.machine.motor.volts, 0.10, "standard", NEMA),
        caution="caution-live",
    ),
    Target(
        id="voltage unbalance",
        severity="note",
        kind="fraction",
        instances=_volt_unbalance,
        estimate=lambda case: power.voltage_unbalance(case.evidence, case.run),
        bounds=lambda _: at_most(0.01, "standard", NEMA),
        caution="caution-live",
    ),
    Target(
        id="voltage unbalance limit",
        severity="stop",
        kind="fraction",
        instances=_volt_unbalance,
        estimate=lambda case: power.voltage_unbalance(case.evidence, case.run),
        bounds=lambda _: at_most(0.05, "standard", NEMA),
        caution="caution-live",
    ),
    Target(
        id="current unbalance",
        severity="correct",
        kind="fraction",
        instances=_amp_unbalance,
        estimate=lambda case: power.current_unbalance(case.evidence, case.run),
        bounds=lambda _: at_most(0.10, "common practice", COMMON_PRACTICE),
        caution="caution-live",
    ),
    Target(
        id="control voltage",
        severity="correct",
        kind="voltage",
        instances=_control,
        estimate=reading,
        bounds=_control_bounds,
        caution="caution-live",
    ),
    Target(
        id="motor current",
        severity="correct",
        kind="current",
        instances=_amps,
        estimate=reading,
        bounds=lambda case: at_most(case.machine.motor.full_load_amps, "plate", "motor plate"),
        caution="caution-live",
    ),
    Target(
        id="motor current limit",
        severity="stop",
        kind="current",
        instances=_amps,
        estimate=reading,
        bounds=amps_limit,
        caution="caution-live",
    ),
    Target(
        id="shaft power",
        severity="correct",
        kind="shaft power",
        instances=_shaft,
        estimate=_motor_share,
        told=lambda case: case.told("motor_power"),
        bounds=_shaft_bounds,
        caution="caution-live",
    ),
)
