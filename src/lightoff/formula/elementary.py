"""Elementary functions of a float, a figure or an array, so that every formula is written once.

`math` serves floats; numpy is imported only when an array comes in, because the engine also runs
where numpy is absent.
"""

import math
from itertools import pairwise
from typing import Any

from lightoff.formula.dual import Dual
from lightoff.formula.duals import Duals, chosen
from lightoff.formula.figure import Figure, Holds, carried, result

# A float, a figure or a numpy array. numpy may be absent, so the array side has no static type.
Number = Any


def _array(*values: Number) -> bool:
    return any(type(value) is not float and hasattr(value, "__array__") for value in values)


def exp(x: Number) -> Number:
    """e to the power x."""
    return _applied("exp", x)


def log(x: Number) -> Number:
    """Natural logarithm of x."""
    return _applied("log", x)


def sin(x: Number) -> Number:
    """Sine of an angle in radians."""
    return _applied("sin", x)


def cos(x: Number) -> Number:
    """Cosine of an angle in radians."""
    return _applied("cos", x)


def asin(x: Number) -> Number:
    """The angle whose sine is x [rad]."""
    return _applied("asin", x)


def _applied(name: Any, x: Number) -> Number:
    if type(x) is float:
        return getattr(math, name)(x)
    if isinstance(x, Dual):
        return x.applied(name)
    if isinstance(x, Figure):
        return carried(name, getattr(math, name), x)
    if _array(x):
        import numpy

        return getattr(numpy, "arcsin" if name == "asin" else name)(x)
    return getattr(math, name)(x)


def where(condition: Number, yes: Number, no: Number) -> Number:
    """`yes` where the condition holds, else `no`; both are evaluated."""
    if condition is True:
        return yes
    if condition is False:
        return no
    if isinstance(condition, Holds):
        return result("where", yes if condition else no, condition, yes, no)
    if _array(condition, yes, no):
        if isinstance(yes, Duals) or isinstance(no, Duals):
            return chosen(condition, yes, no)
        import numpy

        return numpy.where(condition, yes, no)
    return yes if condition else no


def everywhere(condition: Number) -> bool:
    """Whether the condition holds, in all elements if it is an array of them."""
    return bool(condition.all() if _array(condition) else condition)


def minimum(a: Number, b: Number) -> Number:
    """The smaller of the two, element by element."""
    if type(a) is float and type(b) is float:
        return a if a < b else b
    if isinstance(a, Figure) or isinstance(b, Figure):
        return carried("min", min, a, b)
    if isinstance(a, Duals) or isinstance(b, Duals):
        return chosen(a < b, a, b)
    if _array(a, b):
        import numpy

        return numpy.minimum(a, b)
    return a if _less(a, b) else b


def maximum(a: Number, b: Number) -> Number:
    """The larger of the two, element by element."""
    if type(a) is float and type(b) is float:
        return b if a < b else a
    if isinstance(a, Figure) or isinstance(b, Figure):
        return carried("max", max, a, b)
    if isinstance(a, Duals) or isinstance(b, Duals):
        return chosen(a < b, b, a)
    if _array(a, b):
        import numpy

        return numpy.maximum(a, b)
    return b if _less(a, b) else a


def _less(a: float, b: float) -> bool:
    try:
        return a < b
    except TypeError:  # a root of a negative number was compared
        raise ValueError("no real number to compare") from None


def clip(x: Number, lower: Number, upper: Number) -> Number:
    """x held between the two limits."""
    return minimum(maximum(x, lower), upper)


def ceil(x: Number) -> Number:
    """The smallest whole number that is not below x."""
    if isinstance(x, Figure):
        return carried("ceil", ceil, x)
    if _array(x):
        import numpy

        return numpy.ceil(x)
    return float(math.ceil(x))


def interpolate(x: Number, table: tuple[tuple[float, float], ...]) -> Number:
    """Piecewise linear through the table's points, flat beyond its ends.

    >>> interpolate(1.5, ((1.0, 10.0), (2.0, 20.0)))
    15.0
    """
    if isinstance(x, Figure):
        return carried("table", lambda value: interpolate(value, table), x)
    if isinstance(x, Dual):
        return x.through(interpolate(x.value, table), _steepness(x.value, table))
    if _array(x):
        import numpy

        places, values = zip(*table, strict=True)
        return numpy.interp(x, places, values)
    return _looked_up(x, table)


def _steepness(x: Number, table: tuple[tuple[float, float], ...]) -> Number:
    """Of the line through the two points that a number lies between."""
    found: Number = 0.0
    for (x0, y0), (x1, y1) in pairwise(table):
        found = where(x < x0, found, where(x < x1, (y1 - y0) / (x1 - x0), 0.0))
    return found


def _looked_up(x: float, table: tuple[tuple[float, float], ...]) -> Number:
    """The same for one number, which needs only the two points it lies between."""
    for (x0, y0), (x1, y1) in pairwise(table):
        if x < x1:
            return y0 + max((x - x0) / (x1 - x0), 0.0) * (y1 - y0)
    return table[-1][1]
