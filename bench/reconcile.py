"""All readings of a thorough visit to three furnaces put to the model: against scipy's solver.

`scipy.optimize.least_squares` gets the same residuals and the same exact slopes from the same
start; without the slopes it takes minutes. What else the project
promises of its speed is printed beside: warm starts, the standard library alone, and the cost
against the number of readings.
"""

import sys
from dataclasses import dataclass
from pathlib import Path
from random import Random
from statistics import median
from time import perf_counter

import numpy as np
from scipy.optimize import least_squares

sys.path.insert(0, str(Path(__file__).parents[1] / "tests"))

from lightoff.inference.arrays import Arrays
from lightoff.inference.reconcile import Reconciled, Taken, reconcile
from lightoff.inference.solver import State
from lightoff.job import parse_tree
from lightoff.judgement import Fits, assess
from lightoff.judgement.evidence import evidence
from lightoff.judgement.history import history
from lightoff.judgement.together import together
from plant.plant import draw

SEED = 9083  # an invented machine of three furnaces; its visit has 80 readings that the model knows
TURNS = 5
AGREE = 1e-6  # of an unknown's spread, with scipy's answer
ALIKE = 1e-9  # of the same, with arrays and without
TIGHT = {"xtol": 1e-15, "ftol": 1e-15, "gtol": 1e-15}
BAR = 40  # characters


@dataclass(frozen=True)
class Work:
    """The visit, its readings as the model takes them, and the fit of them all."""

    machine: object
    visit: object
    taken: tuple[Taken, ...]
    found: Reconciled


def work() -> Work:
    """One visit of the independent machine."""
    job = parse_tree(draw(SEED, "none").visit("thorough", Random(SEED)).tree)
    machine, visit = job.machine(), job.visit()
    whole = together(evidence(machine, visit, history(machine, visit)))
    taken = whole.found.taken
    return Work(machine, visit, taken, reconcile(whole.found.model.rated, taken, algebra=Arrays()))


def spent(do, turns: int = TURNS) -> float:
    """Median seconds."""
    found = []
    do()
    for _ in range(turns):
        start = perf_counter()
        do()
        found.append(perf_counter() - start)
    return median(found)


def theirs(of: Reconciled) -> tuple[State, float, int]:
    """scipy's answer to the same residuals and exact slopes from the same start; time and calls."""
    model, readings = of.model.freed(of.model.free), of.readings
    free, common = len(model.free), len(model.known) + len(model.error_rows[0])
    many, wander = len(model.blocks), len(model.wandering)
    scale = np.array([each.spread for each in model.free])
    mean = np.array([each.mean for each in model.free])
    u, size = np.array(readings.u), free + common + many * wander
    known = np.eye(size)[free:]  # what is known before, each by itself
    calls = 0

    def state_of(x: np.ndarray) -> State:
        own = x[free + common :].reshape(many, wander)
        return State(
            tuple((mean + scale * x[:free]).tolist()),
            tuple(x[free : free + common].tolist()),
            tuple(tuple(each) for each in own.tolist()),
        )

    def residuals(x: np.ndarray) -> np.ndarray:
        nonlocal calls
        calls += 1
        left = np.array(model.shown(state_of(x))) - np.array(readings.values)
        return np.concatenate([left / u, x[free:]])

    def slopes(x: np.ndarray) -> np.ndarray:
        found = model.slopes(state_of(x))
        own = np.zeros((len(u), many * wander))
        for place, rows in enumerate(readings.groups):
            own[rows, place * wander : (place + 1) * wander] = found.own[rows]
        whole = np.hstack([found.free * scale, found.common, own])
        return np.vstack([whole / u[:, None], known])

    start = perf_counter()
    fit = least_squares(residuals, np.zeros(size), jac=slopes, method="lm", **TIGHT)
    return state_of(fit.x), perf_counter() - start, calls


def apart(of: Reconciled, other: State) -> float:
    """The largest difference of two answers, in spreads."""
    mine = of.solution.state
    free = [
        abs(a - b) / each.spread
        for each, a, b in zip(of.model.free, mine.free, other.free, strict=True)
    ]
    return max([*free, *(abs(a - b) for a, b in zip(mine.common, other.common, strict=True))])


def main() -> None:
    """Check that both agree, then print ratios."""
    it = work()
    rated, use = it.found.model.rated, Arrays()
    fine = reconcile(rated, it.taken, algebra=use, still=1e-7)
    alike = apart(it.found, reconcile(rated, it.taken).solution.state)
    assert alike < ALIKE, alike
    other, slow, calls = theirs(fine)
    off = apart(fine, other)
    assert off < AGREE, off
    fast = spent(lambda: reconcile(rated, it.taken, algebra=use))
    print(f"reconcile, {len(it.taken)} readings of three furnaces: {1e3 * fast:.0f} ms, "
          f"scipy.optimize.least_squares {slow:.1f} s in {calls} calls, {slow / fast:.0f} times; "
          f"largest difference {off:.1e} of a spread")  # fmt: skip
    plain = spent(lambda: reconcile(rated, it.taken))
    fewer = reconcile(rated, it.taken[:-1], algebra=use)
    warm = spent(lambda: reconcile(rated, it.taken, algebra=use, near=fewer))
    print(f"  standard library alone: {1e3 * plain:.0f} ms, {plain / fast:.1f} times the arrays; "
          f"largest difference {alike:.1e} of a spread")  # fmt: skip
    print(f"  one more reading: {1e3 * warm:.0f} ms, {warm / fast:.2f} of the first")
    whole = spent(lambda: assess(it.machine, it.visit, whole=False, fits=Fits(use)))
    alone = spent(lambda: assess(it.machine, it.visit, whole=False))
    print(f"  with every decision: {1e3 * whole:.0f} ms on arrays, {1e3 * alone:.0f} ms without")
    costs(it)


def costs(it: Work) -> None:
    """Time against readings, with and without arrays, drawn."""
    rated = it.found.model.rated
    rows = []
    for many in range(10, len(it.taken) + 1, 14):
        some = Random(SEED).sample(it.taken, many)
        with_arrays = spent(lambda some=some: reconcile(rated, some, algebra=Arrays()), 3)
        rows.append((many, with_arrays, spent(lambda some=some: reconcile(rated, some), 3)))
    longest = max(row[2] for row in rows)
    print("  readings   arrays   lists [ms]")
    for many, fast, slow in rows:
        bar, whole = "#" * round(BAR * fast / longest), round(BAR * slow / longest)
        print(f"  {many:8d} {1e3 * fast:8.0f} {1e3 * slow:7.0f}  {bar:-<{whole}}")


if __name__ == "__main__":
    main()
