"""Checks: what is seen and found right or wrong, without a number."""

from collections.abc import Callable

from lightoff.machine.machine import Machine


def _always(_: Machine) -> bool:
    return True


def _belt(machine: Machine) -> bool:
    return machine.drive.kind == "belt"


def _condensate(machine: Machine) -> bool:
    return machine.has("cooling") or any(f.condensing for f in machine.furnaces)


CHECKS: dict[str, Callable[[Machine], bool]] = {
    "site.ready": _always,
    "fan.turns_free": _always,
    "fan.overlap": _always,
    "belt.tension": _belt,
    "belt.alignment": _belt,
    "filters.in_place": _always,
    "vent.complete": _always,
    "vent.clearance": _always,
    "combustion_air.openings": _always,
    "condensate.trap_primed": _condensate,
    "wiring.matches": _always,
    "transformer.tap": _always,
    "motor.overload_setting": _always,
    "fan.rotation": _always,
    "combustion_fan.rotation": _always,
    "damper.opens": _always,
    "gas.type_matches": _always,
    "gas.conversion_complete": _always,
    "gas.upstream_tested": _always,
    "pilots.relit": _always,
    "sensor.in_duct": _always,
    "call.fan": _always,
    "call.heat": _always,
    "call.cool": lambda machine: machine.has("cooling"),
    "call.exhaust": lambda machine: machine.has("exhaust interlock"),
    "spillage.none": _always,
    "covers.on": _always,
    "adjusters.sealed": _always,
}


def checks(machine: Machine) -> tuple[str, ...]:
    """The checks this unit needs, in the order of work."""
    return tuple(check for check, applies in CHECKS.items() if applies(machine))
