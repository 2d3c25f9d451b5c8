"""Dual numbers of many at once: values in an array, slopes in an array with one row an unknown.

The same as `Dual` for numpy, which is imported only when such a number is at work.
"""

from typing import Any

from lightoff.formula.dual import Dual


class Duals(Dual):
    """Values [many] and their slopes [unknowns, many]."""

    __array_ufunc__ = None  # an array to the left leaves the sum to us
    __slots__ = ()

    value: Any
    slopes: Any

    def __init__(self, value: Any, slopes: Any) -> None:
        self.value = value
        self.slopes = slopes

    def __add__(self, other: Any) -> "Duals":
        if isinstance(other, Duals):
            return Duals(self.value + other.value, self.slopes + other.slopes)
        return Duals(self.value + other, self.slopes)

    __radd__ = __add__

    def __sub__(self, other: Any) -> "Duals":
        if isinstance(other, Duals):
            return Duals(self.value - other.value, self.slopes - other.slopes)
        return Duals(self.value - other, self.slopes)

    def __rsub__(self, other: Any) -> "Duals":
        return Duals(other - self.value, -self.slopes)

    def __neg__(self) -> "Duals":
        return Duals(-self.value, -self.slopes)

    def __abs__(self) -> "Duals":
        import numpy

        sign = numpy.where(self.value < 0, -1.0, 1.0)
        return Duals(sign * self.value, sign * self.slopes)

    def __mul__(self, other: Any) -> "Duals":
        x = self.value
        if isinstance(other, Duals):
            y = other.value
            return Duals(x * y, y * self.slopes + x * other.slopes)
        return Duals(x * other, other * self.slopes)

    __rmul__ = __mul__

    def __truediv__(self, other: Any) -> "Duals":
        if isinstance(other, Duals):
            z = self.value / other.value
            return Duals(z, (self.slopes - z * other.slopes) / other.value)
        return Duals(self.value / other, self.slopes / other)

    def __rtruediv__(self, other: Any) -> "Duals":
        z = other / self.value
        return Duals(z, (-z / self.value) * self.slopes)

    def __pow__(self, other: Any) -> "Duals":
        import numpy

        x = self.value
        if isinstance(other, Duals):
            z = x**other.value
            by, log = other.value * x ** (other.value - 1), z * numpy.log(x)
            return Duals(z, by * self.slopes + log * other.slopes)
        return Duals(x**other, (other * x ** (other - 1)) * self.slopes)

    def __rpow__(self, other: Any) -> "Duals":
        import numpy

        z = other**self.value
        return Duals(z, (z * numpy.log(other)) * self.slopes)

    def __lt__(self, other: Any) -> Any:
        return self.value < _value(other)

    def __gt__(self, other: Any) -> Any:
        return self.value > _value(other)

    def __le__(self, other: Any) -> Any:
        return self.value <= _value(other)

    def __ge__(self, other: Any) -> Any:
        return self.value >= _value(other)

    def through(self, value: Any, by: Any) -> "Duals":
        """A function of it, from its values and its slopes."""
        return Duals(value, by * self.slopes)

    def applied(self, name: str) -> "Duals":
        """An elementary function of it, by its name in `math`."""
        import numpy

        x = self.value
        y = getattr(numpy, "arcsin" if name == "asin" else name)(x)
        by = {
            "exp": lambda: y,
            "log": lambda: 1 / x,
            "sin": lambda: numpy.cos(x),
            "cos": lambda: -numpy.sin(x),
            "asin": lambda: 1 / numpy.sqrt(1 - x * x),
        }[name]()
        return Duals(y, by * self.slopes)


def chosen(condition: Any, yes: Any, no: Any) -> Any:
    """`yes` where the condition holds, else `no`, with the slopes of the chosen."""
    import numpy

    value = numpy.where(condition, _value(yes), _value(no))
    one, two = (each.slopes if isinstance(each, Duals) else 0.0 for each in (yes, no))
    return Duals(value, numpy.where(condition, one, two))


def _value(other: Any) -> Any:
    return other.value if isinstance(other, Dual) else other
