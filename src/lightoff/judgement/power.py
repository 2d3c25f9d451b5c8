"""Unbalance and shaft power, from readings."""

from lightoff.inference.estimate import Estimate, Part, combine
from lightoff.judgement.evidence import Evidence, Missing
from lightoff.physics.electricity import unbalance
from lightoff.physics.frequency_drive import volts_in_step
from lightoff.physics.motor_current import motor_input

PHASES = ("ab", "bc", "ca")
LEGS = ("a", "b", "c")
POWER_FACTOR = 0.82  # [1] full load, where the plate is silent; common practice, no source
EFFICIENCY = 0.90  # [1] full load, where the plate is silent; common practice, no source
EFFICIENCY_SPREAD = 0.01  # [1] losses within 10 % of nominal; NEMA MG 1 (from memory)
EFFICIENCY_UNKNOWN = 0.03  # [1] where the plate is silent
FROM_AMPS = 0.08  # [1] power reckoned from amps alone; engineering judgement
BELT_EFFICIENCY = 0.965  # [1] V-belt at design load; published drive tests
BELT_SPREAD = 0.0087  # [1] the same


def volt_points(three_phase: bool) -> tuple[str, ...]:
    """The phase-to-phase volts of this supply."""
    return tuple(f"power.volts.{p}" for p in PHASES) if three_phase else ("power.volts",)


def amp_points(three_phase: bool) -> tuple[str, ...]:
    """The amps of each of the motor's leads."""
    return tuple(f"motor.amps.{leg}" for leg in LEGS) if three_phase else ("motor.amps",)


def voltage_unbalance(evidence: Evidence, run: str) -> Estimate | Missing:
    """Largest deviation of the three volts from their mean, over the mean [1]."""
    return _unbalance(evidence, volt_points(True), run)


def current_unbalance(evidence: Evidence, run: str) -> Estimate | Missing:
    """The same of the three motor leads [1]."""
    return _unbalance(evidence, amp_points(True), run)


def _unbalance(evidence: Evidence, points: tuple[str, ...], run: str) -> Estimate | Missing:
    reads = _all(evidence, points, run)
    if isinstance(reads, Missing):
        return reads
    if sum(read.value for read in reads) <= 0:
        return Missing(points, "no-current")
    return combine(unbalance, *reads)


def _all(evidence: Evidence, points: tuple[str, ...], run: str) -> list[Estimate] | Missing:
    reads = [evidence.get(point, run) for point in points]
    found = [read for read in reads if read is not None]
    if len(found) < len(points):
        return Missing(tuple(p for p, r in zip(points, reads, strict=True) if r is None))
    return found


def motor_output(evidence: Evidence, run: str) -> Estimate | Missing:
    """Power the motor gives [W]: from its kW where read, else from volts and amps."""
    electric = evidence.get("motor.kw", run)
    if electric is None and evidence.machine.drive.vfd:
        electric = evidence.get("vfd.kw", run)
    if electric is None:
        reckoned = _from_amps(evidence, run)
        if isinstance(reckoned, Missing):
            return reckoned
        electric = reckoned
    plate = evidence.machine.motor
    efficiency = plate.efficiency if plate.efficiency is not None else EFFICIENCY
    spread = EFFICIENCY_SPREAD if plate.efficiency is not None else EFFICIENCY_UNKNOWN
    return combine(
        lambda p, e: p * e,
        electric,
        Estimate(efficiency, {Part("motor efficiency", "motor"): spread}),
    )


def _from_amps(evidence: Evidence, run: str) -> Estimate | Missing:
    machine = evidence.machine
    amps = _all(evidence, amp_points(machine.three_phase), run)
    if isinstance(amps, Missing):
        return amps
    volts = _motor_volts(evidence, run)
    if isinstance(volts, Missing):
        return volts
    plate = machine.motor
    power_factor = plate.power_factor if plate.power_factor is not None else POWER_FACTOR
    n = len(amps)
    in_step = _volts_in_step(evidence, run)
    return combine(
        lambda scale, v, *i: (
            scale
            * motor_input(
                volts=v,
                amps=sum(i) / n,
                phases=machine.electrical.phases,
                rated_amps=plate.full_load_amps,
                rated_volts=plate.volts if in_step is None else in_step,
                power_factor=power_factor,
            )
        ),
        Estimate(1.0, {Part("power from amps", "motor"): FROM_AMPS}),
        volts,
        *amps,
    )


def _volts_in_step(evidence: Evidence, run: str) -> float | None:
    """On a drive the volts that stand for the plate's at the hertz of the run."""
    machine = evidence.machine
    if not machine.drive.vfd:
        return None
    hertz = evidence.get("vfd.hz", run)
    at = machine.drive.full_speed_frequency if hertz is None else hertz.value
    base = machine.electrical.frequency
    return float(volts_in_step(at, rated_volts=machine.motor.volts, rated_frequency=base))


def _motor_volts(evidence: Evidence, run: str) -> Estimate | Missing:
    """Volts at the motor: a drive's output where there is a drive, else the line."""
    machine = evidence.machine
    if machine.drive.vfd:
        read = evidence.get("vfd.volts", run)
        return read if read is not None else Missing(("vfd.volts",))
    volts = _all(evidence, volt_points(machine.three_phase), run)
    if isinstance(volts, Missing):
        return volts
    n = len(volts)
    return combine(lambda *v: sum(v) / n, *volts)


def belt_efficiency(evidence: Evidence) -> Estimate:
    """Power at the fan shaft over power at the motor's [1]."""
    if evidence.machine.drive.kind == "direct":
        return Estimate(1.0)
    return Estimate(BELT_EFFICIENCY, {Part("belt loss", "drive"): BELT_SPREAD})


def shaft_power(evidence: Evidence, run: str) -> Estimate | Missing:
    """Power at the fan shaft [W]."""
    given = motor_output(evidence, run)
    if isinstance(given, Missing):
        return given
    return combine(lambda p, e: p * e, given, belt_efficiency(evidence))
