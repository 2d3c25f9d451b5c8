"""What stands on the roof: the declared machine, its points, runs, settings and sequence."""

from lightoff.machine.checks import checks
from lightoff.machine.machine import Machine
from lightoff.machine.points import Point, foretells, kind_of, of_any_lead, points, readable
from lightoff.machine.runs import WINTER, canonical, fan_runs, firing, high_run, low_run, runs
from lightoff.machine.sequence import Step, sequence
from lightoff.machine.settings import setting_kind, settings
from lightoff.machine.trips import Trip, trips
from lightoff.machine.visit import Visit

__all__ = [
    "WINTER",
    "Machine",
    "Point",
    "Step",
    "Trip",
    "Visit",
    "canonical",
    "checks",
    "fan_runs",
    "firing",
    "foretells",
    "high_run",
    "kind_of",
    "low_run",
    "of_any_lead",
    "points",
    "readable",
    "runs",
    "sequence",
    "setting_kind",
    "settings",
    "trips",
]
