"""Dual numbers against the slopes of calculus and of small steps."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lightoff.formula.dual import Dual
from lightoff.formula.elementary import clip, exp, log, maximum, sin, where
from lightoff.physics.curve import curve_through, read
from lightoff.physics.moist_air import humidity_ratio
from lightoff.physics.motor_current import motor_amps
from lightoff.physics.psychrometer import wet_bulb

numbers = st.floats(0.2, 5.0)


def slopes(function, *values: float) -> list[float]:
    n = len(values)
    duals = [Dual(v, [float(i == j) for j in range(n)]) for i, v in enumerate(values)]
    return list(function(*duals).slopes)


def stepped(function, *values: float) -> list[float]:
    found = []
    for i, value in enumerate(values):
        h = 1e-6 * abs(value)
        up, down = list(values), list(values)
        up[i], down[i] = value + h, value - h
        found.append((function(*up) - function(*down)) / (up[i] - down[i]))
    return found


@given(numbers, numbers)
def test_rules_of_calculus(x: float, y: float) -> None:
    assert slopes(lambda a, b: a * b, x, y) == pytest.approx([y, x])
    assert slopes(lambda a, b: a / b, x, y) == pytest.approx([1 / y, -x / y**2])
    assert slopes(lambda a, b: a**b, x, y) == pytest.approx([y * x ** (y - 1), x**y * math.log(x)])
    assert slopes(lambda a, b: 2**a - 3 / b, x, y) == pytest.approx([2**x * math.log(2), 3 / y**2])
    assert slopes(lambda a, b: exp(a) * log(b) + sin(a), x, y) == pytest.approx(
        [math.exp(x) * math.log(y) + math.cos(x), math.exp(x) / y]
    )


@given(numbers, numbers)
def test_a_choice_has_the_slope_of_what_was_chosen(x: float, y: float) -> None:
    larger = slopes(lambda a, b: maximum(a, b), x, y)
    assert larger == ([1.0, 0.0] if x >= y else [0.0, 1.0])
    assert slopes(lambda a, b: where(a > b, a * a, b), x, y)[0] == (2 * x if x > y else 0.0)
    inside = slopes(lambda a: clip(a, 1.0, 2.0), x) if 1 < x < 2 else [1.0]
    assert inside == [1.0]


# water and ice meet at 273.16 K, where slopes jump
COLD_OR_WARM = st.floats(245.0, 272.0) | st.floats(285.0, 320.0)


@given(COLD_OR_WARM, st.floats(0.5, 0.9), st.floats(70e3, 105e3))
def test_whole_formulas_give_their_slopes(T: float, phi: float, p: float) -> None:
    def moisture(t, rh, pressure):
        return humidity_ratio(t, relative_humidity=rh, pressure=pressure)

    def bulb(t, rh, pressure):
        return wet_bulb(t, humidity_ratio=moisture(t, rh, pressure), pressure=pressure)

    for function in (moisture, bulb):
        exact, tried = slopes(function, T, phi, p), stepped(function, T, phi, p)
        assert exact == pytest.approx(tried, rel=1e-4, abs=1e-12)


@given(st.floats(1000.0, 11900.0), st.floats(380.0, 500.0))
def test_a_solved_formula_and_a_curve_too(power: float, volts: float) -> None:
    plate = {"phases": 3, "rated_amps": 18.5, "rated_volts": 460.0, "power_factor": 0.83}

    def amps(P, V):
        return motor_amps(P, volts=V, **plate)

    assert slopes(amps, power, volts) == pytest.approx(stepped(amps, power, volts), rel=1e-4)
    curve = curve_through(((0.0, 5.0), (6000.0, 4.0), (12000.0, 1.0)), -1e-3)
    at = slopes(lambda x: read(curve, x), power)
    assert at == pytest.approx(stepped(lambda x: read(curve, x), power), rel=1e-4, abs=1e-12)
