"""Visits of the independent machine, assessed and set against its truth."""

import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import asdict
from random import Random
from typing import Any, NamedTuple

from lightoff.job import Job, JobError, parse_tree
from lightoff.judgement import assess
from lightoff.judgement.evidence import evidence
from lightoff.judgement.fits import Fits, quick_fits
from lightoff.judgement.history import history
from lightoff.judgement.retaken import retaken
from lightoff.judgement.together import Together, together
from lightoff.machine import Machine
from lightoff.machine import Visit as Read
from plant.plant import Plant, draw
from plant.visit import Visit
from proof.decided import Decided, decisions
from proof.gross import Gross, gross

COVERED = {
    "airflow": r"airflow",
    "input": r"input\.\d",
    "efficiency": r"efficiency\.\d",
    "rise": r"rise\.unit",
    "motor amps": r"motor\.amps(\.[abc])?",
    "manifold": r"train\.\d\.\d\.manifold",
}


class Off(NamedTuple):
    """An estimate at high fire: its error in standard uncertainties."""

    quantity: str
    point: str
    off: float


class Seen(NamedTuple):
    """One visit, answered. `spread` is the airflow's standard uncertainty, of itself.

    `refused`: a reading nobody could have typed, such as an airflow of less than nothing.
    """

    seed: int
    style: str
    fault: str
    traits: Mapping[str, str]
    off: tuple[Off, ...] = ()
    decided: tuple[Decided, ...] = ()
    spread: float | None = None
    fitted: bool = False
    converged: bool = False
    suspected: tuple[tuple[str, str], ...] = ()
    gross: Gross | None = None
    refused: str = ""
    failed: str = ""

    @property
    def sound(self) -> bool:
        return self.fault == "none"


def seen(asked: tuple[int, str]) -> Seen:
    """The visit of one seed in one style; whatever goes wrong is told, not raised."""
    seed, style = asked
    plant = draw(seed)
    visit = plant.visit(style, Random(seed))
    blank = Seen(seed, style, plant.fault.id, traits(plant))
    try:
        return _answered(blank, plant, visit, parse_tree(visit.tree))
    except JobError as error:
        return blank._replace(refused=f"{seed} {style}: {error}")
    except Exception as error:
        return blank._replace(failed=f"{seed} {style}: {error!r}")


def traits(plant: Plant) -> dict[str, str]:
    """What a diagnosis groups by."""
    says, machine = plant.declared, plant.machine
    return {
        "furnaces": f"{len(says.furnaces)}",
        "arrangement": says.arrangement,
        "drive": ("belt" if machine.drive.belt else "direct") + (", VFD" if machine.vfd else ""),
        "phases": f"{says.motor.phases}",
        "gas": says.furnaces[0].gas,
        "mounting": "indoor" if says.indoor else "rooftop",
    }


def _answered(blank: Seen, plant: Plant, visit: Visit, job: Job) -> Seen:
    machine, read, fits = job.machine(), job.visit(), quick_fits()
    answer = assess(machine, read, whole=False, fits=fits)
    assert all(math.isfinite(number) for number in numbers(asdict(answer))), "not a number"
    runs = visit.truth["runs"]
    blank = blank._replace(decided=tuple(decisions(answer.targets, plant, runs)))
    model = _as_left(machine, read, fits)
    if model is None:
        return blank
    suspects = tuple((taken.run, taken.point) for each in model.misfits for taken in each.taken)
    rng = Random(f"gross {blank.seed}")
    return blank._replace(
        fitted=True,
        converged=model.found.solution.converged,
        suspected=suspects,
        off=tuple(_off(model, runs.get("high", {}))),
        spread=_spread(model),
        gross=gross(model.whole, rng) if blank.sound else None,
    )


def _as_left(machine: Machine, read: Read, fits: Fits) -> Together | None:
    """The fit that the assessment stood on."""
    told = evidence(machine, read, history(machine, read))
    return together(told, retaken(told), fits)


def _off(model: Together, true: Mapping[str, float]) -> Iterator[Off]:
    """Of every main quantity at high fire, where that was read."""
    read = [point for point in model.found.names("high") if point in true]
    for name, pattern in COVERED.items():
        for point in (p for p in read if re.fullmatch(pattern, p)):
            told = model.told((point, "high"))
            assert told is not None, f"{point}: not a number"
            yield Off(name, point, (true[point] - told.value) / told.u)


def _spread(model: Together) -> float | None:
    told = model.told(("airflow.standard", "high"))
    return None if told is None else told.u / told.value


def numbers(node: Any) -> Iterator[float]:
    """Every float of an answer."""
    if isinstance(node, dict):
        node = tuple(node.values())
    if isinstance(node, list | tuple):
        for each in node:
            yield from numbers(each)
    elif isinstance(node, float):
        yield node
