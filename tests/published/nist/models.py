"""The models of NIST's nonlinear regression problems, each as NIST writes it.

`b` are the parameters, b1 first; `x` is the predictor, Nelson's two of them. Plain arithmetic, so
that numbers that carry their slopes get through.
"""

import math
from collections.abc import Callable, Sequence
from typing import Any

from lightoff.formula import Number
from lightoff.formula.elementary import asin, cos, exp, sin

B = Sequence[Number]
Model = Callable[[B, Any], Number]


def arctan(x: Number) -> Number:
    """The angle whose tangent is x [rad]."""
    return asin(x / (1 + x**2) ** 0.5)


def saturating(b: B, x: Number) -> Number:
    return b[0] * (1 - exp(-b[1] * x))


def misra1b(b: B, x: Number) -> Number:
    return b[0] * (1 - (1 + b[1] * x / 2) ** -2)


def misra1c(b: B, x: Number) -> Number:
    return b[0] * (1 - (1 + 2 * b[1] * x) ** -0.5)


def misra1d(b: B, x: Number) -> Number:
    return b[0] * b[1] * x * (1 + b[1] * x) ** -1


def chwirut(b: B, x: Number) -> Number:
    return exp(-b[0] * x) / (b[1] + b[2] * x)


def lanczos(b: B, x: Number) -> Number:
    return b[0] * exp(-b[1] * x) + b[2] * exp(-b[3] * x) + b[4] * exp(-b[5] * x)


def gauss(b: B, x: Number) -> Number:
    return (
        b[0] * exp(-b[1] * x)
        + b[2] * exp(-((x - b[3]) ** 2) / b[4] ** 2)
        + b[5] * exp(-((x - b[6]) ** 2) / b[7] ** 2)
    )


def danwood(b: B, x: Number) -> Number:
    return b[0] * x ** b[1]


def kirby(b: B, x: Number) -> Number:
    return (b[0] + b[1] * x + b[2] * x**2) / (1 + b[3] * x + b[4] * x**2)


def cubics(b: B, x: Number) -> Number:
    above = b[0] + b[1] * x + b[2] * x**2 + b[3] * x**3
    return above / (1 + b[4] * x + b[5] * x**2 + b[6] * x**3)


def nelson(b: B, x: tuple[float, float]) -> Number:
    """Of the logarithm of the response."""
    return b[0] - b[1] * x[0] * exp(-b[2] * x[1])


def mgh09(b: B, x: Number) -> Number:
    return b[0] * (x**2 + x * b[1]) / (x**2 + x * b[2] + b[3])


def mgh10(b: B, x: Number) -> Number:
    return b[0] * exp(b[1] / (x + b[2]))


def mgh17(b: B, x: Number) -> Number:
    return b[0] + b[1] * exp(-x * b[3]) + b[2] * exp(-x * b[4])


def roszman(b: B, x: Number) -> Number:
    return b[0] - b[1] * x - arctan(b[2] / (x - b[3])) / math.pi


def enso(b: B, x: Number) -> Number:
    year, second, third = (2 * math.pi * x / period for period in (12, b[3], b[6]))
    return (
        b[0]
        + b[1] * cos(year) + b[2] * sin(year)
        + b[4] * cos(second) + b[5] * sin(second)
        + b[7] * cos(third) + b[8] * sin(third)
    )  # fmt: skip


def rat42(b: B, x: Number) -> Number:
    return b[0] / (1 + exp(b[1] - b[2] * x))


def rat43(b: B, x: Number) -> Number:
    return b[0] / (1 + exp(b[1] - b[2] * x)) ** (1 / b[3])


def eckerle(b: B, x: Number) -> Number:
    return b[0] / b[1] * exp(-0.5 * ((x - b[2]) / b[1]) ** 2)


def bennett(b: B, x: Number) -> Number:
    return b[0] * (b[1] + x) ** (-1 / b[2])


MODELS: dict[str, Model] = {
    "Bennett5": bennett,
    "BoxBOD": saturating,
    "Chwirut1": chwirut,
    "Chwirut2": chwirut,
    "DanWood": danwood,
    "ENSO": enso,
    "Eckerle4": eckerle,
    "Gauss1": gauss,
    "Gauss2": gauss,
    "Gauss3": gauss,
    "Hahn1": cubics,
    "Kirby2": kirby,
    "Lanczos1": lanczos,
    "Lanczos2": lanczos,
    "Lanczos3": lanczos,
    "MGH09": mgh09,
    "MGH10": mgh10,
    "MGH17": mgh17,
    "Misra1a": saturating,
    "Misra1b": misra1b,
    "Misra1c": misra1c,
    "Misra1d": misra1d,
    "Nelson": nelson,
    "Rat42": rat42,
    "Rat43": rat43,
    "Roszman1": roszman,
    "Thurber": cubics,
}
