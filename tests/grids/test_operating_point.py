"""Curves and crossings against scipy, and the standard shape against the fit it was read from."""

import math
from collections.abc import Callable

import numpy as np
import pytest
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

from lightoff.physics.curve import read
from lightoff.physics.fan_curve import (
    BACKWARD_INCLINED,
    FORWARD_CURVED,
    pressure_curve,
    standard_pressures,
)
from lightoff.physics.operating_point import (
    CONDITIONS,
    FURTHEST,
    TOO_FREE,
    TOO_WEAK,
    Part,
    operating_point,
)

Function = Callable[[float], float]
Points = list[tuple[float, float]]

AGREED = 1e-9  # relative, of the airflow; found 2e-13 or better: both end at the last digits
STILL = {"speed_ratio": 1.0, "density_ratio": 1.0}


def declared(rng: np.random.Generator, *, falling: bool) -> Points:
    """Points of a fan that nobody built."""
    count = int(rng.integers(2, 9))
    flows = np.cumsum(rng.uniform(0.1, 1.5, count))
    pressures = rng.uniform(50.0, 1500.0, count)
    return list(zip(flows.tolist(), (-np.sort(-pressures) if falling else pressures).tolist(),
                    strict=True))  # fmt: skip


def fan_of(points: Points, n: float, r: float) -> Function:
    """scipy's curve through the points, our continuation beyond them, moved by the fan laws."""
    curve = PchipInterpolator(*zip(*points, strict=True)) if len(points) > 2 else None
    (first, height), (last, end) = points[0], points[-1]
    chord = (end - height) / (last - first)
    slope = min(float(curve(last, 1)) if curve else chord, -end / last)

    def pressure(airflow: float) -> float:
        x = airflow / n
        if x <= first:
            found = height
        elif x >= last:
            found = end + slope * (x - last)
        else:
            found = float(curve(x)) if curve else height + chord * (x - first)
        return r * n * n * found

    return pressure


def system_of(parts: tuple[Part, ...]) -> Function:
    return lambda airflow: sum(p.drop * (airflow / p.airflow) ** p.exponent for p in parts)


def last_crossing(excess: Function, furthest: float, steps: int) -> float | None:
    """Between the last of many airflows where the fan gives enough, and the next one."""
    flows = np.linspace(1e-9, furthest, steps)
    enough = [excess(each) >= 0 for each in flows]
    if not any(enough) or enough[-1]:
        return None
    place = max(i for i, each in enumerate(enough) if each)
    return float(brentq(excess, flows[place], flows[place + 1], xtol=1e-300, rtol=1e-14))


@pytest.mark.parametrize("falling", [True, False])
def test_a_curve_is_scipys_pchip(falling: bool) -> None:
    """To rounding: 1e-12 of the largest pressure."""
    rng = np.random.default_rng(11)
    for _ in range(300):
        points = declared(rng, falling=falling)
        if len(points) == 2:
            continue
        theirs = PchipInterpolator(*zip(*points, strict=True))
        flows = np.linspace(points[0][0], points[-1][0], 101)
        np.testing.assert_allclose(
            read(pressure_curve(points), flows), theirs(flows), rtol=0, atol=1e-12 * 1500
        )


def test_crossings_of_falling_curves_are_brentqs() -> None:
    """Speeds, densities, exponents and chains drawn at random; one crossing each."""
    rng = np.random.default_rng(12)
    for _ in range(150):
        points = declared(rng, falling=True)
        n, r = rng.uniform(0.4, 1.6), rng.uniform(0.6, 1.4)
        parts = tuple(
            Part(float(10 ** rng.uniform(0.5, 3.5)), 2.0, float(rng.uniform(1, 2)))
            for _ in range(rng.integers(1, 4))
        )
        fan, system = fan_of(points, n, r), system_of(parts)
        furthest = FURTHEST * points[-1][0] * n
        theirs = brentq(lambda v, a=fan, b=system: a(v) - b(v), 0, furthest,
                        xtol=1e-300, rtol=1e-14)  # fmt: skip
        ours = operating_point(points, parts, speed_ratio=n, density_ratio=r)
        assert ours.airflow == pytest.approx(theirs, rel=AGREED)
        assert ours.pressure == pytest.approx(fan(theirs), rel=AGREED)


def test_of_several_crossings_it_is_the_last() -> None:
    """Humps and dips, and a pressure that does not move with the airflow; some never cross."""
    rng = np.random.default_rng(13)
    none = 0
    for _ in range(60):
        points = declared(rng, falling=False)
        parts = (
            Part(float(rng.uniform(20, 900)), points[-1][0], float(rng.uniform(1.5, 2))),
            Part(float(rng.uniform(-300, 1500)), 1.0, 0.0),
        )
        fan, system = fan_of(points, 1.0, 1.0), system_of(parts)
        furthest = FURTHEST * points[-1][0]
        theirs = last_crossing(lambda v, a=fan, b=system: a(v) - b(v), furthest, 1500)
        ours = operating_point(points, parts, **STILL)
        assert (theirs is None) == (ours.condition in (TOO_WEAK, TOO_FREE)), CONDITIONS
        none += theirs is None
        if theirs is not None:
            assert ours.airflow == pytest.approx(theirs, rel=AGREED)
    assert 5 <= none <= 30  # both kinds were met


