"""The algebra of a fit on numpy arrays, where numpy is there; vectors stay lists of floats."""

from collections.abc import Sequence

import numpy as np

from lightoff.inference.algebra import Groups, Matrix, Vector


class Arrays:
    """On numpy arrays."""

    def matrix(self, rows: Sequence[Sequence[float]]) -> Matrix:
        return np.array(rows, dtype=float)

    def covariance(
        self, common: Matrix, own: Matrix, groups: Groups, variances: Vector, /
    ) -> Matrix:
        found = common @ common.T + np.diag(variances)
        for group in groups:
            found[group, group] += own[group] @ own[group].T
        return found

    def cholesky(self, matrix: Matrix) -> Matrix:
        return np.linalg.cholesky(matrix)

    def forward(self, triangle: Matrix, vectors: Sequence[Vector]) -> Sequence[Vector]:
        found = np.linalg.solve(triangle, np.array(vectors, dtype=float).T).T
        return list(found.tolist())

    def backward(self, triangle: Matrix, vector: Vector) -> Vector:
        return np.linalg.solve(triangle.T, vector).tolist()

    def times(self, rows: Matrix, vector: Vector) -> Vector:
        return (rows @ np.array(vector)).tolist()

    def across(self, rows: Matrix, vector: Vector) -> Vector:
        return (rows.T @ np.array(vector)).tolist()
