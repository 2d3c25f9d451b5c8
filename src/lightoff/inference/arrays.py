"""The algebra of a fit on numpy arrays, where numpy is there; vectors stay lists of floats."""

from collections.abc import Sequence
from typing import Any

from lightoff.inference.algebra import Groups, Matrix, Vector
from lightoff.inference.orthogonal import Turned


class Arrays:
    """On numpy arrays; raises `ImportError` where there is no numpy."""

    abreast = True

    def __init__(self) -> None:
        import numpy

        self.np = numpy

    def matrix(self, rows: Sequence[Sequence[float]]) -> Matrix:
        return self.np.array(rows, dtype=float)

    def columns(
        self, rows: Sequence[Sequence[float]], places: Sequence[int], scales: Sequence[float]
    ) -> Matrix:
        return self.np.array(rows, dtype=float)[:, list(places)] * self.np.array(scales)

    def mixed(self, matrix: Matrix, column: int, other: int, share: float) -> Matrix:
        matrix[:, other] += share * matrix[:, column]
        matrix[:, column] *= (1 - share**2) ** 0.5
        return matrix

    def beside(self, one: Matrix, other: Matrix) -> Matrix:
        return self.np.hstack([one, other])

    def covariance(
        self, common: Matrix, own: Matrix, groups: Groups, variances: Vector, /
    ) -> Matrix:
        found = common @ common.T + self.np.diag(variances)
        for group in groups:
            found[group, group] += own[group] @ own[group].T
        return found

    def cholesky(self, matrix: Matrix) -> Matrix:
        """The triangle as its inverse: it divides many vectors."""
        return self.np.linalg.inv(self.np.linalg.cholesky(matrix))

    def forward(self, triangle: Matrix, vectors: Sequence[Vector]) -> Sequence[Vector]:
        found = self.np.array(vectors, dtype=float) @ triangle.T
        return list(found.tolist())

    def backward(self, triangle: Matrix, vector: Vector) -> Vector:
        return (self.np.array(vector) @ triangle).tolist()

    def times(self, rows: Matrix, vector: Vector) -> Vector:
        return (rows @ self.np.array(vector)).tolist()

    def across(self, rows: Matrix, vector: Vector) -> Vector:
        return (rows.T @ self.np.array(vector)).tolist()

    def products(self, rows: Matrix) -> Sequence[Vector]:
        every = self.np.array(rows, dtype=float)
        return list((every @ every.T).tolist())

    def tall(self, rows: Sequence[Sequence[float]]) -> Turned:
        return ArrayTriangle(self.np, rows)


class ArrayTriangle:
    """A tall matrix turned into a triangle: `orthogonal.Triangle` on arrays."""

    def __init__(self, np: Any, rows: Sequence[Sequence[float]]) -> None:
        self.np = np
        self._q, self._r = np.linalg.qr(np.array(rows, dtype=float), mode="complete")
        self.diagonal = np.diagonal(self._r).tolist()

    @property
    def _square(self) -> Any:
        return self._r[: self._r.shape[1]]

    def turned(self, vector: Sequence[float]) -> list[float]:
        return self._listed(self._q.T @ self.np.array(vector))

    def back(self, vector: Sequence[float]) -> list[float]:
        n = self._r.shape[1]
        return self._listed(self.np.linalg.solve(self._square, self.np.array(vector[:n])))

    def back_turned(self, vector: Sequence[float]) -> list[float]:
        return self._listed(self.np.linalg.solve(self._square.T, self.np.array(vector)))

    def turned_back(self, vector: Sequence[float]) -> list[float]:
        return self._listed(self._q[:, : len(vector)] @ self.np.array(vector))

    @staticmethod
    def _listed(vector: Any) -> list[float]:
        found: list[float] = vector.tolist()
        return found
