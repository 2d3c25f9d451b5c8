"""A number of the model, opened: what it comes from, and what makes it uncertain."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lightoff.formula import Quantity
from lightoff.inference.estimate import Estimate, Part
from lightoff.inference.told import Uncertain
from lightoff.judgement.answer import BudgetLine
from lightoff.judgement.named import kind_told
from lightoff.judgement.together import Together
from lightoff.machine import Machine
from lightoff.machine.model.equations import Equations, equations
from lightoff.machine.model.expect import Expected, expect
from lightoff.machine.model.rated import Rated, rate
from lightoff.machine.model.unknowns import unknowns
from lightoff.quantity import KINDS, SI_UNIT


@dataclass(frozen=True)
class Opened:
    """Its value and standard uncertainty [SI], the parts of that, and the equations to it."""

    value: float
    standard_uncertainty: float
    budget: tuple[BudgetLine, ...]
    equations: Equations


def opened(
    machine: Machine, model: Together | None, name: str, run: str, day: Mapping[str, float]
) -> Opened | None:
    """A point or derived quantity of a run; None where the model says nothing of it.

    By the readings put to the `model`, by the plate without one. `day` holds unknowns that are
    given, as the weather is; where it holds none, a run that was read is the run as it was.
    """
    rated = rate(machine)
    try:
        found = _by_plate(rated, name, run, day) if model is None else _told(model, name, run, day)
        if found is None:
            return None
        values, told = found
        unit = SI_UNIT[KINDS[kind_told(name)].dimension]
        steps = equations(rated, values, run, Quantity(name, "X", "the number itself", unit))
    except (ArithmeticError, KeyError, TypeError, ValueError):  # the machine cannot work there
        return None
    lines = tuple(BudgetLine(part.cause, part.of, size) for part, size in told.budget())
    return Opened(told.value, told.u, lines, steps)


def _by_plate(
    rated: Rated, name: str, run: str, day: Mapping[str, float]
) -> tuple[dict[str, float], Uncertain]:
    values = {each.id: each.mean for each in unknowns(rated)}
    found = expect(rated, run, day)[name]
    return {**values, **day}, Estimate(found.value, dict(_parts(found, run)))


def _parts(found: Expected, run: str) -> Iterator[tuple[Part, float]]:
    for unknown, size in found.usual.items():
        yield Part("known before", unknown), size
    for unknown, size in found.wander.items():
        yield Part("from run to run", f"{unknown} {run}"), size


def _told(
    model: Together, name: str, run: str, day: Mapping[str, float]
) -> tuple[dict[str, float], Uncertain] | None:
    if not day and (told := model.told((name, run))) is not None:
        return model.found.values(run), told
    there = model.found.elsewhere(run, day)
    if name not in there:
        return None
    return {**model.found.values(), **day}, model.found.of(there[name])
