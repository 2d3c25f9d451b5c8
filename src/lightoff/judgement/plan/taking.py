"""How a reading would be taken: with which gauge, and at what value where the model has none."""

from collections.abc import Mapping
from dataclasses import replace
from math import ceil

from lightoff.judgement.evidence import evidence
from lightoff.judgement.history import History
from lightoff.judgement.limits import allowed
from lightoff.judgement.plan.carried import Gauge, best_gauge, felt_at
from lightoff.judgement.target import Bounds, Case
from lightoff.judgement.targets import TARGETS
from lightoff.machine import Machine, Visit
from lightoff.machine.visit import Reading, Traverse
from lightoff.physics.constants import STANDARD_AIR_DENSITY
from lightoff.quantity import si

FASTER = 0.9  # of the time a turn should take: a burner that is not adjusted yet
LEAST_CLOCKING = 60.0  # [s] a meter is timed over, in whole turns; common practice, no source
DUCT_VELOCITY = si(1500, "fpm")  # [m/s] in a duct nobody has measured; engineering judgement
_CLEAN = {"air.intake.co": 0.0, "air.discharge.co": 0.0}  # [1] no flue gas in the air

PointLimits = Mapping[str, Bounds]


def gauged(machine: Machine, visit: Visit, reading: Reading) -> tuple[Reading, Gauge]:
    """A reading as it would be taken, with the finest gauge carried."""
    if reading.point == "gas.meter.seconds":
        reading = _clocked(machine, reading)
    if reading.point == "duct.traverse":
        reading, gauge = _traversed(visit, reading)
    else:
        gauge = best_gauge(visit, reading.point, reading.value or 0.0)
    return replace(reading, instrument=gauge.name), gauge


def _clocked(machine: Machine, reading: Reading) -> Reading:
    """Whole turns of the dial, for at least a minute however fast it may turn; what the model tells
    is one turn."""
    one_turn = reading.value or LEAST_CLOCKING
    turns = float(max(1, ceil(LEAST_CLOCKING / (FASTER * one_turn))))
    dial = machine.site.meter_dial or 1.0
    return replace(reading, value=turns * one_turn, dial=dial, revolutions=turns)


def _traversed(visit: Visit, reading: Reading) -> tuple[Reading, Gauge]:
    """An airflow as its instrument feels it: as pressure, as velocity, or as such."""
    flow, area = reading.value or 0.0, duct_area(visit)
    speed = DUCT_VELOCITY if area is None else flow / area
    felt = felt_at(visit, reading.point)
    if felt == "flow":
        return reading, best_gauge(visit, reading.point, flow, felt)
    plane = Traverse("rectangular", flow / speed if speed else 0.0)
    if felt == "velocity":
        plane = replace(plane, velocities=(speed,))
    else:
        plane = replace(plane, pressures=(STANDARD_AIR_DENSITY * speed**2 / 2,))
    gauge = best_gauge(visit, reading.point, (*plane.pressures, *plane.velocities)[0], felt)
    return replace(reading, value=None, traverse=plane), gauge


def duct_area(visit: Visit) -> float | None:
    """The duct's area where this visit has measured it [m2]."""
    planes = [reading.traverse.area for reading in visit.readings if reading.traverse is not None]
    return planes[-1] if planes else None


def nominal(machine: Machine, limits: PointLimits, point: str) -> float | None:
    """A value for a point the model knows nothing of: amid its limits, or at its only one [SI]."""
    if point in _CLEAN:
        return _CLEAN[point]
    if point == "power.control_volts.unloaded":
        return machine.electrical.control_volts
    bounds = limits.get(point)
    if bounds is None:
        return None
    ends = [limit for limit in (bounds.lower, bounds.upper) if limit is not None]
    return sum(ends) / len(ends)


def point_limits(machine: Machine, visit: Visit) -> PointLimits:
    """The limits of each point that makes a row by itself; of several rows the first."""
    blank = replace(visit, readings=(), adjustments=())
    nothing = evidence(machine, blank, History())
    found: dict[str, Bounds] = {}
    for target in TARGETS:
        for instance in target.instances(machine):
            bounds = allowed(target, Case(machine, instance, instance.runs[0], nothing)).bounds
            if bounds is not None and len(instance.needs) == 1:
                found.setdefault(instance.needs[0], bounds)
    return found
