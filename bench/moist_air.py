"""A million states of moist air, against PsychroLib one by one and against bare numpy."""

from collections.abc import Callable
from statistics import median
from time import perf_counter

import numpy as np
import psychrolib

from lightoff.physics.moist_air import (
    humidity_ratio,
    moist_air_density,
    moist_air_enthalpy,
    vapour_pressure,
)
from lightoff.physics.psychrometer import wet_bulb
from lightoff.physics.saturation import dew_point, saturation_pressure

MANY = 1_000_000
BLOCK = 4_000  # states in one array: what numpy makes on the way then stays in the cache
FEW = 2_000  # as many as PsychroLib is asked in a turn; it takes as long for each of a million
TURNS = 5

Array = np.ndarray
Found = tuple[Array, ...]
Work = Callable[[Array, Array, Array], Found]

psychrolib.SetUnitSystem(psychrolib.SI)
rng = np.random.default_rng(11)
T = rng.uniform(233.15, 333.15, MANY)
PHI = rng.uniform(0.05, 1.0, MANY)
P = rng.uniform(65e3, 105e3, MANY)


def explicit(T: Array, phi: Array, p: Array) -> Found:
    """Saturation pressure, humidity ratio, density and enthalpy."""
    W = humidity_ratio(T, relative_humidity=phi, pressure=p)
    density = moist_air_density(T, humidity_ratio=W, pressure=p)
    return saturation_pressure(T), W, density, moist_air_enthalpy(T, W)


def solved(T: Array, phi: Array, p: Array) -> Found:
    """The same with the wet bulb and the dew point."""
    found = explicit(T, phi, p)
    bulb = wet_bulb(T, humidity_ratio=found[1], pressure=p)
    return (*found, bulb, dew_point(vapour_pressure(T, phi)))


def bare(T: Array, phi: Array, p: Array) -> Found:
    """The explicit ones as anyone would write them for arrays, the same operations in a row."""
    saturated = bare_saturation(T)
    vapour = phi * bare_saturation(T)
    W = 0.621945 * vapour / (p - vapour)
    density = (1 + W) / (287.042 * T * (1 + W / 0.621945) / p)
    t = T - 273.15
    return saturated, W, density, 1006.0 * t + W * (2501e3 + 1860.0 * t)


def bare_saturation(T: Array) -> Array:
    ice = (-5.6745359e3 / T + 6.3925247 + T * (-9.6778430e-3 + T * (6.2215701e-7 + T * (
        2.0747825e-9 + T * -9.4840240e-13))) + 4.1635019 * np.log(T))  # fmt: skip
    water = (-5.8002206e3 / T + 1.3914993 + T * (-4.8640239e-2 + T * (4.1764768e-5 + T *
             -1.4452093e-8)) + 6.5459673 * np.log(T))  # fmt: skip
    return np.exp(np.where(T < 273.16, ice, water))


def one_by_one(T: Array, phi: Array, p: Array) -> Found:
    """PsychroLib; the wet bulb from the humidity ratio, as ours."""
    rows = zip((T - 273.15).tolist(), phi.tolist(), p.tolist(), strict=True)
    return tuple(np.array([state(*row) for row in rows]).T)


def state(t: float, phi: float, p: float) -> tuple[float, ...]:
    W = psychrolib.GetHumRatioFromRelHum(t, phi, p)
    return (
        psychrolib.GetSatVapPres(t),
        W,
        psychrolib.GetMoistAirDensity(t, W, p),
        psychrolib.GetMoistAirEnthalpy(t, W),
        psychrolib.GetTWetBulbFromHumRatio(t, W, p) + 273.15,
        psychrolib.GetTDewPointFromRelHum(t, phi) + 273.15,
    )


def check() -> None:
    """The same answers: to the last digits, the wet bulb within PsychroLib's own 0.001 K."""
    few = (T[:FEW], PHI[:FEW], P[:FEW])
    for mine, theirs in zip(explicit(*few), bare(*few), strict=True):
        np.testing.assert_allclose(mine, theirs, rtol=1e-12, atol=1e-8)
    *mine, bulb, dew = solved(*few)
    *theirs, their_bulb, their_dew = one_by_one(*few)
    np.testing.assert_allclose(mine, theirs, rtol=3e-7)
    np.testing.assert_allclose(dew, their_dew, rtol=0, atol=1e-6)
    # where a wick of water and one of ice would both do, PsychroLib may take the ice
    ice = (bulb >= 273.15) & (their_bulb < 273.15)
    assert ice.mean() < 0.01
    np.testing.assert_allclose(bulb[~ice], their_bulb[~ice], rtol=0, atol=1e-3)


def seconds(work: Work, states: int, block: int) -> float:
    """How long for so many states, block by block."""
    start = perf_counter()
    for i in range(0, states, block):
        work(*(each[i : i + block] for each in (T, PHI, P)))
    return perf_counter() - start


def turn() -> tuple[float, ...]:
    psychro = seconds(one_by_one, FEW, FEW) * MANY / FEW
    return psychro, *(seconds(work, MANY, BLOCK) for work in (solved, explicit, bare))


def main() -> None:
    """Check, then take turns."""
    check()
    turns = [turn() for _ in range(TURNS)]
    psychro, mine, plain, numpy = (median(each) for each in zip(*turns, strict=True))
    print(f"moist air, {MANY} states in arrays of {BLOCK}: saturation pressure, humidity ratio, "
          f"density, enthalpy, wet bulb, dew point {mine:.2f} s, PsychroLib {psychro:.0f} s, "
          f"{psychro / mine:.0f} times; the first four {plain:.3f} s, bare numpy {numpy:.3f} s, "
          f"{plain / numpy:.2f} times as long")  # fmt: skip


if __name__ == "__main__":
    main()
