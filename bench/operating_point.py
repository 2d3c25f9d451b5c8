"""A hundred thousand crossings of fan and system, against `scipy.optimize.brentq` one by one."""

from bisect import bisect_right
from itertools import pairwise
from statistics import median
from time import perf_counter

import numpy as np
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

from lightoff.physics.operating_point import FURTHEST, Part, operating_point

MANY = 100_000
BLOCK = 5_000
TURNS = 5
AGREE = 1e-9  # relative; both find the same root of the same function
# an invented fan's plate: airflow and fan static pressure
PLATE = ((2.0, 900.0), (3.0, 850.0), (4.0, 720.0), (5.0, 500.0), (5.8, 260.0))

rng = np.random.default_rng(7)
SPEED = rng.uniform(0.7, 1.2, MANY)
DENSITY = rng.uniform(0.75, 1.15, MANY)
FITTINGS = rng.uniform(100.0, 500.0, MANY)
DUCT = rng.uniform(100.0, 800.0, MANY)
EXPONENT = rng.uniform(1.8, 2.0, MANY)


def ours() -> np.ndarray:
    """All of them, in blocks that stay in the processor's cache."""
    found = np.empty(MANY)
    for start in range(0, MANY, BLOCK):
        block = slice(start, start + BLOCK)
        system = (Part(FITTINGS[block], 4.0, 2.0), Part(DUCT[block], 4.0, EXPONENT[block]))
        found[block] = operating_point(
            PLATE, system, speed_ratio=SPEED[block], density_ratio=DENSITY[block]
        ).airflow
    return found


def theirs() -> np.ndarray:
    """One by one, the same curve as plain numbers, as lean as Python allows."""
    curve = PchipInterpolator(*zip(*PLATE, strict=True))
    knots, cubics = curve.x.tolist(), curve.c.T.tolist()
    end_slope = min(float(curve(knots[-1], 1)), -PLATE[-1][1] / PLATE[-1][0])

    def pressure(airflow: float) -> float:
        if airflow <= knots[0]:
            return PLATE[0][1]
        if airflow >= knots[-1]:
            return PLATE[-1][1] + end_slope * (airflow - knots[-1])
        place = bisect_right(knots, airflow) - 1
        a, b, c, d = cubics[place]
        t = airflow - knots[place]
        return ((a * t + b) * t + c) * t + d

    def excess(airflow: float, n: float, r: float, k: float, d: float, e: float) -> float:
        share = airflow / 4.0
        return r * n * n * pressure(airflow / n) - k * share**2 - d * share**e

    rows = zip(*(each.tolist() for each in (SPEED, DENSITY, FITTINGS, DUCT, EXPONENT)), strict=True)
    return np.array([
        brentq(excess, 0.0, FURTHEST * knots[-1] * row[0], args=row, xtol=1e-12, rtol=1e-14)
        for row in rows
    ])  # fmt: skip


def main() -> None:
    """Check that both agree, then take turns."""
    mine, other = ours(), theirs()
    apart = float(np.max(np.abs(mine / other - 1)))
    assert apart < AGREE, apart
    stamps = [perf_counter()]
    for _ in range(TURNS):
        ours()
        stamps.append(perf_counter())
        theirs()
        stamps.append(perf_counter())
    spent = [after - before for before, after in pairwise(stamps)]
    fast, slow = median(spent[::2]), median(spent[1::2])
    print(f"operating point, {MANY} crossings: {fast:.3f} s, scipy.optimize.brentq {slow:.2f} s, "
          f"{slow / fast:.0f} times; largest difference {apart:.1e}")  # fmt: skip


if __name__ == "__main__":
    main()
