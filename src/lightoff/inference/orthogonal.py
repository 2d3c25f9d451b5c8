"""Least squares of a tall matrix by Householder reflections: nothing is squared, no digit is lost.

Matrices are lists of rows; the standard library does it alone.
"""

import math
from collections.abc import Sequence
from operator import mul
from typing import Protocol

Matrix = list[list[float]]


class Turned(Protocol):
    """A tall matrix turned into a triangle R by reflections Q; see `Triangle`."""

    @property
    def diagonal(self) -> Sequence[float]: ...
    def turned(self, vector: Sequence[float]) -> Sequence[float]: ...
    def back(self, vector: Sequence[float]) -> Sequence[float]: ...
    def back_turned(self, vector: Sequence[float]) -> Sequence[float]: ...
    def turned_back(self, vector: Sequence[float]) -> Sequence[float]: ...


class Triangle:
    """The triangle R that a matrix was turned into, and the reflections Q that did it."""

    def __init__(self, matrix: Sequence[Sequence[float]]) -> None:
        self.columns = [list(column) for column in zip(*matrix, strict=True)]
        self.rows = len(matrix)
        self.diagonal: list[float] = []
        for k, column in enumerate(self.columns):
            self.diagonal.append(_reflect(column, k, self.columns[k + 1 :]))

    def turned(self, vector: Sequence[float]) -> list[float]:
        """The vector after the same reflections."""
        found = list(vector)
        for k, column in enumerate(self.columns):
            _apply(column, k, found)
        return found

    def back(self, vector: Sequence[float]) -> list[float]:
        """The x of R x = vector."""
        n = len(self.columns)
        x = [0.0] * n
        for k in range(n - 1, -1, -1):
            rest = math.fsum(self.columns[j][k] * x[j] for j in range(k + 1, n))
            x[k] = (vector[k] - rest) / self.diagonal[k]
        return x

    def back_turned(self, vector: Sequence[float]) -> list[float]:
        """The x of R turned over, R^T x = vector."""
        x: list[float] = []
        for column, size, value in zip(self.columns, self.diagonal, vector, strict=True):
            x.append((value - dot(column, x)) / size)
        return x

    def turned_back(self, vector: Sequence[float]) -> list[float]:
        """Q x: the reflections the other way, of a vector as long as the triangle is wide."""
        found = [*vector, *[0.0] * (self.rows - len(vector))]
        for k in range(len(self.columns) - 1, -1, -1):
            _apply(self.columns[k], k, found)
        return found

    def inverse(self) -> Matrix:
        """The inverse of R, row by row; its rows' products are the covariance of the solution."""
        n = len(self.columns)
        units = ([float(i == k) for i in range(n)] for k in range(n))
        return [list(row) for row in zip(*(self.back(unit) for unit in units), strict=True)]

    def full_rank(self, share: float = 1e-13) -> bool:
        """Whether no column is a mixture of the others."""
        largest = max(map(abs, self.diagonal), default=0.0)
        return all(abs(each) > share * largest for each in self.diagonal)


def _reflect(column: list[float], k: int, others: list[list[float]]) -> float:
    """Turn a column so that nothing is left below its k-th place; the mirror is kept in it."""
    size = math.sqrt(dot(column[k:], column[k:]))
    if size == 0.0:
        return 0.0
    left = -math.copysign(size, column[k])
    column[k] -= left
    for other in others:
        _apply(column, k, other)
    return left


def _apply(mirror: list[float], k: int, vector: list[float]) -> None:
    """Reflect a vector in a mirror kept in a column from its k-th place on."""
    normal = mirror[k:]
    size = dot(normal, normal)
    if size == 0.0:
        return
    share = 2 * dot(normal, vector[k:]) / size
    vector[k:] = [y - share * x for x, y in zip(normal, vector[k:], strict=True)]


def dot(a: Sequence[float], b: Sequence[float]) -> float:
    """Sum of products, as far as the shorter one goes."""
    return float(sum(map(mul, a, b)))
