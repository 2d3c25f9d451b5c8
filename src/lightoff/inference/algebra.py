"""The little linear algebra a fit needs, on lists of rows, by the standard library alone.

`arrays.py` does the same on numpy arrays; whoever calls chooses. A triangle is a lower one.
"""

import math
from collections.abc import Sequence
from typing import Any, Protocol

from lightoff.inference.orthogonal import Triangle, Turned, dot

Vector = Any  # a list of floats, or a numpy array
Matrix = Any  # a list of rows, or a numpy array
Groups = Sequence[slice]  # rows that belong together, one slice after the other


class Algebra(Protocol):
    """What lists and arrays both do; `abreast` is whether many runs are best asked at once."""

    abreast: bool

    def matrix(self, rows: Sequence[Sequence[float]]) -> Matrix:
        """The rows, made ready."""

    def columns(
        self, rows: Sequence[Sequence[float]], places: Sequence[int], scales: Sequence[float]
    ) -> Matrix:
        """Some columns of rows, each in its own scale."""

    def mixed(self, matrix: Matrix, column: int, other: int, share: float) -> Matrix:
        """The matrix with a share of one column moved into another, the rest made as much less."""

    def beside(self, one: Matrix, other: Matrix) -> Matrix:
        """Two matrices side by side."""

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

    def products(self, rows: Matrix) -> Sequence[Vector]:
        """Of each row with itself and those before it."""

    def tall(self, rows: Sequence[Sequence[float]]) -> Turned:
        """The rows turned into a triangle."""


class Lists:
    """On lists of rows."""

    abreast = False

    def matrix(self, rows: Sequence[Sequence[float]]) -> Matrix:
        return [list(row) for row in rows]

    def columns(
        self, rows: Sequence[Sequence[float]], places: Sequence[int], scales: Sequence[float]
    ) -> Matrix:
        wanted = tuple(zip(places, scales, strict=True))
        return [[row[i] * scale for i, scale in wanted] for row in rows]

    def mixed(self, matrix: Matrix, column: int, other: int, share: float) -> Matrix:
        left = math.sqrt(1 - share**2)
        for row in matrix:
            row[other] += share * row[column]
            row[column] *= left
        return matrix

    def beside(self, one: Matrix, other: Matrix) -> Matrix:
        return [[*a, *b] for a, b in zip(one, other, strict=True)]

    def covariance(
        self, common: Matrix, own: Matrix, groups: Groups, variances: Vector, /
    ) -> Matrix:
        found: Matrix = self.products(common)
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

    def products(self, rows: Matrix) -> Sequence[Vector]:
        return [[dot(a, b) for b in rows[: i + 1]] for i, a in enumerate(rows)]

    def tall(self, rows: Sequence[Sequence[float]]) -> Turned:
        return Triangle(rows)


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
