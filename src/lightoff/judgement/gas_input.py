"""What each furnace burns: clocked at the meter, or told by its manifold and orifice."""

from dataclasses import dataclass

from lightoff.inference.estimate import Estimate, NoSuchStateError, Part, combine
from lightoff.judgement.evidence import Evidence, Missing
from lightoff.judgement.gas_site import (
    ORIFICE_SCALE,
    orifice_density_ratio,
    site_heating_value,
    wobbe_ratio,
)
from lightoff.machine import firing
from lightoff.machine.gas import expected_manifold, orifice_rating
from lightoff.machine.visit import Reading
from lightoff.physics.gas_input import metered_input
from lightoff.physics.meter import base_volume_factor
from lightoff.physics.orifice import orifice_input
from lightoff.quantity import si

METER = 0.0115  # [1] a meter in service, counted correct within 2 %; state and city rules
METER_TEMPERATURE = 288.706  # [K] 60 degF, where nobody read it ...
METER_TEMPERATURE_SPREAD = 5.0  # [K] ... engineering judgement
METER_PRESSURE = si(7.0, "inwc")  # [Pa] utilization pressure, where nobody read it ...
METER_PRESSURE_SPREAD = si(0.8, "inwc")  # [Pa] ... engineering judgement
COMPENSATION = 0.0029  # [1] a compensated meter within 15 K of base; OIML R 137 (from memory)


@dataclass(frozen=True)
class Input:
    """A furnace's input [W] and whether the meter stands behind it."""

    estimate: Estimate
    metered: bool


def furnace_input(evidence: Evidence, furnace: int, run: str) -> Input | Missing:
    """Input of one furnace: its share of the meter, else by the root law alone."""
    lit = firing(evidence.machine, run)
    by_orifice = {number: orifice_law(evidence, number, run) for number in lit}
    own = by_orifice.get(furnace, Missing(()))
    total = clocked(evidence, run)
    if isinstance(total, Estimate):
        if len(lit) == 1:
            return Input(total, True)
        known = [each for each in by_orifice.values() if isinstance(each, Estimate)]
        if len(known) == len(lit) and isinstance(own, Estimate):
            return Input(_share(total, own, known), True)
    if isinstance(own, Estimate):
        return Input(own, False)
    return Missing(("gas.meter.seconds", *own.points))


def _share(total: Estimate, own: Estimate, every: list[Estimate]) -> Estimate:
    """The part of the metered total that falls to one furnace, as its root law says."""
    return combine(lambda q, a, *all_: q * a / sum(all_), total, own, *every)


def clocked(evidence: Evidence, run: str) -> Estimate | Missing:
    """Heat flow of everything on the meter in this run [W]."""
    readings = evidence.latest("gas.meter.seconds", run)
    if not readings:
        return Missing(("gas.meter.seconds",))
    reading = readings[-1]
    volume = turned(evidence, reading)
    if volume is None:
        return Missing(("site.meter_dial",))
    other = evidence.get("gas.meter.other_flow", run) or Estimate(0.0)
    gas = evidence.machine.furnaces[0].gas
    total = combine(
        lambda t, h, f, accuracy, flow: (
            (metered_input(volume=volume, seconds=t, heating_value=h, factor=f) - h * f * flow)
            * accuracy
        ),
        evidence.of(reading),
        site_heating_value(evidence.machine, gas),
        _base_factor(evidence, run),
        Estimate(1.0, {Part("meter", "gas.meter"): METER}),
        other,
    )
    if total.value <= 0:  # others cannot burn more than the meter passed
        raise NoSuchStateError("no gas left for the furnaces")
    return total


def turned(evidence: Evidence, reading: Reading) -> float | None:
    """Volume that passed the meter during a reading [m3]."""
    dial = reading.dial if reading.dial is not None else evidence.machine.site.meter_dial
    return None if dial is None else dial * (reading.revolutions or 1.0)


def _base_factor(evidence: Evidence, run: str) -> Estimate:
    """Volume at 60 degF and 30 inHg over volume as metered [1]."""
    pressure = (
        evidence.get("gas.meter.pressure", run)
        or evidence.get("gas.supply", run)
        or _assumed_pressure(evidence)
    )
    if evidence.machine.site.meter_compensated:
        temperature = Estimate(
            METER_TEMPERATURE, {Part("compensation", "gas.meter"): COMPENSATION * METER_TEMPERATURE}
        )
    else:
        temperature = (
            evidence.get("gas.meter.db", run)
            or evidence.anywhere("gas.meter.db")
            or (
                Estimate(
                    METER_TEMPERATURE,
                    {Part("temperature not read", "gas.meter.db"): METER_TEMPERATURE_SPREAD},
                )
            )
        )
    return combine(
        lambda p, b, t: base_volume_factor(p + b, t),
        pressure,
        evidence.barometer(),
        temperature,
    )


