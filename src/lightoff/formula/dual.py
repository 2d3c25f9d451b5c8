"""Numbers that carry how they move: a formula asked with them answers its own slopes, exactly.

A dual number is a value with its slope by each of some unknowns (forward differentiation). Every
formula takes it like a float, because plain arithmetic is all that formulas are made of.
"""

import math
from collections.abc import Callable, Sequence
from functools import wraps
from typing import Any, Union

Other = Union["Dual", float]


class Dual:
    """A value and its slopes, one for each unknown."""

    __slots__ = ("slopes", "value")

    def __init__(self, value: float, slopes: Sequence[float]) -> None:
        self.value = value
        self.slopes = slopes

    def __add__(self, other: Other) -> "Dual":
        if isinstance(other, Dual):
            slopes = [a + b for a, b in zip(self.slopes, other.slopes, strict=True)]
            return Dual(self.value + other.value, slopes)
        return Dual(self.value + other, self.slopes)

    __radd__ = __add__

    def __sub__(self, other: Other) -> "Dual":
        if isinstance(other, Dual):
            slopes = [a - b for a, b in zip(self.slopes, other.slopes, strict=True)]
            return Dual(self.value - other.value, slopes)
        return Dual(self.value - other, self.slopes)

    def __rsub__(self, other: float) -> "Dual":
        return Dual(other - self.value, [-a for a in self.slopes])

    def __neg__(self) -> "Dual":
        return Dual(-self.value, [-a for a in self.slopes])

    def __abs__(self) -> "Dual":
        return -self if self.value < 0 else self

    def __mul__(self, other: Other) -> "Dual":
        x = self.value
        if isinstance(other, Dual):
            y = other.value
            slopes = [y * a + x * b for a, b in zip(self.slopes, other.slopes, strict=True)]
            return Dual(x * y, slopes)
        return Dual(x * other, [other * a for a in self.slopes])

    __rmul__ = __mul__

    def __truediv__(self, other: Other) -> "Dual":
        if isinstance(other, Dual):
            y = other.value
            z = self.value / y
            slopes = [(a - z * b) / y for a, b in zip(self.slopes, other.slopes, strict=True)]
            return Dual(z, slopes)
        return Dual(self.value / other, [a / other for a in self.slopes])

    def __rtruediv__(self, other: float) -> "Dual":
        z = other / self.value
        by = -z / self.value
        return Dual(z, [by * a for a in self.slopes])

    def __pow__(self, other: Other) -> "Dual":
        x = self.value
        if isinstance(other, Dual):
            z = x**other.value
            by, log = other.value * x ** (other.value - 1), z * math.log(x)
            slopes = [by * a + log * b for a, b in zip(self.slopes, other.slopes, strict=True)]
            return Dual(z, slopes)
        by = other * x ** (other - 1) if other else 0.0
        return Dual(x**other, [by * a for a in self.slopes])

    def __rpow__(self, other: float) -> "Dual":
        z = other**self.value
        by = z * math.log(other)
        return Dual(z, [by * a for a in self.slopes])

    def __lt__(self, other: Other) -> bool:
        return self.value < _value(other)

    def __gt__(self, other: Other) -> bool:
        return self.value > _value(other)

    def __le__(self, other: Other) -> bool:
        return self.value <= _value(other)

    def __ge__(self, other: Other) -> bool:
        return self.value >= _value(other)

    def __bool__(self) -> bool:
        return bool(self.value)

    def __float__(self) -> float:
        return self.value

    def through(self, value: float, by: float) -> "Dual":
        """A function of it, from its value and its slope."""
        return Dual(value, [by * a for a in self.slopes])

    def applied(self, name: str) -> "Dual":
        """An elementary function of it, by its name in `math`."""
        x = self.value
        by = _SLOPES[name](x)
        return Dual(getattr(math, name)(x), [by * a for a in self.slopes])


def sloped(slope: Callable[..., Any]) -> Callable[[Callable[..., Any]], Callable[..., Any]]:
    """The same function of one number, its first argument, with the slope that is known of it.

    A dual number then goes through it in one step, not in one for each operation in it.
    """

    def of(function: Callable[..., Any]) -> Callable[..., Any]:
        @wraps(function)
        def asked(x: Any, *rest: Any) -> Any:
            if isinstance(x, Dual):
                return x.through(function(x.value, *rest), slope(x.value, *rest))
            return function(x, *rest)

        del asked.__wrapped__  # it marks a formula
        return asked

    return of


def still(x: Any) -> Any:
    """A number without its slopes: on the way to a solution nobody needs them."""
    return x.value if isinstance(x, Dual) else x


def _value(other: Other) -> float:
    return other.value if isinstance(other, Dual) else other


_SLOPES: dict[str, Any] = {
    "exp": math.exp,
    "log": lambda x: 1 / x,
    "sin": math.cos,
    "cos": lambda x: -math.sin(x),
    "asin": lambda x: 1 / math.sqrt(1 - x * x),
}


def slopes_of(value: Other, many: int) -> Sequence[float]:
    """The slopes of a number; none of a plain one."""
    return value.slopes if isinstance(value, Dual) else [0.0] * many
