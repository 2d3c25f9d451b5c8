"""What a visit's purpose asks for."""

import re

from lightoff.judgement.answer import Row
from lightoff.judgement.stale import moves
from lightoff.machine import Machine, Visit

_SEASONAL = re.compile(
    r"trip: (flame failure|high limit|airflow proving|combustion air proving)"
    r"|flame failure time|CO .*|manifold .*|gas pressure .*|tightness: joints"
)

# What a caller's words put in question
_TOUCHED: dict[str, str] = {
    "won't light": r"trip: .*|gas pressure .*|manifold .*|ignition trial|flame signal",
    "lights and drops out": r"flame signal|gas pressure .*|trip: .*|manifold .*|CO .*",
    "hunts": r"manifold .*|turndown|discharge sensor",
    "short-cycles": r"trip: high limit|temperature rise|airflow|input.*|discharge .*",
    "trips on limit": r"trip: high limit|temperature rise|airflow|input.*|discharge .*|filter drop",
    "fan trips": r"motor .*|line voltage|voltage .*|current .*|shaft power|fan speed.*",
    "cold discharge": r"input.*|manifold .*|temperature rise|airflow|gas pressure .*|discharge .*",
    "smell or CO": r"CO .*|tightness: .*|check: (spillage\.none|vent\..*)",
}
SYMPTOMS = tuple(_TOUCHED)


def is_required(machine: Machine, visit: Visit, row: Row) -> bool:
    """A start-up requires everything; a season its safeties; a service what it touched."""
    if visit.purpose == "start-up" or row.decision == "does not conform":
        return True
    if visit.purpose == "seasonal":
        return bool(_SEASONAL.fullmatch(row.id))
    return _moved(machine, visit, row) or any(
        re.fullmatch(_TOUCHED.get(symptom.what, ""), row.id) for symptom in visit.symptoms
    )


def _moved(machine: Machine, visit: Visit, row: Row) -> bool:
    """Whether an adjustment of this visit moves what the row rests on."""
    if row.point is None or row.run is None:
        return False
    points = _rests_on(row.point)
    return any(
        moves(machine, a.what, a.run, point, row.run) for a in visit.adjustments for point in points
    )


def _rests_on(point: str) -> tuple[str, ...]:
    """A point that stands for a derived quantity when asking what moves it."""
    name, _, number = point.partition(".")
    return {
        "input": ("gas.meter.seconds", f"train.{number}.1.manifold"),
        "turndown": (f"train.{number}.1.manifold",),
        "co_air_free": (f"flue.{number}.co",),
        "rise": ("air.discharge.db",),
        "efficiency": ("air.discharge.db", "gas.meter.seconds"),
        "airflow": ("duct.traverse",),
        "shaft_power": ("motor.kw",),
        "voltage_unbalance": ("power.volts.ab",),
        "current_unbalance": ("motor.amps.a",),
    }.get(name, (point,))
