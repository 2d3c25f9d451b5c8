"""Readings the model does not know, against what is usual there. What is usual is judgement."""

import math
import re
from collections.abc import Iterator

from lightoff.inference.diagnosis import Aside
from lightoff.inference.estimate import Estimate
from lightoff.judgement.evidence import Evidence
from lightoff.machine import Machine

CONTROL = 24.0  # [V] where the plate is silent
UNLOADED, UNLOADED_SPREAD = 1.08, 0.04  # [1] of the nominal control volts, at nominal line volts
SAG, SAG_SPREAD = 0.05, 0.025  # [1] of them, from no load to every relay in
CLEAN, CLEAN_SPREAD = 25e-6, 0.9  # [1] CO in the flue of a fire with air enough; its logarithm's
LEAST_CO = 2e-6  # [1] an analyser shows nothing as little
OUTDOORS = 2e-6  # [1] CO of an intake or a discharge with nothing wrong
FLAME, FLAME_SPREAD = 3.0, 1.2  # of the least flame signal a plate allows
MIDDLE = 0.35  # of what a plate allows, as a spread about its middle


def asides(evidence: Evidence, line: float) -> Iterator[Aside]:
    """Each point of them that was read, by the last reading of each run: one fire is one case.

    `line` is how far the line's volts are from what they should be [1].
    """
    yield from _control(evidence, line)
    read: dict[str, list[tuple[str, Estimate]]] = {}
    for run, point in evidence.history.state(evidence.state):
        last = evidence.readings(point, run)[-1:]
        if _usual(evidence.machine, point) is not None and last and last[0].main_fan:
            read.setdefault(point, []).append((run, evidence.of(last[0])))
    for point, found in read.items():
        mean, spread = _usual(evidence.machine, point) or (0.0, 1.0)
        scaled = [_scaled(point, each) for _, each in found]
        off = math.fsum(value - mean for value, _ in scaled) / len(scaled)
        yield Aside(point, found[0][0], off, math.hypot(max(u for _, u in scaled), spread))


def _control(evidence: Evidence, line: float) -> Iterator[Aside]:
    """Control volts without load against the transformer's, under load against those without."""
    nominal = evidence.machine.electrical.control_volts or CONTROL
    points = "power.control_volts.unloaded", "power.control_volts"
    unloaded, loaded = (evidence.anywhere(point) for point in points)
    usual, spread = UNLOADED * nominal * line, UNLOADED_SPREAD * nominal
    sag, sags = SAG * nominal, SAG_SPREAD * nominal
    if unloaded is not None:
        yield Aside(points[0], "off", unloaded.value - usual, math.hypot(unloaded.u, spread))
    if loaded is not None and unloaded is not None:
        off = loaded.value - (unloaded.value - sag)
        yield Aside(points[1], "fan", off, math.hypot(loaded.u, unloaded.u, sags))
    elif loaded is not None:
        off, u = loaded.value - (usual - sag), math.hypot(loaded.u, spread, sags)
        yield from (Aside(point, "fan", off, u) for point in points)


def _scaled(point: str, found: Estimate) -> tuple[float, float]:
    """CO of a flue by its logarithm: it is a little, ten times that, or a hundred times."""
    if not re.fullmatch(r"flue\.\d\.co", point):
        return found.value, found.u
    value = max(found.value, LEAST_CO)
    return math.log(value / CLEAN), found.u / value


def _usual(machine: Machine, point: str) -> tuple[float, float] | None:
    """What is usual at a point, and its spread [SI]; None where nobody can say."""
    kind, _, rest = point.partition(".")
    if point in ("air.intake.co", "air.discharge.co"):
        return 0.0, OUTDOORS
    if kind not in ("flue", "furnace"):
        return None
    furnace, name = machine.furnace(int(rest[0])), rest[2:]
    if name == "co":
        return 0.0, CLEAN_SPREAD
    if name == "flame" and furnace.flame_signal:
        return FLAME * furnace.flame_signal, FLAME_SPREAD * furnace.flame_signal
    allowed = {"draft": furnace.flue_draft, "proving_pressure": furnace.proving_pressure}.get(name)
    if allowed is None:
        return None
    low, high = sorted(allowed)
    return (low + high) / 2, MIDDLE * (high - low)
