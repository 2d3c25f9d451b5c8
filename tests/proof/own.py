"""Truth drawn from our own model: its unknowns from their spreads, its readings from their parts.

The machines, what is read of them and with what are those of the examples and of the plant's sound
units; nothing else is taken from there. A truth that cannot be is drawn again: one in which fan and
system never agree, no air or gas is left for the flame, the air holds less than no water, or a
building stands at a pressure that no exhaust fan makes and no door withstands.
"""

import math
from collections import defaultdict
from collections.abc import Iterator, Mapping
from functools import lru_cache
from pathlib import Path
from random import Random
from typing import NamedTuple

from lightoff.inference.arrays import Arrays
from lightoff.inference.estimate import Estimate, Part
from lightoff.inference.reconcile import Reconciled, Taken, reconcile
from lightoff.inference.reliability import chi_square_above
from lightoff.job import load, parse_tree
from lightoff.judgement.evidence import evidence
from lightoff.judgement.fits import quick_fits
from lightoff.judgement.history import history
from lightoff.judgement.together import together
from lightoff.machine.model.predict import NORMAL, Condition, predict
from lightoff.machine.model.unknowns import CORRELATED
from plant.plant import draw
from proof.gross import Gross, gross

EXAMPLES = Path(__file__).parents[2] / "examples"
SOUND = (
    "direct-drive-indoor",
    "one-furnace-propane",
    "two-furnaces-vfd",
    "three-furnaces-at-altitude",
)
MAIN = {
    "airflow": ("airflow.standard",),
    "input": ("input.1",),
    "efficiency": ("efficiency.1",),
    "rise": ("rise.unit",),
    "motor amps": ("motor.amps.a", "motor.amps"),
    "manifold": ("train.1.1.manifold",),
    "motor power": ("motor_power",),
    "static in the duct": ("static.duct",),
    "flue O2": ("flue.1.o2",),
    "discharge": ("discharge",),
}
GROSS_EACH = 2  # one draw in so many is read once more, with a gross error
SHUT = 100.0  # [Pa] indoors against outdoors, either way; engineering judgement
UNEXPLAINED = 1e-6  # [1] chance of a sum of squares as large as this
Shown = Mapping[str, Mapping[str, float]]  # by run: what each point truly is


class Own(NamedTuple):
    """One draw, answered. `off` are errors in standard uncertainties, by main quantity.

    `stuck`: the fit ended where its readings are not explained, though the truth explains them.
    """

    machine: str
    redrawn: int
    off: Mapping[str, float] = {}
    alarm: bool = False
    stuck: bool = False
    gross: Gross | None = None
    unanswered: str = ""
    failed: str = ""


def own(asked: tuple[str, int]) -> Own:
    """Truth `number` of a machine, read and put to the model that it comes from."""
    machine, number = asked
    rng = Random(f"{machine} {number}")
    base = visit_of(machine)
    true, redrawn = _truth(base, rng)
    blank = Own(machine, redrawn)
    try:
        return _answered(
            blank, reconcile(base.model.rated, _read(base, true, rng), algebra=Arrays()), true, rng
        )
    except ArithmeticError as error:  # as in a visit: then nothing is told of all readings together
        return blank._replace(unanswered=f"{machine} {number}: {error!r}")
    except Exception as error:
        return blank._replace(failed=f"{machine} {number}: {error!r}")


def _answered(blank: Own, found: Reconciled, true: Shown, rng: Random) -> Own:
    degrees = len(found.taken) - len(found.model.free)
    return blank._replace(
        off=dict(_off(found, true)),
        alarm=bool(found.suspects),
        stuck=chi_square_above(found.solution.objective, degrees) < UNEXPLAINED,
        gross=gross(found, rng) if rng.random() * GROSS_EACH < 1 else None,
    )


@lru_cache(maxsize=1)
def visit_of(machine: str) -> Reconciled:
    """An example's visit by its name, or a plant's by its seed and style."""
    if machine in SOUND:
        job = load(EXAMPLES / f"{machine}.toml")
    else:
        seed, style = machine.split()
        job = parse_tree(draw(int(seed), "none").visit(style, Random(int(seed))).tree)
    unit, visit = job.machine(), job.visit()
    found = together(evidence(unit, visit, history(unit, visit)), fits=quick_fits())
    assert found is not None
    return found.found


def _truth(base: Reconciled, rng: Random) -> tuple[Shown, int]:
    """What every run shows, and how many truths were none: no machine works with them."""
    for tries in range(1000):
        values = _unknowns(base, rng)
        runs = {run: _in_run(base, values, run, rng) for run in base.runs}
        if all(runs.values()):
            return runs, tries
    raise AssertionError("no machine of this kind works")


def _unknowns(base: Reconciled, rng: Random) -> dict[str, float]:
    """Each from its spread, the inspected ones too; those known together drawn together."""
    number = {each.id: rng.gauss(0, 1) for each in base.model.table}
    for name, (other, together_by) in CORRELATED.items():
        if name not in number or other not in number:
            continue
        alone = (1 - together_by**2) ** 0.5
        number[name] = together_by * number[other] + alone * number[name]
    return {each.id: each.mean + each.spread * number[each.id] for each in base.model.table}


def _in_run(
    base: Reconciled, values: Mapping[str, float], run: str, rng: Random
) -> Mapping[str, float]:
    """What a run shows once everything has wandered; nothing where it can't be."""
    there = {each.id: values[each.id] + each.wander * rng.gauss(0, 1) for each in base.model.table}
    found = predict(base.model.rated, there, Condition(run))
    if found.outcome != NORMAL or not 0 < there["air.outdoor.rh"] < 1:
        return {}
    return found.shown if abs(found.shown.get("building.pressure", 0.0)) < SHUT else {}


def _read(base: Reconciled, true: Shown, rng: Random) -> Iterator[Taken]:
    """Every reading of the visit taken anew, each part of its error drawn once, shared or not."""
    number: dict[Part, float] = defaultdict(lambda: rng.gauss(0, 1))
    for each in base.taken:
        parts = each.estimate.parts
        error = sum(size * number[part] for part, size in parts.items())
        yield each._replace(estimate=Estimate(true[each.run][each.point] + error, parts))


def _off(found: Reconciled, true: Shown) -> Iterator[tuple[str, float]]:
    for name, points in MAIN.items():
        for point in points:
            told = found.told((point, "high"))
            if told is not None:
                off = (true["high"][point] - told.value) / told.u
                assert math.isfinite(off), f"{name}: not a number"
                yield name, off
