"""Elementary functions of a float or an array, so that every formula is written once.

`math` serves floats; numpy is imported only when an array comes in, because the engine also runs
where numpy is absent.
"""

import math
from typing import Any

# A float or a numpy array. numpy may be absent, so the array side has no static type here.
Number = Any


def _array(*values: Number) -> bool:
    return any(hasattr(value, "__array__") for value in values)


def exp(x: Number) -> Number:
    """e to the power x."""
    if _array(x):
        import numpy

        return numpy.exp(x)
    return math.exp(x)


def log(x: Number) -> Number:
    """Natural logarithm of x."""
    if _array(x):
        import numpy

        return numpy.log(x)
    return math.log(x)


def where(condition: Number, yes: Number, no: Number) -> Number:
    """`yes` where the condition holds, else `no`; both are evaluated."""
    if _array(condition, yes, no):
        import numpy

        return numpy.where(condition, yes, no)
    return yes if condition else no


def minimum(a: Number, b: Number) -> Number:
    """The smaller of the two, element by element."""
    return where(a < b, a, b)


def maximum(a: Number, b: Number) -> Number:
    """The larger of the two, element by element."""
    return where(a > b, a, b)


def clip(x: Number, lower: Number, upper: Number) -> Number:
    """x held between the two limits."""
    return minimum(maximum(x, lower), upper)


def interpolate(x: Number, table: tuple[tuple[float, float], ...]) -> Number:
    """Piecewise linear through the table's points, flat beyond its ends.

    >>> interpolate(1.5, ((1.0, 10.0), (2.0, 20.0)))
    15.0
    """
    (x0, y0), *rest = table
    y = y0 + 0.0 * x
    for x1, y1 in rest:
        share = clip((x - x0) / (x1 - x0), 0.0, 1.0)
        y = y + share * (y1 - y0)
        x0, y0 = x1, y1
    return y