@pytest.mark.parametrize("shape", [BACKWARD_INCLINED, FORWARD_CURVED])
@pytest.mark.parametrize(("rise", "gap"), [
    (20.0, 1e-2), (20.0, 1e-6), (20.0, 1e-10), (2.0, 1e-4), (2.0, 1e-8), (0.01, 1e-6),
])  # fmt: skip
def test_a_system_that_all_but_touches_the_peak(
    shape: tuple[tuple[float, float, float], ...], rise: float, gap: float
) -> None:
    """A building's pressure lifts the system to just below the fan's peak, then just above it.

    The two agree where fan and system run almost side by side; above the peak nothing is found, and
    that is said.
    """
    points = list(standard_pressures(shape, airflow=4.0, pressure=600.0))
    place = max(range(len(points)), key=lambda i: points[i][1])
    flow, peak = points[place]
    rising = Part(rise, 4.0, 2.0)
    against = peak - rising.drop * (flow / 4.0) ** 2
    below = (rising, Part(against - gap * peak, 1.0, 0.0))
    fan, system = fan_of(points, 1.0, 1.0), system_of(below)
    theirs = brentq(lambda v: fan(v) - system(v), flow, points[place + 1][0],
                    xtol=1e-300, rtol=1e-14)  # fmt: skip
    ours = operating_point(points, below, **STILL)
    assert ours.airflow == pytest.approx(theirs, rel=AGREED)
    # left of the peak the curve may still give what the system asks there: lift it above all of it
    lifted = (rising, Part(peak * (1 + gap), 1.0, 0.0))
    assert operating_point(points, lifted, **STILL).condition == TOO_WEAK


@pytest.mark.parametrize("nudge", [-1e-12, 0.0, 1e-12])
def test_a_crossing_at_a_declared_point(nudge: float) -> None:
    points = [(2.0, 900.0), (3.0, 850.0), (4.0, 720.0), (5.0, 500.0)]
    for flow, pressure in points:
        part = Part(pressure * (1 + nudge), flow, 2.0)
        found = operating_point(points, (part,), **STILL)
        assert found.airflow == pytest.approx(flow, rel=1e-11)
        assert found.pressure == pytest.approx(pressure, rel=1e-11)


# Dimensionless fit of a backward-curved airfoil wheel over x, the logarithm of its Euler number
# over that of best efficiency: airflow a sigmoid, efficiency a skewed bell, below and above x = 0.
# EnergyPlus Input Output Reference, Curve:Sigmoid and Curve:ExponentialSkewNormal, examples.
FLOW = {False: (1.001423, 0.123935, -0.476026), True: (5.924993, -1.91636, -0.851779)}
EFFICIENCY = {False: (0.072613, 0.833213, 0.013911), True: (-1.674931, 1.980182, 1.844950)}


def fitted(x: float) -> tuple[float, float, float]:
    """Airflow, pressure and power over those of best efficiency."""
    b, c, d = FLOW[x > 0]
    flow = (1 + math.exp(c / d)) / (1 + math.exp((c - x) / d))
    assert b > 0
    a, b, d = EFFICIENCY[x > 0]

    def bell(z: float, skew: float) -> float:
        return math.exp(-z * z / 2) * (1 + math.erf(skew / 2**0.5))

    efficiency = bell((x - a) / b, (d * x - a) / b) / bell(-a / b, -a / b)
    pressure = 10**x * flow**2
    return flow, pressure, flow * pressure / efficiency


def test_the_standard_backward_inclined_shape_is_the_published_fit() -> None:
    """Read to three digits at nine places, the ends left out."""
    places = (2.0, 1.0, 0.5, 0.25, 0.0, -0.2, -0.4, -0.6, -1.0)
    for row, x in zip(BACKWARD_INCLINED[1:-1], places, strict=True):
        assert row == pytest.approx(fitted(x), abs=6e-4)


def test_between_its_places_it_stays_within_two_percent() -> None:
    """Of the design pressure, from a third of the design airflow to its end; found 1.0 %."""
    points = standard_pressures(BACKWARD_INCLINED, airflow=1.0, pressure=1.0)
    for x in np.linspace(-1.0, 1.0, 81):
        flow, pressure, _ = fitted(float(x))
        assert read(pressure_curve(points), flow) == pytest.approx(pressure, abs=0.02)