def _assumed_pressure(evidence: Evidence) -> Estimate:
    promised = evidence.machine.site.supply_pressure
    spread = {Part("pressure not read", "gas.meter.pressure"): METER_PRESSURE_SPREAD}
    return Estimate(METER_PRESSURE if promised is None else promised, spread)


def orifice_law(evidence: Evidence, furnace: int, run: str) -> Estimate | Missing:
    """Input of one furnace by the root law of all its trains [W]."""
    plate = evidence.machine.furnace(furnace)
    total: Estimate | None = None
    for number, train in enumerate(plate.trains, start=1):
        point = f"train.{furnace}.{number}.manifold"
        read = evidence.get(point, run)
        if train.manifold_high is None:
            return Missing((f"unit.furnace.{furnace}.train.{number}.manifold_high",), "find-it")
        if read is None:
            return Missing((point,))
        part = _train_input(evidence, furnace, train.share, train.manifold_high, read, point)
        total = part if total is None else combine(lambda a, b: a + b, total, part)
    return total if total is not None else Missing(())


def _train_input(
    evidence: Evidence, furnace: int, share: float, rated: float, read: Estimate, point: str
) -> Estimate:
    plate = evidence.machine.furnace(furnace)
    rated_input = orifice_rating(evidence.machine, plate)
    return combine(
        lambda p, w, rho, scale: (
            scale
            * orifice_input(
                rated_input=rated_input * share,
                manifold=max(p, 0.0),
                rated_manifold=rated,
                wobbe_ratio=w,
                density_ratio=rho,
            )
        ),
        read,
        wobbe_ratio(evidence.machine, plate),
        orifice_density_ratio(evidence, plate),
        Estimate(1.0, {Part("orifice", point): ORIFICE_SCALE}),
    )


def manifolds_in_window(evidence: Evidence, furnace: int, run: str) -> bool:
    """Whether every manifold of a furnace was read and lies within 5 % of the plate."""
    plate = evidence.machine.furnace(furnace)
    for number, train in enumerate(plate.trains, start=1):
        read = evidence.get(f"train.{furnace}.{number}.manifold", run)
        if read is None or train.manifold_high is None:
            return False
        expected = expected_manifold(evidence.machine, plate, train.manifold_high)
        if abs(read.value - expected) > 0.05 * expected:
            return False
    return True


def turndown(evidence: Evidence, furnace: int, low_run: str) -> Estimate | Missing:
    """Input at high fire over input at low fire, by the root of the manifold pressures [1]."""
    high = high_fire_read(evidence, furnace)
    trains = range(1, len(evidence.machine.furnace(furnace).trains) + 1)
    if high is None or not _all_manifolds(evidence, furnace, low_run):
        return Missing(tuple(f"train.{furnace}.{m}.manifold" for m in trains))
    shares = [train.share for train in evidence.machine.furnace(furnace).trains]
    pressures = [
        read
        for run in (high, low_run)
        for m in trains
        if (read := evidence.get(f"train.{furnace}.{m}.manifold", run)) is not None
    ]
    n = len(shares)
    return combine(lambda *p: root_turndown(shares, list(p[:n]), list(p[n:])), *pressures)


def high_fire_read(evidence: Evidence, furnace: int) -> str | None:
    """The run at high fire in which every manifold of a furnace was read; alone where both were."""
    there = [run for run in ("high", f"high.{furnace}") if _all_manifolds(evidence, furnace, run)]
    return there[-1] if there else None


def _all_manifolds(evidence: Evidence, furnace: int, run: str) -> bool:
    trains = range(1, len(evidence.machine.furnace(furnace).trains) + 1)
    return all(evidence.get(f"train.{furnace}.{m}.manifold", run) for m in trains)


def root_turndown(shares: list[float], high: list[float], low: list[float]) -> float:
    """Turndown of trains side by side: sum of shares over sum of shares times (low/high)^0.5."""
    at_low: float = sum(
        share * (max(b, 0.0) / a) ** 0.5 for share, a, b in zip(shares, high, low, strict=True)
    )
    return sum(shares) / at_low
