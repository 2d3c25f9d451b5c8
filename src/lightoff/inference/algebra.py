"""The little linear algebra a fit needs, on lists of rows, by the standard library alone.

`arrays.py` does the same on numpy arrays; whoever calls chooses. A triangle is a lower one.
"""

import math
from collections.abc import Sequence
from operator import mul
from typing import Any, Protocol

Vector = Any  # a list of floats, or a numpy array
Matrix = Any  # a list of rows, or a numpy array
Groups = Sequence[slice]  # rows that belong together, one slice after the other


class Algebra(Protocol):
    """What lists and arrays both do."""

    def matrix(self, rows: Sequence[Sequence[float]]) -> Matrix:
        """The rows, made ready."""

    def covariance(
        self, common: Matrix, own: Matrix, groups: Groups, variances: Vector, /
    ) -> Matrix:
        """Products of the common rows, of the own ones inside each group, and the variances."""

    def cholesky(self, matrix: Matrix) -> Matrix:
        """The triangle whose rows' products are the matrix."""

    def forward(self, triangle: Matrix, vectors: Sequence[Vector]) -> Sequence[Vector]:
        """Each vector divided by the triangle."""

    def backward(self, triangle: Matrix, vector: Vector) -> Vector:
        """The vector divided by the triangle turned over."""

    def times(self, rows: Matrix, vector: Vector) -> Vector:
        """Each row times the vector."""

    def across(self, rows: Matrix, vector: Vector) -> Vector:
        """Each column times the vector."""


class Lists:
    """On lists of rows."""

    def matrix(self, rows: Sequence[Sequence[float]]) -> Matrix:
        return [list(row) for row in rows]

    def covariance(
        self, common: Matrix, own: Matrix, groups: Groups, variances: Vector, /
    ) -> Matrix:
        found = [[dot(a, b) for b in common[: i + 1]] for i, a in enumerate(common)]
        for group in groups:
            for i in range(*group.indices(len(own))):
                for j in range(group.start, i + 1):
                    found[i][j] += dot(own[i], own[j])
        for row, variance in zip(found, variances, strict=True):
            row[-1] += variance
        return found

    def cholesky(self, matrix: Matrix) -> Matrix:
        triangle: list[list[float]] = []
        for row in matrix:
            made: list[float] = []
            for other, value in zip(triangle, row, strict=False):
                made.append((value - dot(made, other)) / other[-1])
            made.append(math.sqrt(row[len(made)] - dot(made, made)))
            triangle.append(made)
        return triangle

    def forward(self, triangle: Matrix, vectors: Sequence[Vector]) -> Sequence[Vector]:
        return [_divided(triangle, vector) for vector in vectors]

    def backward(self, triangle: Matrix, vector: Vector) -> Vector:
        found = list(vector)
        for i in range(len(triangle) - 1, -1, -1):
            row = triangle[i]
            x = found[i] / row[-1]
            found[:i] = [f - value * x for f, value in zip(found[:i], row, strict=False)]
            found[i] = x
        return found

    def times(self, rows: Matrix, vector: Vector) -> Vector:
        return [dot(row, vector) for row in rows]

    def across(self, rows: Matrix, vector: Vector) -> Vector:
        return [dot(column, vector) for column in zip(*rows, strict=True)]


class Apart(Lists):
    """On readings that share nothing: the triangle is a diagonal, a list of its numbers."""

    def covariance(
        self, _common: Matrix, _own: Matrix, _groups: Groups, variances: Vector, /
    ) -> Matrix:
        return list(variances)

    def cholesky(self, matrix: Matrix) -> Matrix:
        return [math.sqrt(each) for each in matrix]

    def forward(self, triangle: Matrix, vectors: Sequence[Vector]) -> Sequence[Vector]:
        return [[v / u for v, u in zip(each, triangle, strict=True)] for each in vectors]

    def backward(self, triangle: Matrix, vector: Vector) -> Vector:
        return [v / u for v, u in zip(vector, triangle, strict=True)]


def _divided(triangle: Matrix, vector: Vector) -> Vector:
    found: list[float] = []
    for row, value in zip(triangle, vector, strict=True):
        found.append((value - dot(row, found)) / row[-1])
    return found


def dot(a: Sequence[float], b: Sequence[float]) -> float:
    """Sum of products, as far as the shorter one goes."""
    return float(sum(map(mul, a, b)))
